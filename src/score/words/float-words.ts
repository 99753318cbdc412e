import { drawdown } from '../../cloth/drawdown.js';
import { type FloatPlace, isWarp, longestFloatPlace, type WeftFloats, weftFloatsByKind } from '../../cloth/floats.js';
import type { Draft } from '../../draft/draft.js';
import { trueLay } from '../../render/strands.js';
import { plural } from '../../words/counts.js';
import { lengthInWords } from './figure-words.js';

/** Which thread has the longest float of a draft, where it lies, and how long it is: thick threads take more room. */
export function longestFloatInWords(draft: Draft): string {
  const place = longestFloatPlace(drawdown(draft));
  const millimetres = lengthAt(draft, place);
  const length = millimetres === null ? '' : `: ${lengthInWords(millimetres, draft.sett)} as the threads lie`;
  return `${placeInWords(place)}${length}`;
}

/** Which thread floats, how far and on which side, and where from. Threads are numbered from 1. */
export function placeInWords({ side, strand, from, length }: FloatPlace): string {
  const [thread, crossing] = isWarp(side) ? ['end', 'pick'] : ['pick', 'end'];
  if (length === null) return `${thread} ${strand + 1} never interlaces`;
  const face = side === 'warpFace' || side === 'weftFace' ? 'face' : 'back';
  const crossings = plural(length, crossing);
  return `${thread} ${strand + 1} floats over ${length} ${crossings} on the ${face}, from ${crossing} ${from + 1} on`;
}

/** The longest weft floats of each kind of pick, `pattern weft` and the like; none where all picks are of one kind. */
export function weftKindsInWords(draft: Draft): (readonly [kind: string, floats: string])[] {
  const kinds = Object.entries(weftFloatsByKind(drawdown(draft), draft.pickKinds));
  // Fine picks that bind the pattern weft without being plain weave are no tabby.
  const called = (kind: string, { face, back }: WeftFloats): string =>
    kind === 'tabby' && (face !== 1 || back !== 1) ? 'fine weft' : `${kind} weft`;
  return kinds.length < 2 ? [] : kinds.map(([kind, floats]) => [called(kind, floats), sidesInWords(floats)]);
}

function sidesInWords({ face, back }: WeftFloats): string {
  return `${face ?? 'never interlaces'} on the face, ${back ?? 'never interlaces'} on the back`;
}

/** How long a float is in millimetres; null without end. */
function lengthAt(draft: Draft, { side, from, length }: FloatPlace): number | null {
  if (length === null) return null;
  const { ends, picks } = trueLay(draft, 1, 0);
  const { pitch } = isWarp(side) ? picks : ends;
  return Array.from({ length }, (_, step) => pitch[(from + step) % pitch.length]!).reduce((sum, room) => sum + room, 0);
}
