import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { resolvedQuestion } from '../../../src/search/question/read-question.js';
import { ask } from './asked.js';

describe('a resolved question', () => {
  it.each([
    'structure: 2/2 twill',
    'structure: [plain, halvdräll, float of five]'.replace('halvdräll, float of five', '"halvdräll, float of five"'),
    'structure: crackle\ntreadling: Italian manner\nprofile: A A B\nweft: D L\norders: [DL, D3 L]\nsame: shift\nlimits: { float: 3/8 in, shafts: 4 }',
    'structure: crackle\nprofile: order\nweft: own\nlengths: 5\nrank: novelty 2, ease 0.25\nyarns: { A: red, B: { colour: blue, name: "x y", tex: 12.5 }, C: white }\ntabby: A',
    'draft: units.yaml\nby: [thread, unit]\nsett: 7.5/8.25 per cm',
    'structure: plain\nrank: unexpected',
    'structure: turned twill\nblocks: 4\nprofile: search, mirrored\nprofile lengths: 4, 6',
    'structure: summer and winter\nprofile: search\ntreadled: search, mirrored, together\norders: DL\nby: block',
    'structure: summer and winter\nprofile: A B C\ntreadled: A+C . B',
    'structure: plain\nloom: rising, 4 shafts, 32 in, heddles 120',
    'structure: plain\nshow: one of each kind',
  ])('reads back as it was: %j', (text) => {
    const question = ask(text);
    expect(ask(stringify(resolvedQuestion(question)))).toEqual(question);
    expect(ask(JSON.stringify(resolvedQuestion(question)))).toEqual(question);
  });
});
