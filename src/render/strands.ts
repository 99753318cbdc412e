import { type Draft, spacing } from '../draft/draft.js';

/** How the strands of one system (all ends, or all picks) lie beside one another. One entry a strand, one repeat. */
export interface Strands {
  /** Room that each strand takes up, from the middle of one gap to the middle of the next. */
  readonly pitch: Float64Array;
  /** Empty room before the thread, where the threads under it are seen. */
  readonly before: Float64Array;
  /** Breadth of the thread in the light. */
  readonly body: Float64Array;
  /** Breadth of the line of shadow at its far edge. */
  readonly line: Float64Array;
}

/** Ends and picks as they lie in the cloth. */
export interface Lay {
  readonly ends: Strands;
  readonly picks: Strands;
}

/** Share of a thread's breadth that lies in the shadow between it and the next. */
const HAIRLINE = 0.12;

/**
 * The lay of a cloth at true scale, in picture points: the repeat is as wide and as high as the sett says, and a
 * thicker strand takes more room than a thin one. `shadow` (0–1) is how much of the line between threads is shown.
 */
export function trueLay(draft: Draft, perMillimetre: number, shadow: number): Lay {
  const { across, along } = spacing(draft.sett);
  const { ends, picks } = thicknesses(draft);
  const fill = fills(draft);
  const lie = (thickness: Float64Array, room: number, share: Float64Array): Strands => {
    const scale = (room * perMillimetre) / mean(thickness);
    const pitch = thickness.map((t) => t * scale);
    const line = pitch.map((p, s) => p * share[s]! * HAIRLINE * shadow);
    const body = pitch.map((p, s) => p * share[s]! - line[s]!);
    return { pitch, body, line, before: pitch.map((p, s) => (p * (1 - share[s]!)) / 2) };
  };
  return { ends: lie(ends, across, fill.ends), picks: lie(picks, along, fill.picks) };
}

/** A yarn within this share of the warp's thickness is taken to be the warp's own yarn (our choice). */
const ALIKE = 0.1;

/**
 * Thickness of each end and pick beside one another. A thread's diameter goes with the root of its tex; where a yarn
 * in use has no tex, the structure's own widths are taken for all. A structure that asks for a thick pattern weft, or
 * for a fine weft, has it by default: a weft of the warp's own size is wound so many-fold. A yarn that was given a size
 * of its own for the weft lies as thick as it is.
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
 * Share of its room that each end and pick fills. The system with more thread to the width fills it. The other is
 * drawn thinner as its threads are thinner, and by the root of the ratio as they are fewer, since finishing lets a
 * thread bloom into part of its room (our own choice). A pattern weft lies on the ground cloth: it fills its room and
 * does not thin the warp.
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
