import { describe, expect, test } from 'vitest';
import { askedOf, titleOf } from '../../../src/gallery/html/page-asked.js';
import { countsOf } from '../../../src/gallery/html/page-counts.js';
import type { Question } from '../../../src/search/question/question.js';
import { HOUNDS_TOOTH, trialOutcome, trialQuestion } from '../trial.js';

const saidOf = (more: Partial<Question>) => Object.fromEntries(askedOf(trialQuestion(more)));

describe('what was asked, in words', () => {
  test('says nothing of what was not asked', () => {
    const said = saidOf({});
    expect(said['Warp orders']).toBe('colour orders of 2 to 6 elements');
    for (const thing of ['Name', 'Treadled', 'Blocks', 'Blocks as treadled', 'Warp', 'Weft orders', 'Loom']) {
      expect(said).not.toHaveProperty(thing);
    }
  });

  test('names that override the direction of writing do not turn the words after them about', () => {
    const draft = { file: 'a.wif', draft: { ...HOUNDS_TOOTH, name: 'tweed\u202E\u2067!' } };
    expect(titleOf(trialQuestion({ structures: [], draft }))).toBe('tweed!: colour orders of 2 to 6 elements');
    expect(saidOf({ structures: [], draft }).Draft).toBe('tweed! (a.wif)');
  });

  test('says the name that is drafted, which of its drafts, and letters on shafts of their own', () => {
    const name = { text: 'INDIGO', drafts: 'usual', mirrored: false, letters: {} } as const;
    expect(saidOf({ name }).Name).toBe('INDIGO, the usual draft of its letters');
    expect(saidOf({ name: { ...name, drafts: 'all', mirrored: true } }).Name).toBe(
      'INDIGO, every draft of its letters, mirrored',
    );
    expect(saidOf({ name: { ...name, drafts: 3, letters: { Y: 4 } } }).Name).toBe(
      'INDIGO, draft 3 of its letters, Y on shaft 4',
    );
  });

  test('says the blocks of the treadling apart from those of the threading', () => {
    const said = saidOf({ profile: ['A', 'A', 'B'], treadled: ['B', 'A'], treadlings: ['rose'] });
    expect(said).toMatchObject({ Treadled: 'rose', Blocks: 'A A B', 'Blocks as treadled': 'B A' });
  });

  test('says a warp that is given, and that the orders are the weft’s', () => {
    const question = trialQuestion({ warp: [0, 1, 1], weft: { rule: 'own' } });
    const said = Object.fromEntries(askedOf(question));
    expect(said).toMatchObject({
      Warp: 'DLL',
      Weft: 'in an order of its own: every weft order on the one warp',
      'Weft orders': 'colour orders of 2 to 6 elements',
    });
    expect(said).not.toHaveProperty('Warp orders');
    expect(titleOf(question)).toBe('2/2 twill: warp DLL, weft in colour orders of 2 to 6 elements');
    const [written] = countsOf(question, trialOutcome().counts, 3);
    expect(written).toContain('1,024 orders can be written');
    const alone = trialQuestion({ warp: [0] });
    expect(titleOf(alone)).toBe('2/2 twill: warp all D');
    expect(titleOf(trialQuestion({ warp: [0, 0, 0, 0] }))).toBe('2/2 twill: warp all D');
    const stripes = [...new Array<number>(8).fill(0), ...new Array<number>(8).fill(1)];
    expect(saidOf({ warp: stripes }).Warp).toBe('D8 L8');
    const wound = Array.from({ length: 168 }, (_, end) => ((end * end) % 3) % 2);
    expect(saidOf({ warp: [...wound, 0, 0, 0, 1] }).Warp).toBe('an order of 172 threads');
    expect(saidOf({ warp: [0] })).not.toHaveProperty('Weft orders');
  });

  test('says what a draft was found to be, and every way in which it is treadled', () => {
    const draft = { ...HOUNDS_TOOTH, threading: HOUNDS_TOOTH.threading.slice(0, 4), warp: [0, 0, 1, 1] };
    const asked = { structures: [], draft: { file: 'mine.wif', draft } };
    const recognised = 'It is 2/2 twill, “straight” (certain): threading, sheds and their order fit.';
    expect(saidOf(asked)).toMatchObject({ Draft: 'mine.wif', Recognised: recognised, Treadled: 'as the draft is' });
    expect(saidOf(asked)).not.toHaveProperty('Tabby');
    const onTheLoom = saidOf({ ...asked, onTheLoom: true, treadlings: ['all'] });
    expect(onTheLoom).toMatchObject({ 'On the loom': 'mine.wif', Recognised: recognised });
    expect(onTheLoom.Treadled).toBe(
      'its own, broken, point, rosepath; on tie-ups plain weave, 2/2, 1/3, 3/1: straight, each pick twice, straight with tabby, reversed, point with tabby, rose with tabby, herringbone, basket, half basket, point, broken, rosepath',
    );
    expect(onTheLoom.Tabby).toBe('L, where the structure has tabby');
    expect(saidOf({ treadlings: ['all'] }).Treadled).toBe('in every way');
  });

  test('says the loom as far as it is given, and that it sets cloths aside', () => {
    expect(saidOf({ loom: { kind: 'table' } }).Loom).toBe('table loom; what it cannot weave is set aside');
    const loom = {
      kind: 'rising',
      shafts: 4,
      treadles: 6,
      heddles: [120, 120, 120, 70],
      ends: 400,
      shuttles: 1,
    } as const;
    expect(saidOf({ loom }).Loom).toBe(
      'rising shed, 4 shafts, 6 treadles, 400 ends in the warp, 1 shuttle, heddles 120 120 120 70 from shaft 1 on; ' +
        'what it cannot weave is set aside',
    );
  });
});
