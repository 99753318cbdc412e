import { floatOf, metres } from '../../gallery/html/page-figures.js';
import { darkInWords, lengthInWords, readsInWords, symmetryInWords } from '../../score/words/figure-words.js';
import type { Found } from '../../search/strategy/outcome.js';
import { capital } from '../../words/counts.js';
import { repeatMillimetres } from '../store/sizes.js';

/** One thing that is said of every cloth set side by side. */
interface Compared {
  readonly name: string;
  readonly values: readonly string[];
}

const SAID: readonly (readonly [name: string, say: (found: Found) => string])[] = [
  ['woven as', ({ structure }) => structure],
  ['laid', ({ order }) => `by ${order.by}${order.times > 1 ? ` ×${order.times}` : ''}, ${order.fill}`],
  ['repeat', ({ draft }) => `${draft.warp.length} ends by ${draft.weft.length} picks, ${sizeOf(draft)}`],
  ['light and dark', ({ scores }) => darkInWords(scores)],
  ['turns and mirrors', ({ scores, draft }) => symmetryInWords(scores, draft).join('; ')],
  ['seen from afar', ({ scores }) => readsInWords(scores)],
  ['repeat easy to see to', ({ scores }) => metres(scores.easyTo)],
  ['longest float', ({ scores, draft }) => floatOf(scores.floats, draft)],
  ['changes in the warp', ({ ease }) => String(ease.warpChanges)],
  ['shuttles', ({ ease }) => String(ease.shuttles)],
];

/** The properties in which cloths differ, and words for those in which all are the same. */
export function differencesOf(cloths: readonly Found[]): { readonly apart: Compared[]; readonly same: string[] } {
  const all = SAID.map(([name, say]): Compared => ({ name: capital(name), values: cloths.map(say) }));
  const alike = ({ values }: Compared): boolean => values.every((value) => value === values[0]);
  return {
    apart: all.filter((each) => !alike(each)),
    same: all.filter(alike).map(({ name, values }) => `${name.toLowerCase()} ${values[0]}`),
  };
}

function sizeOf(draft: Found['draft']): string {
  const { width, height } = repeatMillimetres(draft);
  return `${lengthInWords(width, draft.sett)} by ${lengthInWords(height, draft.sett)}`;
}
