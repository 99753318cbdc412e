/**
 * The engine of shedlight as a library: structures, drafts, figures and the search. Everything that it returns is plain
 * data. A fault in what is given is a Problem, whose message is one sentence.
 */
import { draftLoader } from '../cli/shell/files.js';
import { explore as search } from '../search/explore.js';
import { answered, type ExploreOptions, type Gallery, type Values } from './engine.js';

export {
  type Cloth,
  type Draft,
  draft,
  draftIn,
  draftText,
  type ExploreOptions,
  type Figures,
  type Gallery,
  type Part,
  Problem,
  type Scores,
  type Stage,
  type Structure,
  score,
  structures,
  type Values,
} from './engine.js';

/**
 * Answers a question, given as the text of a question file or as its keys. The result is what `gallery.json` holds.
 *
 * @example await explore({ structure: '2/2 twill', lengths: '2-4', show: 12 })
 */
export async function explore(question: string | Values, options: ExploreOptions = {}): Promise<Gallery> {
  const { readDraft = draftLoader(() => {}), onStage, ...rest } = options;
  return answered(question, readDraft, (asked) => search(asked, { ...rest, ...(onStage && { progress: onStage }) }));
}
