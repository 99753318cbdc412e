import { expect, test } from 'vitest';
import { runLengths } from '../../../src/structure/recognise/block-runs.js';

test.each([
  ['12341234', 0, [4, 4], 'a straight draw, once through the shafts for each unit'],
  ['43214321', 0, [4, 4], 'the same downward'],
  ['34122143', 0, [4, 4], 'from the highest to the lowest is up, and back is down'],
  ['12345432', 0, [4, 4], 'a point ends a run'],
  ['12343214', 3, [4, 4], 'the first run need not begin at the first thread'],
  ['12312344321', 0, [3, 4, 4], 'the same shaft again begins a run'],
  ['12432143', 0, [2, 4, 2], 'so does a shaft that is no neighbour'],
  ['12341', 0, [4, 1], 'a thread beyond the shafts is a unit of its own'],
  ['13524', 0, [1, 1, 1, 1, 1], 'where no two are neighbours, every thread is a unit'],
  ['111222', 0, [1, 1, 1, 1, 1, 1], 'so it is on two shafts'],
  ['1212', 0, [1, 1, 1, 1], 'also in plain weave'],
])('straight runs of %s: %d, %j, %s', (ring, from, lengths) => {
  expect(runLengths([...ring].map(Number))).toEqual([from, lengths]);
});
