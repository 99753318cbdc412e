import { PART } from '../../score/parts/parts.js';
import { FILL_CHOICES } from '../../search/question/question-table.js';

/**
 * Words of the trade that keys, figures and sheets use, and the few of our own. What a table explains is not said again
 * here: a word that stands there too is taken from it.
 */
export const GLOSSARY: Readonly<Record<string, string>> = {
  'warp, weft': 'the threads along the loom; the threads woven across them.',
  'end, pick': 'one thread of the warp; one passage of the weft (US also shot, filling).',
  sett: 'ends, and picks, to the inch or centimetre.',
  'shaft, heddle': 'the frame (US harness); the eye on it that carries one end (UK heald).',
  'reed, dent': 'the comb that spaces the ends; one gap of it. A reed is named by its dents to a length.',
  threading: 'the shaft of each end.',
  treadling: 'the treadle of each pick; also one of the ways in which a structure is woven, by its name.',
  'tie-up, lift plan': 'which shafts each treadle moves; which shafts each pick raises.',
  shed: 'the opening between raised and lowered ends through which the shuttle goes.',
  'rising, sinking':
    'a loom whose treadles raise shafts (jack), or lower them (counterbalance). Countermarch does both.',
  structure: 'how the threads cross, whatever their colours: plain weave, twill, overshot.',
  draft: 'threading, tie-up and treadling, with the colours of the threads.',
  drawdown: 'the cloth as a draft gives it, a cell for each crossing.',
  repeat: 'the ends, or picks, after which weave and colours begin again.',
  unit: 'the smallest group of ends or picks that weaves the structure by itself.',
  'block, profile': 'ends, or picks, that weave pattern or ground on their own; the order of the blocks.',
  'as drawn in': 'treadled in the order of the threading (US tromp as writ).',
  'colour order': 'the order of colours in warp or weft, repeated over its width or length.',
  element: 'one place in a colour order; it covers a thread, a unit, or several.',
  alternate: `an element in its own colour and the next yarn by turns (${FILL_CHOICES.alternate}).`,
  'weft as warp, exchange': 'the weft in the order of the warp; the same with dark and light swapped.',
  motif: 'what one repeat of the cloth shows.',
  figure: `${PART.figure.means}.`,
  'half-tone': 'an area where dark and light threads cross, so that neither is clear.',
  'floating thread':
    'one that passes over or under more than one other without a tie; its float is how many, or how long.',
  'plane group': 'which turns, mirrors and glides a pattern has, by its name in crystallography.',
  tabby: 'the plain-weave picks between pattern picks.',
  carry: 'weft that runs up the edge while another shuttle works.',
  'floating selvedge': 'an end at each edge, on no shaft, that the shuttle goes round.',
  'take-up, draw-in': 'the length that warp loses in bending round the weft; the width that cloth loses at the fell.',
  'header, divider, footer': 'what is woven before the first piece, between two, and after the last.',
  'put-up': 'what a cone, spool or skein holds as it is sold.',
  'set aside':
    'tried and not shown: floats too long, a limit passed, a texture too fine, threads that do not hold together, or ' +
    'woven before.',
  'near twin': 'a cloth so like a better one that only a difference of a thread or two tells them apart.',
  kind: 'a cloth and its near twins; “one of each kind” shows cloths that look unlike.',
  code: 'the name of a cloth, eight letters and digits: the same cloth has the same code wherever it is found.',
  shortlist: 'the cloths kept from galleries, in kept.json, with stars and notes.',
  gamp: 'one warp in sections, woven in sections of the weft, so that every pair meets.',
  classic: 'a well-known colour order: two and two, log cabin, hound’s tooth, and others.',
};
