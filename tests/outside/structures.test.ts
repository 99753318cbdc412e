// Worked examples of weave structures, written out thread by thread, as taught in the drafting literature (van der
// Hoogt, Davison, Tidball and Frey, Bress, Petrini, Sullivan, Mitchell, by way of articles and published drafts; plain
// weave and twills: common practice, no source; halvdräll: inferred, houses differ). Their drawdowns, floats and
// plain-weave sheds were counted crossing by crossing with a script that shares nothing with this project.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { drawdown, isUp } from '../../src/cloth/drawdown.js';
import { floatsOf, weftFloatsByKind } from '../../src/cloth/floats.js';
import { holdsTogether } from '../../src/cloth/holds-together.js';
import { liftAt, type Sett, type Weave } from '../../src/draft/draft.js';
import { drawn, findStructure, nameDraft, parseProfile, weaveOf } from '../../src/structure/catalogue/catalogue.js';
import { tabbySheds } from '../../src/structure/loom/lifts.js';
import { recognise } from '../../src/structure/recognise/recognise.js';
import { bareWeave } from '../bare.js';

interface Example {
  structure: string;
  profile: string;
  manner?: string;
  treadled?: string;
  threading: string;
  lifts: string;
  rows: string[];
  floats: number[];
  byWeft?: { pattern: [number, number]; tabby: [number, number] };
  tabby: string | null;
  incidental?: string;
}
type Twill = [name: string, manner: string, wf: number, wb: number, ff: number, fb: number, tabby: string | null];

const data = JSON.parse(readFileSync(new URL('./data/structures.json', import.meta.url), 'utf8')) as {
  examples: Example[];
  twills: Twill[];
  mirroredIndigo: string;
  taqueteFace: Record<string, { D: number; L: number; w: number }>;
};

const SETT: Sett = { ends: 10, picks: 10, per: 'cm' };

const floatsIn = (weave: Weave): (number | null)[] => {
  const floats = floatsOf(drawdown(weave), SETT);
  return [floats.warpFace, floats.warpBack, floats.weftFace, floats.weftBack];
};

const tabbyOf = (weave: Weave): string | null =>
  tabbySheds(weave.threading)
    ?.map((shed) => shed.join(''))
    .join(' ') ?? null;

function drawnFor(example: Example) {
  const structure = findStructure(example.structure);
  const name = /^name (.*)/.exec(example.profile)?.[1];
  const profile = name === undefined ? parseProfile(example.profile, structure.blocks) : nameDraft(name).profile;
  return drawn(structure, profile, {
    ...(example.manner !== undefined && { manner: example.manner }),
    ...(example.treadled !== undefined && { treadled: parseProfile(example.treadled, structure.blocks) }),
  });
}

describe.each(data.examples)('$structure, $profile', (example) => {
  const { weave } = drawnFor(example);
  const cloth = drawdown(weave);
  // Plain weave on four shafts has four picks to a unit of four ends: its repeat of two, twice.
  const again = <T>(picks: readonly T[]): T[] =>
    Array.from({ length: weave.treadling.length / picks.length }, () => picks).flat();

  test('threading', () => expect(weave.threading.flat().join('-')).toBe(example.threading));
  test('lifts', () => {
    expect(weave.treadling.map((_, j) => liftAt(weave, j).join(''))).toEqual(again(example.lifts.split(' ')));
  });
  test('drawdown', () => {
    const rows = weave.treadling.map((_, j) => weave.threading.map((_, i) => (isUp(cloth, j, i) ? '#' : '.')).join(''));
    expect(rows).toEqual(again(example.rows));
  });
  test('floats', () => {
    expect(floatsIn(weave)).toEqual(example.floats);
    if (example.byWeft === undefined) return;
    const { pattern, tabby } = weftFloatsByKind(cloth, weave.pickKinds);
    expect([pattern?.face, pattern?.back]).toEqual(example.byWeft.pattern);
    expect([tabby?.face, tabby?.back]).toEqual(example.byWeft.tabby);
  });
  test('is recognised from bare numbers, its shafts renumbered, begun later', () => {
    const { name } = findStructure(example.structure);
    const turned = <T>(list: readonly T[]): T[] => [...list.slice(1), ...list.slice(0, 1)];
    const other = (on: readonly number[]): number[] =>
      on.map((shaft) => ((shaft + 1) % Math.max(...weave.threading.flat())) + 1);
    const shown = bareWeave({
      threading: turned(weave.threading).map(other),
      tieUp: weave.tieUp.map(other),
      treadling: turned(weave.treadling),
    });
    const found = recognise(shown);
    expect([found.structure?.name, ...found.others]).toContain(name);
  });
  test('hangs together', () => expect(holdsTogether(cloth)).toBe(true));
  test('plain-weave sheds', () => expect(tabbyOf(weave)).toBe(example.tabby));
});

test('crackle: the incidental ends, each beside the unit that it follows', () => {
  const example = data.examples.find(({ structure }) => structure === 'crackle')!;
  const { ends, weave } = drawnFor(example);
  expect(ends.map((end) => (end.incidental ? 'i' : '-')).join('')).toBe(example.incidental);
  expect(weave.endUnits).toEqual([4, 5, 4, 5, 4, 5, 4, 5, 4, 5, 4, 5]);
  expect(ends.slice(0, 13).map((end) => end.block)).toEqual([...'AAAAAAAAABBBB']);
});

describe('four-shaft twills', () => {
  test.each(data.twills)('%s, %s', (name, manner, ...rest) => {
    const structure = findStructure(name);
    const weave = weaveOf(structure, structure.profile, { manner });
    expect([...floatsIn(weave), tabbyOf(weave)]).toEqual(rest);
    expect(holdsTogether(drawdown(weave))).toBe(true);
    expect(structure.tabby !== undefined).toBe(rest.at(-1) !== null);
  });

  // Rules of thumb for all 84: weft floats go with the threading, warp floats with the treadling.
  const WEFT = {
    twill: { '2/2': 2, '1/3': 3, '3/1': 3 },
    'point twill': { '2/2': 3, '1/3': 5, '3/1': 5 },
    rosepath: { '2/2': 3, '1/3': 5, '3/1': 5 },
    'rosepath on ten ends': { '2/2': 3, '1/3': 5, '3/1': 5 },
    'broken twill': { '2/2': 2, '1/3': 4, '3/1': 4 },
    herringbone: { '2/2': 2, '1/3': 4, '3/1': 4 },
    'undulating twill': { '2/2': 4, '1/3': 6, '3/1': 6 },
  };
  const WARP = {
    straight: { '2/2': 2, '1/3': 3, '3/1': 3 },
    broken: { '2/2': 2, '1/3': 3, '3/1': 3 },
    point: { '2/2': 3, '1/3': 5, '3/1': 5 },
    rosepath: { '2/2': 3, '1/3': 5, '3/1': 5 },
  };
  const combinations = Object.entries(WEFT).flatMap(([draw, weft]) =>
    (['2/2', '1/3', '3/1'] as const).flatMap((weave) =>
      Object.entries(WARP).map(([manner, warp]) => [`${weave} ${draw}`, manner, warp[weave], weft[weave]] as const),
    ),
  );
  test.each(combinations)('%s, %s: warp %i, weft %i', (name, manner, warp, weft) => {
    const structure = findStructure(name);
    const weave = weaveOf(structure, structure.profile, { manner });
    const [warpFace, warpBack, weftFace, weftBack] = floatsIn(weave);
    expect(Math.max(warpFace!, warpBack!)).toBe(warp);
    expect(Math.max(weftFace!, weftBack!)).toBe(weft);
    expect(holdsTogether(drawdown(weave))).toBe(true);
  });
});

describe('name drafts', () => {
  test('INDIGO has four gaps and sixteen drafts; read there and back it is as printed', () => {
    const draft = nameDraft('Indigo');
    expect(draft.letterShafts).toEqual([1, 2, 4, 1, 3, 3]);
    expect(draft.gaps).toBe(4);
    expect(draft.incidental.map((it) => (it ? 'i' : '-')).join('')).toBe(
      data.examples.find((example) => example.profile === 'name INDIGO')!.incidental,
    );
    expect(nameDraft('indigo', { mirrored: true }).threading.join('-')).toBe(data.mirroredIndigo);
    const all = Array.from({ length: 16 }, (_, alternative) =>
      nameDraft('INDIGO', { alternative }).threading.join('-'),
    );
    expect(new Set(all).size).toBe(16);
    expect(() => nameDraft('INDIGO', { alternative: 16 })).toThrow(/there are 16/);
  });

  test('OVERSHOT needs no incidental end', () => {
    const draft = nameDraft('overshot');
    expect(draft.threading.join('-')).toBe('3-2-1-2-3-4-3-4');
    expect(draft.gaps).toBe(0);
  });
});

test('turned taqueté: the leading colour has three quarters of the warp on the face, by block and pick', () => {
  const structure = findStructure('turned taquete');
  const weave = weaveOf(structure, parseProfile('AABB', structure.blocks));
  const cloth = drawdown(weave);
  const seen: Record<string, { D: number; L: number; w: number }> = {};
  for (let j = 0; j < 16; j++) {
    for (let i = 0; i < 16; i++) {
      const patch = `${j < 8 ? 'P' : 'Q'}${i < 8 ? 'A' : 'B'}`;
      seen[patch] ??= { D: 0, L: 0, w: 0 };
      const sign = isUp(cloth, j, i) ? (weave.companions!.ends[i] === 0 ? 'D' : 'L') : 'w';
      seen[patch][sign]++;
    }
  }
  expect(seen).toEqual(data.taqueteFace);
});
