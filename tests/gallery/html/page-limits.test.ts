import { expect, test } from 'vitest';
import { pastLimitInWords } from '../../../src/gallery/html/page-limits.js';
import { trialQuestion } from '../trial.js';

test('what is over a limit names each limit, of the loom too, and blocks that an order chose in vain', () => {
  const question = trialQuestion({ profile: [] });
  const limits = { ...question.limits, repeat: 80, shuttles: 2 };
  expect(pastLimitInWords({ ...question, limits })).toBe('over a limit (repeat 80, shuttles 2)');
  expect(pastLimitInWords({ ...question, limits, loom: { kind: 'rising', treadles: 6 }, profile: 'order' })).toBe(
    'over a limit (repeat 80, shuttles 2, treadles 6, blocks that cannot be neighbours)',
  );
});
