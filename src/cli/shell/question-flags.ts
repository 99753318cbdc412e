import { type Command, Option } from 'commander';

/** A flag for a key of a question. */
interface Flag {
  /** Key of the question. */
  readonly key: string;
  readonly flags: string;
  readonly about: string;
}

type Groups = Readonly<Record<string, readonly Flag[]>>;

const BLOCK_FLAGS: readonly Flag[] = [
  { key: 'profile', flags: '--profile <blocks>', about: 'block order, "A A B"; or order: the colours choose it' },
  { key: 'name', flags: '--name <name>', about: 'name to draft in overshot, "INDIGO", "INDIGO, all drafts, mirrored"' },
  { key: 'treadled', flags: '--treadled <blocks>', about: 'block order of the treadling (default: as drawn in)' },
];

/** Flags for one structure in one manner of treadling. */
export const ONE_STRUCTURE_FLAGS: readonly Flag[] = [
  { key: 'structure', flags: '--structure <name>', about: 'weave structure (see: structures)' },
  { key: 'treadling', flags: '--treadling <manner>', about: 'manner of treadling (default: the usual one)' },
  ...BLOCK_FLAGS,
];

/** Flags for several structures and manners. */
const STRUCTURE_FLAGS: readonly Flag[] = [
  { key: 'structure', flags: '--structure <names>', about: 'weave structure; several with commas (see: structures)' },
  {
    key: 'treadling',
    flags: '--treadling <manner>',
    about: 'manner of treadling, or all; on a draft also “every tie-up” (default: the usual one)',
  },
  ...BLOCK_FLAGS,
];

export const YARN_FLAGS: readonly Flag[] = [
  { key: 'yarns', flags: '--yarns <list>', about: 'letters and colours (default: D #1f2a44, L #efe6d2)' },
  {
    key: 'sett',
    flags: '--sett <threads>',
    about: 'ends/picks, "20", "20/18", "8/8 per cm" (default: 20 per inch, and 20/40 where tabby makes blocks tall)',
  },
];

export const LAYING_FLAGS: readonly Flag[] = [
  { key: 'tabby', flags: '--tabby <letter>', about: 'yarn of the tabby picks (default: the last)' },
  {
    key: 'by',
    flags: '--by <ways>',
    about: 'each colour covers: a thread, a unit, or a block (a unit whose block it also chooses) (default: thread)',
  },
  {
    key: 'fill',
    flags: '--fill <ways>',
    about:
      'solid (all one colour), alternate (log cabin: D L D L), nest (the whole order in each element) (default: solid)',
  },
  {
    key: 'times',
    flags: '--times <factors>',
    about: 'threads or units that each colour of the order covers (default: 1)',
  },
];

export const LOOM_FLAG: Flag = {
  key: 'loom',
  flags: '--loom <loom>',
  about: 'loom: "rising, 4 shafts, 6 treadles, heddles 120 120 120 70, 400 ends, 2 shuttles"',
};

export const FLOAT_FLAG: Flag = {
  key: 'limits.float',
  flags: '--limit-float <length>',
  about: 'longest float: 7 (threads), 1/2 in, 10 mm (default: 7)',
};

export const QUESTION_FLAGS: Groups = {
  'What is woven:': [
    ...STRUCTURE_FLAGS,
    { key: 'draft', flags: '--draft <file>', about: 'a draft of your own instead of a structure' },
    {
      key: 'on the loom',
      flags: '--on-the-loom <file>',
      about: 'warp already threaded: search only weft and treadling',
    },
    ...YARN_FLAGS,
  ],
  'Colour orders:': [
    { key: 'lengths', flags: '--lengths <range>', about: 'elements in an order, 5, 2-6 or 2,3,5 (default: 2-6)' },
    { key: 'orders', flags: '--orders <list>', about: 'orders to try instead, "DLDDL, DL"' },
    { key: 'warp', flags: '--warp <order>', about: 'one order or letter for the warp; the listed ones are the weft’s' },
    { key: 'weft', flags: '--weft <rule>', about: 'same, exchange, own, a letter or an order (default: same)' },
    ...LAYING_FLAGS,
    {
      key: 'starts',
      flags: '--starts <which>',
      about: 'where orders may begin: all, first, weft (the weft’s alone; default: all)',
    },
  ],
  'What is set aside:': [
    FLOAT_FLAG,
    LOOM_FLAG,
    { key: 'limits.repeat', flags: '--limit-repeat <n>', about: 'ends or picks in a repeat (default: 400)' },
    { key: 'limits.warp changes', flags: '--limit-warp-changes <n>', about: 'colour changes in the warp, a repeat' },
    { key: 'limits.weft changes', flags: '--limit-weft-changes <n>', about: 'colour changes in the weft, a repeat' },
    { key: 'limits.shuttles', flags: '--limit-shuttles <n>', about: 'shuttles at work' },
    { key: 'limits.treadles', flags: '--limit-treadles <n>', about: 'treadles that the loom has' },
    { key: 'limits.shafts', flags: '--limit-shafts <n>', about: 'shafts that the loom has' },
    {
      key: 'same',
      flags: '--same <list>',
      about:
        'treat as the same cloth after: mirror, half-turn, quarter-turn, exchange; shift: none (default: mirror, half-turn, exchange)',
    },
    {
      key: 'done',
      flags: '--done <files>',
      about: 'leave out what was woven before: results.yaml, kept.json, a gallery',
    },
    {
      key: 'unlike done',
      flags: '--unlike-done <least>',
      about: 'also leave out cloths less different than this from what was done, 0 to 1, such as 0.35',
    },
  ],
  'What is shown:': [
    {
      key: 'rank',
      flags: '--rank <weights>',
      about:
        'one of clear, balanced, calm, lively, unexpected, easy; or weights (default: contrast 3, symmetry 2, float 1)',
    },
    { key: 'show', flags: '--show <n>', about: 'best cloths to show, or "one of each kind" (default: 60)' },
    { key: 'seed', flags: '--seed <word>', about: 'random seed (default: shedlight)' },
    {
      key: 'tries',
      flags: '--tries <n>',
      about: 'independent random runs of a search too large to list (default: 1)',
    },
  ],
};

/** Adds flags to a command, in groups. */
export function addFlags(command: Command, groups: Groups): void {
  for (const [group, flags] of Object.entries(groups)) {
    command.optionsGroup(group);
    for (const flag of flags) command.addOption(new Option(flag.flags, flag.about));
  }
}

/** The given values of flags, by key of the question. */
export function flagsGiven(options: Readonly<Record<string, unknown>>, groups: Groups): Record<string, string> {
  const given: Record<string, string> = {};
  for (const { key, flags } of Object.values(groups).flat()) {
    const value = options[new Option(flags).attributeName()];
    if (typeof value === 'string') given[key] = value;
  }
  return given;
}
