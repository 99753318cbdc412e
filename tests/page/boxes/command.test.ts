import { describe, expect, test } from 'vitest';
import { redrawCommand, runIn } from '../../../src/page/boxes/command.js';
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

  test('in which folder a command is run that names a draft by its last name', () => {
    expect(runIn({ redraw: [['draft', 'own.yaml']] })).toBe('Run it in the folder of own.yaml.');
    expect(runIn({ redraw: [['draft', 'drafts/own.yaml']] })).toBeUndefined();
    expect(runIn({ redraw: [['structure', 'huck']] })).toBeUndefined();
  });
});
