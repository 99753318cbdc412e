import { expect, test } from 'vitest';
import { classicNamed } from '../../../src/score/likeness/classic-named.js';

test.each([
  ['log cabin', '(DL)4 (LD)4 on plain weave'],
  ['Log cabin order', '(DL)4 (LD)4 on plain weave'],
  ['Log-Cabin', '(DL)4 (LD)4 on plain weave'],
  ["hound's tooth", 'D4 L4 on 2/2 twill'],
  ['“pinwheel”', 'D2 L2 on plain weave'],
  ['two and two', 'D2 L2'],
  ['plain weave', undefined],
  ['DL', undefined],
])('%s: %s', (name, order) => expect(classicNamed(name)).toBe(order));
