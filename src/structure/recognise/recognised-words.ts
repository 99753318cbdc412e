import { counted } from '../../words/counts.js';
import type { Recognition } from './recognition.js';

/** A recognition in words for weavers: a sentence each on structure, units, plain weave and treadling. */
export function sayRecognition(found: Omit<Recognition, 'words'>): string[] {
  return [
    sayStructure(found),
    ...sayShafts(found),
    sayUnits(found),
    sayTabby(found),
    ...sayTreadling(found),
    sayRepeat(found),
  ];
}

function sayStructure({
  structure,
  shedsKnown,
  manner,
  others,
  confidence,
  turned,
}: Omit<Recognition, 'words'>): string {
  if (structure === undefined) {
    return confidence === 'none'
      ? 'It is no structure known here, and has no units: every end stands alone.'
      : 'It is no structure known here; its straight runs are taken as units (possible).';
  }
  const face = turned ? ', woven face down' : '';
  const also = others.length === 0 ? '' : ` It could as well be ${others.slice(0, 4).join(', ')}.`;
  if (manner !== undefined) {
    return `It is ${structure.name}, “${manner}”${face} (${confidence}): threading, sheds and their order fit.${also}`;
  }
  const picks = shedsKnown
    ? 'its sheds are those of that structure, in an order of their own'
    : 'its sheds are others than that structure has';
  return `The threading is that of ${structure.name} (${confidence}); ${picks}.${also}`;
}

function sayShafts({ renumbered }: Omit<Recognition, 'words'>): string[] {
  if (renumbered === undefined) return [];
  const list = [...renumbered].sort(([a], [b]) => a - b).map(([own, there]) => `${own} is ${there}`);
  return [`Its shafts have other numbers here: ${list.join(', ')}.`];
}

function sayUnits({ ends, picks }: Omit<Recognition, 'words'>): string {
  const begins = ends.from === 0 ? '' : `, the first beginning at end ${ends.from + 1}`;
  const blocks = ends.blocks === undefined ? '' : `; blocks ${runs(ends.blocks)}`;
  return `${counted(ends.units.length, 'unit')} of ${sizes(ends.units)}${begins}${blocks}; ${counted(picks.units.length, 'unit')} of picks of ${sizes(picks.units)}.`;
}

function sayTabby({ tabby, tabbyLeftOut }: Omit<Recognition, 'words'>): string {
  if (tabby === undefined) return 'There is no plain weave right across.';
  const missing = tabbyLeftOut ? ' The draft leaves out the plain-weave picks between its pattern picks.' : '';
  return `Plain weave: shafts ${tabby[0].join(' ')} against ${tabby[1].join(' ')}.${missing}`;
}

function sayTreadling({ asDrawnIn }: Omit<Recognition, 'words'>): string[] {
  if (asDrawnIn === 'thread') return ['It is treadled as drawn in.'];
  return asDrawnIn === 'unit' ? ['It is treadled as drawn in, unit by unit.'] : [];
}

function sayRepeat({ repeat }: Omit<Recognition, 'words'>): string {
  return `The weave repeats after ${counted(repeat.ends, 'end')} and ${counted(repeat.picks, 'pick')}.`;
}

function sizes(units: readonly number[]): string {
  const different = [...new Set(units)].sort((a, b) => a - b);
  return different.length > 4 ? `${different[0]} to ${different.at(-1)}` : different.join(', ');
}

/** Blocks with counts, `3A 2B`, as a profile is written; long ones are cut off. */
function runs(blocks: readonly string[]): string {
  const said: { block: string; count: number }[] = [];
  for (const block of blocks) {
    const last = said.at(-1);
    if (last?.block === block) last.count++;
    else said.push({ block, count: 1 });
  }
  const words = said.map(({ block, count }) => (count === 1 ? block : `${count}${block}`));
  return words.length > 24 ? `${words.slice(0, 24).join(' ')} …` : words.join(' ');
}
