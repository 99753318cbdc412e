import { pageText } from '../../gallery/html/page-text.js';
import type { Manifest } from '../../gallery/manifest/manifest.js';
import type { Question } from '../../search/question/question.js';
import type { Found, Outcome } from '../../search/strategy/outcome.js';
import { el, one, writtenBy } from '../paint/dom.js';
import { paintCanvas } from '../paint/paint.js';
import { motifScale, repeatMillimetres } from '../store/sizes.js';

/** Side of a picture in a saved page, in its points. */
const SIDE = 240;

/** A gallery that was asked for in the page. */
export interface Answered {
  readonly question: Question;
  readonly outcome: Outcome;
  readonly manifest: Manifest;
}

/** The page with this gallery in it, as one file: pictures, script and all. */
export async function savedPage({ question, outcome, manifest }: Answered, script: string): Promise<string> {
  // Style and script are those of this page, so that its policy holds for the saved one too.
  const policy = one<HTMLMetaElement>(document, 'meta[http-equiv]').content;
  const program = writtenBy();
  return pageText(
    { policy, script, program, packed: await packed(JSON.stringify(manifest)) },
    { question, outcome, sheets: [], pictures: (found) => ({ cloth: pictureOf(found) }), figures: 'the page alive' },
  );
}

/** Zlib data in base 64, as a page holds its gallery. */
async function packed(text: string): Promise<string> {
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate'));
  const bytes = new Uint8Array(await new Response(stream).arrayBuffer());
  return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
}

/** The whole motif of a cloth as a picture in a text. */
function pictureOf({ draft }: Found): string {
  const canvas = el('canvas');
  const scale = motifScale(Math.max(...Object.values(repeatMillimetres(draft))), SIDE, draft);
  const size = { width: SIDE / scale, height: SIDE / scale };
  paintCanvas(canvas, draft, { side: 'face', grey: false, metres: 0, scale: scale / devicePixelRatio, ...size });
  return canvas.toDataURL('image/png');
}
