import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { asArgument } from '../../src/words/shell.js';

describe('asArgument', () => {
  it('leaves plain words as they are', () => {
    expect(asArgument('gallery/2-2-twill')).toBe('gallery/2-2-twill');
  });

  it.each(['my looms/kept.json', '-x', 'a"b', "it's $HOME", 'a\\b', 'tab\tle', ''])(
    'gives a shell %j whole',
    (word) => {
      const heard = execFileSync('sh', ['-c', `printf %s ${asArgument(word)}`], { encoding: 'utf8' });
      expect(heard).toBe(word);
    },
  );
});
