/** Everything that shedlight reads: how files of each kind are made, read, and what is promised of them then. */
import { readdirSync, readFileSync } from 'node:fs';
import sharp from 'sharp';
import { drawdown, isUp } from '../../dist/cloth/drawdown.js';
import { cellsFromText, factor } from '../../dist/cloth/factor.js';
import { cellsFromPicture } from '../../dist/cloth/factor-picture.js';
import { liftAt } from '../../dist/draft/draft.js';
import { textDraft } from '../../dist/draft/text-draft.js';
import { readWif, writeWif } from '../../dist/draft/wif/read-wif.js';
import { DRAFT_TABLE } from '../../dist/draft/yaml/draft-table.js';
import { readDraft, writeDraft } from '../../dist/draft/yaml/read-draft.js';
import { parseShortlist, shortlistText } from '../../dist/formats/shortlist.js';
import { faultOf, restoredDraft } from '../../dist/formats/stored-draft.js';
import { manifestDraft, manifestText, parseManifest } from '../../dist/gallery/manifest/manifest.js';
import { dealOut } from '../../dist/plan/deal/deal.js';
import { readWeavers, WEAVERS_TABLE } from '../../dist/plan/deal/weavers.js';
import { PLAN_TABLE, readPlanOptions } from '../../dist/plan/options/plan-options.js';
import { planWarps } from '../../dist/plan/piece/warp-plan.js';
import { learntBy } from '../../dist/plan/results/matching-results.js';
import { RESULTS_TABLE, readResults } from '../../dist/plan/results/results-form.js';
import { draftSvg } from '../../dist/render/draft-svg.js';
import { codeOf } from '../../dist/score/symmetry/cloth-code.js';
import {
  differences,
  entryBytes,
  openingBytes,
  readCheckpoint,
  resultAt,
} from '../../dist/search/checkpoint/checkpoint-format.js';
import { couldBeAsked } from '../../dist/search/question/could-be-asked.js';
import { QUESTION_TABLE } from '../../dist/search/question/question-table.js';
import { readQuestion } from '../../dist/search/question/read-question.js';
import { spaceOf } from '../../dist/search/space/space.js';
import { recognise } from '../../dist/structure/recognise/recognise.js';
import { generator } from './generate.js';
import { mutator } from './mutate.js';

/** Tables of keys of all files that a person writes. */
export const TABLES = [QUESTION_TABLE, DRAFT_TABLE, PLAN_TABLE, WEAVERS_TABLE, RESULTS_TABLE];
const WIF = new URL('../fixtures/wif/', import.meta.url);
const CORPUS = new URL('../corpus/2026-11-29/', import.meta.url);
/** Share of generated texts whose bytes are changed as well. */
const MUTATED = 0.15;

const kept = (name) => readFileSync(new URL(name, CORPUS), 'utf8');
export const DRAFT = readDraft(kept('draft.yaml'), 'draft.yaml');
export const SHORTLIST = kept('kept.json');
const CLOTHS = parseShortlist(SHORTLIST, 'kept.json');
const noFile = () => DRAFT;
const HEADER = {
  program: '0',
  question: readQuestion({ flags: { structure: 'plain weave' } }, noFile),
  space: { way: 'scored', written: 8, numbers: 8 },
};
const JOURNAL = journal((same) => same);

/**
 * The kinds: `share` of all files; `make` gives what is read, for a report, and `read` reads it. `further`, for one file in
 * so many of those that were read, does with it what commands do. `hold` throws where a promise is broken.
 */
export function kindsOf(start) {
  const makes = generator(start, TABLES);
  const { random, pick } = makes;
  // Three sound files for one that is broken: changes break most of them anyway.
  const wifs = ['good', 'good', 'good', 'broken'].flatMap((kind) =>
    readdirSync(new URL(`${kind}/`, WIF))
      .sort()
      .map((name) => readFileSync(new URL(`${kind}/${name}`, WIF))),
  );
  const mutate = mutator(start, wifs);
  const mixed = (text) => (random() < MUTATED ? mutate([Buffer.from(text)]).toString('utf8') : text);
  const pictures = [];
  const lists = [SHORTLIST, kept('gallery.json'), kept('name-draft.json')].map((text) => JSON.parse(text));
  const listed = (at) => mixed(JSON.stringify(makes.disturbed(pick(at))));
  const yaml = (table, ...always) => mixed(makes.file(table, always));

  return {
    makes,
    /** Pictures of cells, as PNG files, to be changed. */
    async draw() {
      for (const [ends, picks] of [
        [4, 4],
        [12, 7],
      ]) {
        const data = Buffer.from(Array.from({ length: ends * picks }, (_, k) => ((k * 7) % 3 === 0 ? 0 : 255)));
        const raw = sharp(data, { raw: { width: ends, height: picks, channels: 1 } });
        for (const palette of [true, false]) pictures.push(await raw.clone().png({ palette }).toBuffer());
      }
    },
    kinds: {
      wif: {
        share: 60,
        make: () => mutate(wifs),
        read: (bytes) => readWif(bytes),
        hold: ({ draft }) => holdDraft(draft),
        every: 10,
        further: (reading) => {
          holdWritten(reading);
          if (random() < 0.05) recognise(reading.draft);
        },
      },
      draft: {
        share: 8,
        make: () => yaml(DRAFT_TABLE, 'threading', 'tie-up', 'treadling'),
        read: (text) => readDraft(text, 'fuzz.yaml'),
        hold: holdDraft,
        every: 4,
        further: (draft) => {
          textDraft(draft);
          draftSvg(draft, { title: draft.name ?? 'fuzz' });
          const again = readDraft(writeDraft(draft), 'written');
          if (sayDraft(again) !== sayDraft(draft)) throw new Error('wrote another draft');
        },
      },
      question: {
        share: 8,
        make: () => ({ text: yaml(QUESTION_TABLE, 'structure'), flags: makes.flags(QUESTION_TABLE) }),
        read: ({ text, flags }) => readQuestion({ text, file: 'fuzz.yaml', flags }, noFile, () => [DRAFT]),
        hold: (question) => {
          if (!couldBeAsked(question)) throw new Error('gave a question that does not read back');
        },
        every: 20,
        further: (question) => spaceOf(question),
      },
      setup: {
        share: 6,
        make: () => ({ text: yaml(PLAN_TABLE), flags: makes.flags(PLAN_TABLE) }),
        read: ({ text, flags }) => readPlanOptions(text, 'fuzz.yaml', flags),
        every: 10,
        further: (options) => planWarps(CLOTHS, options),
      },
      weavers: {
        share: 4,
        make: () => yaml(WEAVERS_TABLE),
        read: (text) => readWeavers(text, 'fuzz.yaml'),
        every: 10,
        further: (weavers) => dealOut(CLOTHS, weavers, readPlanOptions('', 'fuzz.yaml')),
      },
      results: {
        share: 4,
        make: () => yaml(RESULTS_TABLE),
        read: (text) => readResults(text, 'fuzz.yaml'),
        every: 2,
        further: (results) => CLOTHS.map(learntBy(results, CLOTHS, 'fuzz.yaml', 'kept.json')),
      },
      shortlist: {
        share: 3,
        make: () => mixed(JSON.stringify(recoded(makes.disturbed(lists[0])))),
        read: (text) => parseShortlist(text, 'fuzz.json'),
        every: 2,
        further: (cloths) => {
          if (shortlistText(parseShortlist(shortlistText(cloths), 'written')) !== shortlistText(cloths))
            throw new Error('wrote another shortlist');
          planWarps(cloths, readPlanOptions('', 'fuzz.yaml'));
        },
      },
      gallery: {
        share: 2,
        make: () => listed(lists.slice(1)),
        read: (text) => parseManifest(text, 'fuzz.json'),
        hold: (manifest) => manifestText(manifest),
        every: 2,
        further: (manifest) => manifest.candidates.map((candidate) => holdDraft(manifestDraft(candidate, manifest))),
      },
      progress: {
        share: 2,
        make: () => (random() < 0.5 ? mutate([JOURNAL]) : journal(makes.disturbed)),
        read: (bytes) => {
          const open = { size: bytes.length, read: (from, length) => bytes.subarray(from, from + length) };
          return { open, found: readCheckpoint(open) };
        },
        every: 1,
        further: ({ open, found }) => {
          for (const place of found.places.values()) resultAt(open, place);
          differences(found.header, HEADER);
        },
      },
      cells: {
        share: 4,
        make: () => mixed(makes.cells()),
        read: (text) => cellsFromText(text),
        every: 1,
        further: holdCells,
      },
      picture: {
        share: 1,
        make: () => mutate(pictures),
        read: (bytes) => cellsFromPicture(bytes, pick([1, 1, 2])),
        every: 1,
        further: ({ cells }) => holdCells(cells),
      },
    },
  };
}

/** The progress of a search as it is written, what it holds changed before its checksums are made. */
function journal(changed) {
  const { header, jobs } = changed({
    header: HEADER,
    jobs: [{ key: 'a', result: { pruned: 1 } }, { key: 'b' }, { end: 2 }],
  });
  const all = Array.isArray(jobs) ? [...jobs] : [jobs];
  return Buffer.concat([openingBytes(header), ...all.slice(0, 20).map((job) => entryBytes(job))]);
}

/** A shortlist, the codes of its cloths put right where their drafts are sound: else all are refused for that alone. */
function recoded(list) {
  for (const cloth of Array.isArray(list.candidates) ? list.candidates : []) {
    try {
      if (faultOf(cloth.draft) === undefined) cloth.code = codeOf(restoredDraft(cloth.draft));
    } catch {
      // It stays as it is, to be refused.
    }
  }
  return list;
}

/** What every reader promises of a draft. */
function holdDraft(draft) {
  const { threading, tieUp, treadling, pickKinds, endUnits, pickUnits, yarns, warp, weft, sett, companions } = draft;
  const sum = (list) => list.reduce((a, b) => a + b, 0);
  const within = (list, most) => list.every((n) => Number.isInteger(n) && n >= 1 && n <= most);
  const sound =
    threading.length >= 1 &&
    threading.length <= 20_000 &&
    treadling.length >= 1 &&
    treadling.length <= 20_000 &&
    threading.every((on) => within(on, 256)) &&
    tieUp.every((on) => within(on, 256)) &&
    treadling.every((on) => within(on, tieUp.length)) &&
    warp.length === threading.length &&
    weft.length === treadling.length &&
    pickKinds.length === treadling.length &&
    [...warp, ...weft].every((yarn) => yarns[yarn] !== undefined) &&
    yarns.every(({ letter, hex }) => /^[A-Z]$/.test(letter) && /^#[0-9a-f]{6}$/.test(hex)) &&
    new Set(yarns.map(({ letter }) => letter)).size === yarns.length &&
    sum(endUnits) === threading.length &&
    sum(pickUnits) === treadling.length &&
    [...endUnits, ...pickUnits].every((size) => size >= 1) &&
    sett.ends > 0 &&
    sett.picks > 0 &&
    (companions === undefined ||
      (companions.ends.length === threading.length && companions.picks.length === treadling.length));
  if (!sound) throw new Error('gave a draft that breaks its promises');
}

/** What was read from WIF, written and read again is the same. */
function holdWritten({ draft, kept: others }) {
  const again = readWif(Buffer.from(writeWif(draft, { version: '0', kept: others })), { whole: true }).draft;
  if (sayDraft(again) !== sayDraft(draft))
    throw new Error(`wrote another draft\n${sayDraft(draft)}\n${sayDraft(again)}`);
}

function sayDraft(one) {
  const lifts = one.treadling.map((_, j) => liftAt(one, j).join());
  return JSON.stringify([one.threading, lifts, one.warp, one.weft, one.endUnits, one.yarns, one.sett]);
}

/** The draft that was found for cells has these cells, over and over. */
function holdCells(cells) {
  const cloth = drawdown(factor(cells));
  const same = cells.every((row, j) =>
    row.every((cell, i) => (cell === 1) === isUp(cloth, j % cloth.picks, i % cloth.ends)),
  );
  if (!same) throw new Error('found a draft that weaves something else');
}
