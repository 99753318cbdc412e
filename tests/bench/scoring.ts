// What scoring a candidate takes, beside the same in C and cell by cell.
import { drawdown } from '../../src/cloth/drawdown.js';
import { faceMaker, woven } from '../../src/cloth/face.js';
import { contrastMeter } from '../../src/score/contrast/contrast.js';
import { Eye } from '../../src/score/look/look.js';
import { outlineOf } from '../../src/score/look/sharp.js';
import { solidShare } from '../../src/score/look/solid.js';
import { DEFAULT_RANK, type Weights } from '../../src/score/parts/parts.js';
import { PRESETS } from '../../src/score/rank/presets.js';
import { analyser } from '../../src/score/symmetry/analysis.js';
import { clothKeys } from '../../src/score/symmetry/canonical-cloth.js';
import { symmetryShare } from '../../src/score/symmetry/symmetry.js';
import { evaluator } from '../../src/search/evaluate/evaluate.js';
import type { Question } from '../../src/search/question/question.js';
import { type Candidate, draftOf } from '../../src/search/space/candidate.js';
import { spaceOf } from '../../src/search/space/space.js';
import { cellsOf } from '../faces.js';
import * as plainContrast from '../plain/contrast.js';
import * as plainSymmetry from '../plain/symmetry.js';
import { QUESTION } from '../search/question.js';
import { microseconds, userSeconds } from './measure.js';
import { type Coloured, type Peer, peer } from './peer.js';

/** Candidates of one space whose whole repeats are exactly of one size. */
interface Sized {
  readonly name: string;
  readonly change: Partial<Question>;
  readonly ends: number;
  readonly picks: number;
  /** Whether cell by cell it can be awaited in the short bench; in the long one always. */
  readonly soon: boolean;
}

/** Those that are measured in other rankings too. */
const SMALL: Sized = { name: '2/2 twill, orders of 10', change: { lengths: [10] }, ends: 20, picks: 20, soon: true };
const MIDDLING: Sized = {
  name: 'overshot, orders of 8',
  change: { structures: ['overshot'], lengths: [8] },
  ends: 24,
  picks: 48,
  soon: false,
};
const LARGE: Sized = {
  name: '2/2 twill, of 16, ×5',
  change: { lengths: [16], times: [5], weft: { rule: 'same' } },
  ends: 80,
  picks: 80,
  soon: false,
};

const SIZES: readonly Sized[] = [
  {
    name: '2/1 twill, orders of 6',
    change: { structures: ['2/1 twill'], lengths: [6] },
    ends: 6,
    picks: 6,
    soon: true,
  },
  { name: '2/2 twill, orders of 8', change: { lengths: [8] }, ends: 8, picks: 8, soon: true },
  { name: '2/2 twill, orders of 12', change: { lengths: [12] }, ends: 12, picks: 12, soon: true },
  SMALL,
  { name: '2/2 twill, of 10, ×4', change: { lengths: [10], times: [4] }, ends: 40, picks: 40, soon: false },
  {
    name: 'turned twill, of 10 by unit',
    change: { structures: ['turned twill'], lengths: [10], by: ['unit'] },
    ends: 40,
    picks: 40,
    soon: false,
  },
  MIDDLING,
  LARGE,
];

/** Candidates of a sample: so many runs of neighbours, spread over the space, as a search lists them. */
const RUNS = 20;
const RUN = 20;
const VALUES = Float64Array.of(0, 1);
const FIGURE: Weights = { ...DEFAULT_RANK, figure: 1 };
const LOOK: Weights = { ...FIGURE, solid: 1, sharp: 1 };
const RANKS = ['clear', 'calm', 'unexpected', 'fine'] as const;

export type Row = readonly [what: string, figure: string, beside: string];

/** Rows of the table. */
export function* scoringRows(quick: boolean): Generator<Row> {
  yield ['Scoring a candidate: contrast, figure, symmetry, canonical cloth', '', ''];
  yield ['', 'in a search', 'laid anew, and beside it the same in C and cell by cell'];
  for (const sized of SIZES) yield sizedRow(sized, FIGURE, quick);
  yield ['The same with areas and outlines', '', ''];
  for (const sized of [SMALL, LARGE]) yield sizedRow(sized, LOOK, quick);
  for (const sized of [SMALL, MIDDLING, LARGE]) {
    for (const rank of RANKS) {
      const { question, candidates } = sample(sized, PRESETS[rank]);
      const { evaluate } = evaluator(question);
      let least = Number.POSITIVE_INFINITY;
      // The first rounds meet code that is not compiled yet.
      for (let round = 0; round < (quick ? 3 : 6); round++)
        least = Math.min(
          least,
          microseconds(() => evaluate(candidates)),
        );
      yield [`  ranked ${rank}, ${sized.ends} × ${sized.picks}`, micro(least / candidates.length), ''];
    }
  }
}

function sizedRow(sized: Sized, rank: Weights, quick: boolean): Row {
  const looks = rank.solid > 0;
  const { question, candidates, cloths } = sample(sized, rank);
  const { evaluate } = evaluator(question);
  const beside = peer(cloths, looks);
  const anew = scoredAnew(looks);
  if (beside !== undefined) holdEqual(cloths, beside, anew);
  let [search, alone, inC] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  // In turns, so that whatever else the machine does meets all of them.
  for (let round = 0; round < (quick ? 3 : 8); round++) {
    search = Math.min(search, microseconds(() => evaluate(candidates)) / candidates.length);
    alone = Math.min(alone, microseconds(() => cloths.forEach(anew)) / cloths.length);
    if (beside !== undefined) inC = Math.min(inC, beside.run());
  }
  beside?.close();
  const times = (time: number): string => `× ${(time / inC).toFixed(1)}`;
  const said = [
    `laid anew ${micro(alone)}`,
    beside === undefined
      ? 'no gcc here to make the peer'
      : `C ${micro(inC)} (${times(search)} in a search, ${times(alone)} anew)`,
    ...(looks || (quick && !sized.soon) ? [] : [`cell by cell ${plainly(cloths[cloths.length >> 1]!)}`]),
  ];
  return [`  ${sized.ends} × ${sized.picks}: ${sized.name}`, micro(search), said.join(', ')];
}

const micro = (time: number): string => `${time < 10 ? time.toFixed(1) : time.toFixed(0)} µs`;

/** Candidates of one size as a search would list them. */
function sample({ change, ends, picks }: Sized, rank: Weights) {
  const question: Question = { ...QUESTION, ...change, rank };
  const space = spaceOf(question);
  const candidates: (readonly [number, Candidate])[] = [];
  const cloths: Coloured[] = [];
  for (let run = 1; run <= RUNS; run++) {
    const from = Math.floor((run / (RUNS + 1)) * space.numbers);
    for (let index = from, scored = 0; index < space.numbers && scored < RUN; index++) {
      if (!space.isRepresentative(index)) continue;
      const draft = draftOf(space.at(index), question);
      if (draft.warp.length !== ends || draft.weft.length !== picks) continue;
      scored++;
      candidates.push([index, space.at(index)]);
      cloths.push({ cloth: drawdown(draft), warp: draft.warp, weft: draft.weft });
    }
  }
  return { question, candidates, cloths };
}

/** Scores cloths of which nothing is remembered; `looks`: solid areas and outlines too. */
function scoredAnew(looks: boolean) {
  const faceOf = faceMaker();
  const meter = contrastMeter(1);
  const analyse = analyser();
  const keyOf = clothKeys(QUESTION.same, 2);
  const eye = new Eye(QUESTION.sett, VALUES, (_, face) => meter.variance(face, VALUES));
  return ({ cloth, warp, weft }: Coloured) => {
    const laid = woven(cloth, warp, weft);
    const face = faceOf(laid);
    const { tone, line, figure, darkShare } = meter.measure(face, VALUES);
    const analysis = analyse(face);
    const figures = [tone, line, figure, darkShare, symmetryShare(analysis, true)];
    if (looks) {
      const areas = eye.turnTo(laid, face, analysis).areas();
      figures.push(solidShare(areas), outlineOf(areas, 1).slope);
    }
    return { figures, key: keyOf(analysis), face };
  };
}

/** Fails unless the peer finds the same figures, and the same cloths equal. */
function holdEqual(cloths: readonly Coloured[], { found }: Peer, anew: ReturnType<typeof scoredAnew>): void {
  const ofKey = new Map<string, string>();
  const ofPeer = new Map<string, string>();
  cloths.forEach((each, k) => {
    const { figures, key } = anew(each);
    const there = found[k]!;
    figures.forEach((figure, f) => {
      if (!(Math.abs(figure - there.figures[f]!) < 1e-7)) {
        throw new Error(`figure ${f} of candidate ${k} is ${figure}, but ${there.figures[f]} in C`);
      }
    });
    const name = key.join();
    if ((ofKey.get(name) ?? there.key) !== there.key || (ofPeer.get(there.key) ?? name) !== name) {
      throw new Error(`candidate ${k} is the same cloth as another one here, and not in C, or the other way round`);
    }
    ofKey.set(name, there.key);
    ofPeer.set(there.key, name);
  });
}

/** The user time that the figures of one cloth take cell by cell, in words; its canonical cloth is not among them. */
function plainly(cloth: Coloured): string {
  const cells = cellsOf(scoredAnew(false)(cloth).face);
  const from = userSeconds();
  plainContrast.tone(cells, 1);
  plainContrast.line(cells, 1);
  plainContrast.figure(cells, 1);
  plainSymmetry.symmetry(cells, true);
  return `${((userSeconds() - from) * 1000).toFixed(0)} ms`;
}
