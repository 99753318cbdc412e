import { expect, test } from 'vitest';
import { readQuestion } from '../../../src/search/question/read-question.js';

test('a loom told in one text', () => {
  const loom = 'sinking, 4 shafts, 6 treadles, heddles 120 120 120 70, 400 ends, 1 shuttle';
  const noDraft = () => {
    throw new Error('no draft');
  };
  expect(readQuestion({ flags: { structure: 'crackle', loom } }, noDraft).loom).toEqual({
    kind: 'sinking',
    shafts: 4,
    treadles: 6,
    heddles: [120, 120, 120, 70],
    ends: 400,
    shuttles: 1,
  });
  expect(() => readQuestion({ flags: { structure: 'crackle', loom: '4 pedals' } }, noDraft)).toThrow(
    '--loom: found “4 pedals”; expected a loom such as',
  );
});
