import { describe, expect, test } from 'vitest';
import { redrawCommand } from '../../../src/page/boxes/command.js';
import { foundOf, HOUNDS_TOOTH } from '../../gallery/trial.js';

describe('what a weaver reads', () => {
  test('the command, with quotation marks where a shell needs them', () => {
    const { order } = foundOf(HOUNDS_TOOTH, 1);
    const redraw = [
      ['structure', '2/2 twill'],
      ['warp', 'D4'],
      ['times', '2'],
      ['yarns', 'D #1f2a44'],
    ] as const;
    expect(redrawCommand({ redraw, order }, 4)).toBe(
      'shedlight draw --structure "2/2 twill" --warp D4 --yarns "D #1f2a44" --times 4',
    );
    expect(redrawCommand({ redraw: [['draft', "it's $HOME.yaml"]], order })).toBe(
      "shedlight draw 'it'\\''s $HOME.yaml'",
    );
  });
});
