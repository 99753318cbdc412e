import { type Draft, spacing } from '../draft/draft.js';

/** How the strands of one system (all ends, or all picks) lie side by side: one entry per strand of one repeat. */
export interface DrawnStrands {
  /** Room of each strand, from the middle of one gap to the middle of the next, in picture points. */
  readonly pitch: Float64Array;
  /** Gap before the thread, in which the threads underneath are seen. */
  readonly before: Float64Array;
  /** Breadth of the lit part of the thread. */
  readonly body: Float64Array;
  /** Breadth of the shadow line at its far edge. */
  readonly line: Float64Array;
}

/** The strands of both systems. */
export interface Lay {
  readonly ends: DrawnStrands;
  readonly picks: DrawnStrands;
}

/** Share of a thread's breadth that is in the shadow between it and the next thread. */
const HAIRLINE = 0.12;

/**
 * Computes the lay of a cloth at true scale, in picture points. The repeat has the size that the sett gives, and
 * thicker strands take more room. `shadow` (0–1) is the strength of the shadow line between threads.
 */
export function trueLay(draft: Draft, perMillimetre: number, shadow: number): Lay {
  const { across, along } = spacing(draft.sett);
  const { ends, picks } = thicknesses(draft);
  const fill = fills(draft);
  const lie = (thickness: Float64Array, room: number, share: Float64Array): DrawnStrands => {
    const scale = (room * perMillimetre) / mean(thickness);
    const pitch = thickness.map((t) => t * scale);
    const line = pitch.map((p, s) => p * share[s]! * HAIRLINE * shadow);
    const body = pitch.map((p, s) => p * share[s]! - line[s]!);
    return { pitch, body, line, before: pitch.map((p, s) => (p * (1 - share[s]!)) / 2) };
  };
  return { ends: lie(ends, across, fill.ends), picks: lie(picks, along, fill.picks) };
}

/**
 * A weft whose thickness differs from the warp's by less than this share counts as the warp's own yarn (our choice).
 */
const ALIKE = 0.1;

/**
 * Relative thickness of each end and pick. The diameter of a thread is proportional to the root of its tex; if any yarn
 * in use has no tex, the structure's own widths are used for all. A structure with a thick pattern weft, or a fine
 * weft, has it by default: a weft as thick as the warp is scaled by the structure's width. A weft yarn with a size of
 * its own is drawn at that size.
 */
export function thicknesses(draft: Draft): { readonly ends: Float64Array; readonly picks: Float64Array } {
  const { widths } = draft;
  const tex = draft.yarns.map((yarn) => yarn.tex);
  if ([...draft.warp, ...draft.weft].every((yarn) => tex[yarn] !== undefined)) {
    const thickness = (yarn: number) => Math.sqrt(tex[yarn]!);
    const ends = Float64Array.from(draft.warp, thickness);
    const usual = mean(ends);
    const picks = Float64Array.from(draft.weft, (yarn, j) => {
      const own = thickness(yarn);
      const isWarpYarn = Math.abs(own - usual) <= ALIKE * usual;
      return isWarpYarn ? (own * widths[draft.pickKinds[j]!]) / widths.warp : own;
    });
    return { ends, picks };
  }
  return {
    ends: new Float64Array(draft.warp.length).fill(widths.warp),
    picks: Float64Array.from(draft.pickKinds, (kind) => widths[kind]),
  };
}

/**
 * Share of its room that each end and pick fills. The denser system (more thread per width) fills its room. The other
 * is thinner in proportion to its thickness, and by the root of the ratio of counts: finishing lets a thread bloom into
 * part of its room (our own choice). A pattern weft lies on the ground cloth, so it fills its room and does not thin
 * the warp.
 */
function fills(draft: Draft): { readonly ends: Float64Array; readonly picks: Float64Array } {
  const { across, along } = spacing(draft.sett);
  const { ends, picks } = thicknesses(draft);
  const onGround = (j: number) => draft.pickKinds[j] !== 'pattern';
  const ground = picks.filter((_, j) => onGround(j));
  const warpToWeft = (mean(ends) / mean(ground.length > 0 ? ground : picks)) * Math.sqrt(along / across);
  return {
    ends: ends.map(() => Math.min(1, warpToWeft)),
    picks: picks.map((_, j) => (onGround(j) ? Math.min(1, 1 / warpToWeft) : 1)),
  };
}

function mean(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
