import * as v from 'valibot';
import { quote } from '../problem.js';

/**
 * Puts a fault in one of our own JSON files into words: `candidates.0.code: found a number; expected text`.
 *
 * @param issue the first issue reported by the schema
 */
export function schemaFault(issue: v.BaseIssue<unknown>): string {
  const path = v.getDotPath(issue as v.InferIssue<v.GenericSchema>);
  // A missing key is reported at the object that should hold it.
  const isMissing = issue.kind === 'schema' && issue.input === undefined;
  const found = isMissing ? 'found nothing' : `found ${kindOf(issue)}`;
  return `${path === null ? '' : `${path}: `}${found}; expected ${expectedOf(issue)}`;
}

function kindOf({ type, input }: v.BaseIssue<unknown>): string {
  if (Array.isArray(input)) return type.endsWith('_length') ? `a list of ${input.length}` : 'a list';
  if (typeof input === 'string') return type.endsWith('_length') ? `${input.length} letters` : quote(input);
  if (typeof input === 'number' || typeof input === 'boolean') return String(input);
  return input === null || input === undefined ? 'nothing' : 'keys with values';
}

/** Words for the kinds of value that schemas expect; all other requirements have a message of their own. */
const KINDS: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  boolean: 'true or false',
  array: 'a list',
  object: 'keys with values',
  strict_object: 'keys with values',
  loose_object: 'keys with values',
  record: 'keys with values',
  tuple: 'a list',
  integer: 'a whole number',
};

function expectedOf(issue: v.BaseIssue<unknown>): string {
  const { type, message, requirement, expected, input } = issue;
  // For a missing key, the library's `expected` is the name of the key.
  if (issue.kind === 'schema' && input === undefined) return 'a value';
  const limit = String(requirement);
  switch (type) {
    case 'min_value':
      return `${limit} at least`;
    case 'max_value':
    case 'max_length':
      return `${limit} at most`;
    case 'gt_value':
      return `more than ${limit}`;
    case 'min_length':
      return `${limit} at least`;
    case 'literal':
    case 'picklist':
      return (expected ?? '').replace(/[()]/g, '').replaceAll(' | ', ' or ');
    default:
      return KINDS[type] ?? message;
  }
}
