import { dirname, isAbsolute, join } from 'node:path';
import type { Yarn } from '../colour/yarn.js';
import type { Draft } from '../draft/draft.js';
import { DEFAULT_SETT, DEFAULT_YARNS } from '../draft/yaml.js';
import { describe, type Given, isKeys, Misread, type Path, readAs, under } from '../draft/yaml-given.js';
import { parseSource, placed, type Source } from '../draft/yaml-source.js';
import { formatOrder, type Order, parseOrder } from '../order/order.js';
import { didYouMean, Problem } from '../problem.js';
import { findManner, findStructure, parseProfile, type Structure, structureNames } from '../structure/index.js';
import type { Question, WeftRule } from './question.js';
import { type Asked, DEFAULT_LIMITS, DEFAULT_RANK, questionKeys } from './read-question-keys.js';

/** Where a question comes from. Flags win over the text. */
export interface QuestionSource {
  /** A question in YAML. */
  readonly text?: string;
  /** Its file, for messages and as the place from which a draft is looked for. */
  readonly file?: string;
  /** Values by key, as they were written; a key inside limits is `limits.float`, and so on. */
  readonly flags: Readonly<Record<string, string>>;
}
