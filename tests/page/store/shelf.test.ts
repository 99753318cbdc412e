import { describe, expect, test } from 'vitest';
import { shelfIn } from '../../../src/page/store/shelf.js';

describe('where marks are stored', () => {
  const storageOf = (stored: Map<string, string>) => ({
    getItem: (key: string) => stored.get(key) ?? null,
    setItem: (key: string, text: string) => void stored.set(key, text),
  });

  test('keeps one text a key, and every text that is set aside once', () => {
    const stored = new Map<string, string>();
    const shelf = shelfIn(() => storageOf(stored), 'here');
    expect([shelf.read(), shelf.aside()]).toEqual([undefined, []]);
    expect(shelf.write('kept')).toBeUndefined();
    for (const text of ['one', 'two', 'one']) shelf.setAside(text);
    expect([shelf.read(), shelf.aside()]).toEqual(['kept', ['one', 'two']]);
    expect(shelfIn(() => storageOf(stored), 'elsewhere').aside()).toEqual([]);
  });

  test('says so where nothing can be stored', () => {
    const refusing = (): never => {
      throw new Error('not here');
    };
    const shelf = shelfIn(refusing, 'here');
    expect([shelf.read(), shelf.aside()]).toEqual([undefined, []]);
    expect(shelf.write('kept')).toMatch(/does not store .* Save the list as a file/);
    expect(shelf.setAside('torn')).toMatch(/does not store/);
  });
});
