/** Every command that writes: what lies there before it runs, and what it makes of that. */
import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const TWILL = 'threading: 1-4\ntie-up: [1 2, 2 3, 3 4, 4 1]\ntreadling: 1-4\nwarp: DDLL\nweft: DDLL\n';
const explore = (...words) => ['explore', '--workers', '1', '--show', '4', '--out', 'box', ...words];
/** Searches by each of the three ways, each in several pieces of work. */
const LISTED = ['--structure', '2/2 twill', '--lengths', '2-14'];
const BOUNDED = ['--structure', '2/2 twill', '--weft', 'own', '--lengths', '10'];
const BY_CHANGES = [
  '--structure',
  '2/2 twill',
  '--weft',
  'own',
  '--lengths',
  '26',
  '--by',
  'thread',
  '--starts',
  'first',
];
const BLOCKS = ['--structure', 'turned twill', '--blocks', '3', '--profile', 'search', '--profile-lengths', '2-5'];

/** What a person has put into folders that the program writes. */
function putPhoto(home) {
  writeFileSync(join(home, 'box', 'photo.jpg'), 'a photo of theirs');
}
function fillIn(home) {
  putPhoto(home);
  appendFileSync(join(home, 'box', 'results.yaml'), '# sley 2 in every dent\n');
}

/**
 * `often`: its share of the kills. `old` and `now`: the command that makes what lies there, and the one that is
 * disturbed. `meanwhile`: what a person does in between. `made`: files and folders that are old or new, each as a whole.
 */
export const WORKS = [
  search('explore, listed', 5, LISTED),
  search('explore, bounded', 5, BOUNDED),
  search('explore, by changes', 1, BY_CHANGES),
  search('explore, block orders', 1, BLOCKS),
  {
    name: 'explore, one part of three',
    often: 1,
    old: [],
    now: explore(...BOUNDED, '--shard', '2/3'),
    made: ['box.shard-2-of-3'],
    resumes: true,
  },
  {
    name: 'explore, parts brought together',
    often: 1,
    before: [1, 2].map((part) => explore(...LISTED, '--shard', `${part}/2`)),
    old: explore('--structure', 'plain', '--lengths', '5'),
    now: ['explore', '--workers', '1', '--out', 'box', '--merge', 'box.shard-1-of-2', 'box.shard-2-of-2'],
    made: ['box'],
  },
  {
    name: 'explore, a second gallery',
    often: 1,
    old: explore('--structure', '2/2 twill', '--lengths', '5', '--done', 'few.json'),
    meanwhile: putPhoto,
    now: explore('--structure', '2/2 twill', '--lengths', '6', '--done', 'few.json, many', '--unlike-done', '0.1'),
    notes: /^shedlight: \S+: \d+ cloths done before$/,
    made: ['box'],
    resumes: true,
  },
  {
    name: 'plan',
    often: 5,
    old: ['plan', 'few.json', '--out', 'box', '--width', '6 in'],
    meanwhile: fillIn,
    now: ['plan', 'many.json', '--out', 'box', '--width', '8 in'],
    made: ['box'],
  },
  {
    name: 'plan, a gamp',
    often: 1,
    old: ['plan', 'few.json', '--out', 'box', '--width', '6 in'],
    meanwhile: fillIn,
    now: ['plan', 'few.json', '--out', 'box', '--gamp', '3 by 3'],
    made: ['box'],
  },
  {
    name: 'deal',
    often: 4,
    old: ['deal', 'many.json', '--weavers', '2', '--out', 'box'],
    meanwhile: fillIn,
    now: ['deal', 'many.json', '--weavers', '3', '--out', 'box'],
    made: ['box'],
  },
  {
    name: 'keep',
    often: 4,
    old: ['keep', 'few.json', '--out', 'box.json', '--wif'],
    now: ['keep', 'many.json', '--out', 'box.json', '--wif'],
    made: ['box.json', 'box-wif/*'],
  },
  file('convert to WIF', 2, 'box.wif', ['convert', 'twill.yaml', 'box.wif'], ['convert', 'rose.yaml', 'box.wif']),
  file('convert to YAML', 1, 'box.yaml', ['convert', 'twill.yaml', 'box.yaml'], ['convert', 'rose.yaml', 'box.yaml']),
  file('convert to text', 1, 'box.txt', ['convert', 'twill.yaml', 'box.txt'], ['convert', 'rose.yaml', 'box.txt']),
  ...['png', 'svg'].flatMap((kind) => [
    file(`draw ${kind}`, 1, `box.${kind}`, ['draw', 'twill.yaml', '--out'], ['draw', 'rose.yaml', '--out']),
    file(
      `enlarge ${kind}`,
      1,
      `box.${kind}`,
      ['enlarge', 'DL', '--structure', 'plain', '--out'],
      ['enlarge', 'DDL', '--structure', 'plain', '--out'],
    ),
  ]),
  file('structures', 1, 'box.png', ['structures', 'huck', '--out'], ['structures', 'crackle', '--out']),
  file('page', 1, 'box.html', ['draw', 'twill.yaml', '--out', 'box.svg'], ['page', '--out', 'box.html']),
];

/** Puts the files there that the commands read. */
export function putInputs(home, run) {
  writeFileSync(join(home, 'twill.yaml'), TWILL);
  writeFileSync(join(home, 'rose.yaml'), TWILL.replace('treadling: 1-4', 'treadling: 1-4 3-2'));
  for (const [name, orders] of [
    ['few', 'DDL, DDLL'],
    ['many', 'DDDL, DDDLL, DDLDL, DDDLLL'],
  ]) {
    const asked = ['--structure', '2/2 twill', '--orders', orders, '--starts', 'first', '--show', '4'];
    run(['explore', ...asked, '--out', name]);
    const { candidates } = JSON.parse(readFileSync(join(home, name, 'gallery.json'), 'utf8'));
    run(['keep', name, ...candidates.map(({ code }) => code), '--out', `${name}.json`]);
  }
}

function search(name, often, asked) {
  return {
    name,
    often,
    old: explore('--structure', 'plain', '--lengths', '5'),
    meanwhile: putPhoto,
    now: explore(...asked),
    made: ['box'],
    resumes: true,
  };
}

function file(name, often, made, old, now) {
  const whole = (words) => (words.at(-1) === '--out' ? [...words, made] : words);
  return { name, often, old: whole(old), now: whole(now), made: [made] };
}
