import { expect, test } from 'vitest';
import { packedPage } from '../../src/package/packed-page.js';

const PAGE = `# A page

![a picture](gone.png)

See [this](here.md#place), [that](gone/index.html), [there](https://nodejs.org) and [below](#below); \`[a](gone)\`.
![another](here.png)

![last](gone.png)
`;

test('pictures and links that are not in the package are left out, their words stay', () => {
  const found: string[] = [];
  const isThere = (link: string): boolean => {
    found.push(link);
    return link.startsWith('here');
  };
  expect(packedPage(PAGE, isThere)).toBe(`# A page

See [this](here.md#place), that, [there](https://nodejs.org) and [below](#below); \`a\`.
![another](here.png)

`);
  expect(new Set(found)).toEqual(new Set(['gone.png', 'here.png', 'here.md', 'gone/index.html', 'gone']));
});
