import { describe, expect, it } from 'vitest';
import { picturesOf } from '../../../src/gallery/structures/structure-pictures.js';
import { codeOf } from '../../../src/score/symmetry/cloth-code.js';
import { readQuestion } from '../../../src/search/question/read-question.js';
import { inTheUsualWay } from '../../../src/search/report/usual-colours.js';
import { findStructure, structures } from '../../../src/structure/catalogue/catalogue.js';
import { run } from '../../cli/run.js';

const drawn = async (...flags: string[]) => JSON.parse((await run('draw', ...flags, '--json')).out);

describe('a structure alone', () => {
  // Those of one unit a block are shown there on a larger block order.
  const shown = structures
    .map(({ name }) => name)
    .filter((name) => {
      const { blocks, profile } = findStructure(name);
      return blocks.length === 1 || profile.length > blocks.length;
    });

  it.each(shown)('%s is drawn as the command structures shows it', async (name) => {
    const [first] = picturesOf(findStructure(name));
    expect((await drawn('--structure', name)).code).toBe(codeOf(first!.draft));
  });

  it('has a dark warp and a light weft, a dark pattern weft on a light ground, or two colours end about', async () => {
    const orders = async (...flags: string[]) => (await drawn('--structure', ...flags)).draft;
    expect(await orders('plain weave')).toMatchObject({ warp: 'DD', weft: 'LL' });
    expect(await orders('summer and winter', '--profile', 'A')).toMatchObject({ warp: 'LLLL', weft: 'DLDL' });
    expect(await orders('turned taqueté')).toMatchObject({ warp: 'DLDLLDLD', weft: 'DDDDDDDD' });
  });

  it('takes the darkest and the lightest of other yarns, and what is asked for beside', async () => {
    const yarns = 'R #aa2222, W #ffffff, B #000000';
    const { draft } = await drawn('--structure', 'plain weave', '--yarns', yarns);
    expect(draft).toMatchObject({ warp: 'BB', weft: 'WW' });
    const own = await drawn(
      '--structure',
      'summer and winter',
      '--profile',
      'A',
      '--yarns',
      yarns,
      '--weft',
      'R',
      '--tabby',
      'B',
    );
    expect(own.draft).toMatchObject({ warp: 'WWWW', weft: 'RBRB' });
  });

  it('is refused where the colours of an order choose the blocks, and there is none', () => {
    const refused = (flags: Record<string, string>) => () =>
      inTheUsualWay(
        readQuestion({ flags }, () => {
          throw new Error('no draft is asked for');
        }),
        {},
      );
    const rest = 'without --warp; expected an order, whose colours choose the blocks';
    expect(refused({ structure: 'turned taqueté', profile: 'order' })).toThrow(`--profile: found “order” ${rest}`);
    expect(refused({ structure: 'summer and winter', by: 'block' })).toThrow(`--by: found “block” ${rest}`);
  });
});
