import { toJsonSchema } from '@valibot/to-json-schema';
import type * as v from 'valibot';
import { DRAFT_TABLE } from '../../draft/yaml/draft-table.js';
import { dealSchema, planSchema } from '../../formats/plan-schema.js';
import { shortlistSchema } from '../../formats/shortlist.js';
import { manifestSchema } from '../../gallery/manifest/manifest-schema.js';
import type { Key, Kind, Table } from '../../input/key.js';
import { WEAVERS_TABLE } from '../../plan/deal/weavers.js';
import { PLAN_TABLE } from '../../plan/options/plan-options.js';
import { RESULTS_TABLE } from '../../plan/results/results-form.js';
import { PART, PARTS } from '../../score/parts/parts.js';
import { QUESTION_TABLE } from '../../search/question/question-table.js';
import { writtenSchema } from '../shell/plan-folder.js';
import { tableDescriptions } from './column-words.js';
import { PRINTED } from './printed-schemas.js';
import { FIGURES } from './reference-words.js';

type JsonSchema = Readonly<Record<string, unknown>>;

/** JSON that shedlight writes: files, by the schemas through which they pass, and what commands print. */
const JSON_FILES: Readonly<Record<string, readonly [title: string, schema: v.GenericSchema]>> = {
  gallery: ['A gallery: gallery.json, as explore writes it', manifestSchema],
  shortlist: ['A shortlist: kept.json, as keep and the page write it', shortlistSchema],
  plan: ['A plan: plan.json; lengths in millimetres, weights in grams', planSchema],
  deal: ['A deal: deal.json; distances from 0 to 1', dealSchema],
  written: ['What the folder of a plan holds: .shedlight.json', writtenSchema],
  ...PRINTED,
};

/** Files that a person writes in YAML, by the tables by which they are read. */
const YAML_FILES: Readonly<Record<string, readonly [title: string, table: Table]>> = {
  question: ['A question, for explore', QUESTION_TABLE],
  draft: ['A draft', DRAFT_TABLE],
  setup: ['A setup, for plan and deal', PLAN_TABLE],
  weavers: ['The weavers of a group, for deal', WEAVERS_TABLE],
  results: ['What was found in weaving: the form that plan and deal write', RESULTS_TABLE],
};

/** The JSON Schema of every kind of file, and what describes the tables, by the name of its own file. */
export function schemas(): Record<string, string> {
  const fromSchemas = Object.entries(JSON_FILES).map(([name, [title, schema]]) => {
    const body = toJsonSchema(schema, {
      target: 'draft-2020-12',
      typeMode: 'input',
      // The converter lets pairs be shorter than they are.
      overrideSchema: ({ jsonSchema }) =>
        jsonSchema.prefixItems && { ...jsonSchema, minItems: jsonSchema.prefixItems.length },
    });
    return written(name, title, explained(body as JsonSchema));
  });
  const fromTables = Object.entries(YAML_FILES).map(([name, [title, table]]) => written(name, title, ofTable(table)));
  return { ...Object.fromEntries([...fromSchemas, ...fromTables]), ...tableDescriptions() };
}

/** What each figure of a cloth says, as the reference has it. */
const MEANS: Readonly<Record<string, string>> = {
  ...Object.fromEntries(PARTS.map((name) => [name, PART[name].means])),
  ...FIGURES,
};

/** A schema with the meaning of each figure among the scores of a cloth. `path`: the keys that lead to its value. */
function explained(schema: JsonSchema, path: readonly string[] = []): JsonSchema {
  const { properties, items } = schema as Readonly<Record<'properties' | 'items', JsonSchema | undefined>>;
  const inner = (value: unknown, key: string): JsonSchema => explained(value as JsonSchema, [...path, key]);
  const scores = path.indexOf('scores');
  const means = scores < 0 ? undefined : MEANS[path.slice(scores + 1).join('.')];
  return {
    ...(means !== undefined && { description: means }),
    ...schema,
    ...(items !== undefined && { items: inner(items, 'items') }),
    ...(properties !== undefined && {
      properties: Object.fromEntries(Object.entries(properties).map(([key, value]) => [key, inner(value, key)])),
    }),
  };
}

function written(name: string, title: string, { $schema: _, ...body }: JsonSchema): readonly [string, string] {
  const schema = {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: `urn:shedlight:${name}:1`,
    title,
    ...body,
  };
  return [`${name}.schema.json`, `${JSON.stringify(schema, null, 1)}\n`];
}

/** Keys with values; the keys are all there are. */
function ofTable({ keys }: Table): JsonSchema {
  const entries = Object.entries(keys);
  return {
    type: 'object',
    properties: Object.fromEntries(entries.map(([name, key]) => [name, ofKey(key)])),
    required: entries.filter(([, { isNeeded }]) => isNeeded).map(([name]) => name),
    additionalProperties: false,
  };
}

function ofKey({ kind, about, usual, example }: Key<unknown>): JsonSchema {
  const absent = usual === undefined ? '' : ` (default: ${usual})`;
  return {
    description: `${about}${absent}. Expected: ${kind.expected}. For instance: ${example}`,
    ...ofKind(kind),
  };
}

function ofKind({ table, isList, byLetter, parts, schema = {} }: Kind<unknown>): JsonSchema {
  if (table === undefined) return schema;
  const inner = ofTable(table);
  if (isList) return { type: 'array', minItems: 1, items: inner };
  if (byLetter) {
    const each = { anyOf: [inner, { type: 'string' }] };
    const keys = { type: 'object', propertyNames: { pattern: '^[A-Z]$' }, additionalProperties: each };
    return { anyOf: [keys, { type: 'string' }] };
  }
  // As one text, too, where there is one; that of a sett may be a mere number.
  return parts === undefined ? inner : { anyOf: [inner, { type: ['string', 'number'], minLength: 1 }] };
}
