import { describe, expect, it } from 'vitest';
import { wrapped } from '../../../src/gallery/sheet/sheet-text.js';

describe('caption', () => {
  it('breaks lines between words and loses none where there is room', () => {
    expect(wrapped('2/2 twill, DDDLL, 2 threads each, weft DDLLL', 44.5, 2).join(' ')).toBe(
      '2/2 twill, DDDLL, 2 threads each, weft DDLLL',
    );
    expect(wrapped('a very long recipe that does not fit, not at all', 20, 1)[0]).toMatch(/^a very long.*…$/);
  });
});
