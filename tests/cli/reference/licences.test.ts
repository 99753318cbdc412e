import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Lock, licences } from '../../../src/cli/reference/licences.js';

const read = (path: string): string => readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8');
const lock = JSON.parse(read('package-lock.json')) as Lock;

test('the page on licences is what `npm run reference` makes', () => {
  expect(read('gallery/guide/licences.md')).toBe(licences(lock));
});

test('every package that is installed with the command is on it, and its licence asks for no more than a notice', () => {
  const page = read('gallery/guide/licences.md');
  const installed = Object.entries(
    lock.packages as Record<string, { dev?: boolean; peer?: boolean; license?: string }>,
  ).filter(([path, { dev }]) => path !== '' && !dev && !/\/(@img\/sharp-|@typescript\/|typescript$)/.test(path));
  expect(installed.length).toBeGreaterThan(35);
  for (const [path, { license = 'MIT' }] of installed) {
    expect(page).toContain(`\`${path.replace(/.*node_modules\//, '')}\``);
    expect(['MIT', 'ISC', 'Apache-2.0', 'OFL-1.1', '0BSD'], path).toContain(license);
  }
});

test('a package without a reason or without a licence is a fault', () => {
  const asked = (name: string, license?: string): Lock => ({
    packages: {
      '': { dependencies: { [name]: '1.0.0' } },
      [`node_modules/${name}`]: { version: '1.0.0', ...(license && { license }) },
    },
  });
  expect(() => licences(asked('left-behind', 'MIT'))).toThrow('left-behind: found no reason for it');
  expect(() => licences(asked('yaml'))).toThrow('yaml: found no licence');
});
