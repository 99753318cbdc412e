import { needed, nested, optional, table, withDefault } from '../../input/key.js';
import { kind, name, number, text, version, yesNo } from '../../input/kinds.js';
import {
  endsOf,
  LIFTS,
  liftPlanOf,
  ORDER,
  orderTextOf,
  PICK_KINDS,
  pickKindsOf,
  picksOf,
  tieUpOf,
  UNITS,
  unitsOf,
} from './strands-given.js';
import { SETT, YARNS } from './yarns-given.js';

const thickness = (of: string) =>
  withDefault(number('a thickness, 1 being usual', 0.1, 20), '1', { about: `thickness of ${of}`, example: '2' });

/** The keys of a draft that a person writes. */
export const DRAFT_TABLE = table({
  name: optional(name('a name'), { about: 'title of the draft', example: 'hand towel' }),
  // Notes are for the person who reads the file; a draft has no place for them.
  notes: optional(text('some words'), { about: 'words for whoever reads the file', example: 'sley 2 per dent' }),
  threading: needed(kind('shafts of each end, as 1 2 3 4, 1-4 or 4x(1 2)', endsOf), {
    about: 'shaft of each end; 0 for none, 1+3 for two shafts',
    example: '4x(1 2 3 4) 4x(5 6 7 8)',
  }),
  'tie-up': optional(kind(LIFTS, tieUpOf), {
    about: 'shafts raised by each treadle',
    example: '[1 2, 2 3, 3 4, 4 1]',
  }),
  sinking: withDefault(yesNo, 'no', {
    about: 'whether the tie-up or lift plan gives the shafts that go down',
    example: 'yes',
  }),
  treadling: optional(kind('treadles of each pick, as 1 2 3 4 or 1-4', picksOf), {
    about: 'treadle of each pick; 1+3 for two feet',
    example: '1-4',
  }),
  'lift plan': optional(kind(LIFTS, liftPlanOf), {
    about: 'shafts raised at each pick, instead of tie-up and treadling',
    example: '[1 2, 3 4, 2 3, 1 4]',
  }),
  'pick kinds': withDefault(kind(PICK_KINDS, pickKindsOf), 'ground', {
    about: 'what each pick is, in turn and over again: ground, pattern, tabby',
    example: 'pattern tabby',
  }),
  units: optional(kind(UNITS, unitsOf), {
    about: 'ends in a unit of the threading, or a list of them; an order may then run by unit',
    example: '4',
    usual: 'each end is a unit',
  }),
  'pick units': optional(kind(UNITS, unitsOf), {
    about: 'picks in a unit of the treadling, or a list of them',
    example: '8',
    usual: 'each pick is a unit',
  }),
  warp: optional(kind(ORDER, orderTextOf), {
    about: 'colour order of the warp, over and over',
    example: 'D4 L4',
    usual: 'the first yarn',
  }),
  weft: optional(kind(ORDER, orderTextOf), {
    about: 'colour order of the weft, over and over',
    example: 'D L D D L',
    usual: 'the last yarn',
  }),
  yarns: optional(YARNS, {
    about: 'letters of the yarns, with their colours',
    example: '{ D: "#1f2a44", L: "#efe6d2" }',
    usual: 'D dark, L light',
  }),
  sett: optional(SETT, {
    about: 'ends and picks to the inch or centimetre',
    example: '20/18 per inch',
    usual: '20 per inch',
  }),
  widths: withDefault(
    nested(
      table({
        warp: thickness('the warp'),
        ground: thickness('ground picks'),
        pattern: thickness('pattern picks'),
        tabby: thickness('tabby picks'),
      }),
      'warp, ground, pattern and tabby, each with its thickness',
    ),
    {},
    { about: 'how thick the threads are drawn, beside one another', example: '{ pattern: 2 }' },
  ),
  version: version(1),
});
