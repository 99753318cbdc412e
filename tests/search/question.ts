import { AT_THE_LOOM } from '../../src/draft/point-of-view.js';
import { UNWEIGHED } from '../../src/score/parts/parts.js';
import type { Question } from '../../src/search/question/question.js';

/** The question that tests vary: 2/2 twill, orders of five, weft orders of their own. */
export const QUESTION: Question = {
  structures: ['2/2 twill'],
  treadlings: [],
  profile: [],
  treadled: [],
  yarns: [
    { letter: 'D', name: 'navy', hex: '#1f2a44' },
    { letter: 'L', name: 'natural', hex: '#efe6d2' },
  ],
  lengths: [5],
  orders: [],
  weft: { rule: 'own' },
  tabby: 1,
  by: ['thread'],
  fill: ['solid'],
  times: [1],
  starts: 'all',
  sett: { ends: 20, picks: 20, per: 'inch' },
  limits: { float: { threads: 7 }, repeat: 400 },
  rank: { ...UNWEIGHED, contrast: 3, symmetry: 2, float: 1 },
  same: ['mirror', 'half-turn', 'exchange'],
  show: 60,
  seen: AT_THE_LOOM,
  seed: 'test',
  tries: 1,
};
