/** Flags for the options of a plan, in groups. */
export const NEEDS_FLAGS = {
  'The warp:': [
    { key: 'width', flags: '--width <length>', about: 'width in the reed (default: 20 in)' },
    { key: 'sett', flags: '--sett <threads>', about: 'ends/picks, "20", "8/8 per cm" (default: each cloth’s own)' },
    {
      key: 'border',
      flags: '--border <ends>',
      about: 'ends of one yarn on both sides, "8 D"; "even D": whatever is left after whole repeats (default: none)',
    },
    { key: 'mirror', flags: '--mirror <turns>', about: 'warp mirrored, threading too: single, doubled (default: no)' },
    { key: 'mirror weft', flags: '--mirror-weft <turns>', about: 'treadling mirrored: single, doubled (default: no)' },
    {
      key: 'balance',
      flags: '--balance <when>',
      about: 'ends that make both sides the same: auto, yes, no (default: auto)',
    },
    { key: 'floating', flags: '--floating <when>', about: 'floating selvedges: auto, yes, no (default: auto)' },
    { key: 'reed', flags: '--reed <dents>', about: '10 per inch, or 50/10: to 10 cm (default: most even common reed)' },
    { key: 'yarns', flags: '--yarns <sizes>', about: '"8/2 cotton", or "D 8/2 cotton, L 16/2 linen"' },
    { key: 'wraps', flags: '--wraps <n>', about: 'threads side by side to the inch (cm), for the closest sett' },
    {
      key: 'fibre',
      flags: '--fibre <fibre>',
      about: 'cotton, silk, linen, worsted, woollen (default: as the size says)',
    },
    { key: 'hand', flags: '--hand <hand>', about: 'general, drape: how close a sett is advised (default: general)' },
  ],
  'Warp length:': [
    { key: 'piece', flags: '--piece <length>', about: 'finished length of each piece (default: 5 in)' },
    { key: 'pieces', flags: '--pieces <n>', about: 'pieces of each cloth (default: 1)' },
    { key: 'divider', flags: '--divider <length>', about: 'between pieces (default: 1 in)' },
    { key: 'header', flags: '--header <length>', about: 'before the first piece (default: 2 in)' },
    { key: 'footer', flags: '--footer <length>', about: 'after the last piece (default: 2 in)' },
    { key: 'shrinkage', flags: '--shrinkage <share>', about: 'lost in washing (default: 10 %)' },
    { key: 'take-up', flags: '--take-up <share>', about: 'take-up of the warp in weaving (default: 8 %)' },
    { key: 'waste', flags: '--waste <length>', about: 'loom waste (default: 27 in; table loom 17 in)' },
    { key: 'testing', flags: '--testing <length>', about: 'test weaving and re-tying (default: 18 in)' },
  ],
  'The loom:': [
    { key: 'loom', flags: '--loom <kind>', about: 'rising, sinking, countermarch, table (default: rising)' },
    { key: 'shafts', flags: '--shafts <n>', about: 'shafts that it has' },
    { key: 'treadles', flags: '--treadles <n>', about: 'treadles that it has; two feet where one will not do' },
    { key: 'heddles', flags: '--heddles <list>', about: 'heddles on each shaft, "120" or "120 120 120 70"' },
    { key: 'loom width', flags: '--loom-width <length>', about: 'weaving width' },
    { key: 'shuttles', flags: '--shuttles <n>', about: 'shuttles at hand' },
  ],
  'The sheets:': [
    { key: 'for', flags: '--for <purpose>', about: 'limits floats: towel, general, hanging, baby (default: general)' },
    { key: 'paper', flags: '--paper <size>', about: 'a4, letter (default: a4)' },
    { key: 'columns', flags: '--columns <n>', about: 'pictures side by side on contact sheets: 4, 5 (default: 4)' },
    {
      key: 'pictures',
      flags: '--pictures <size>',
      about: 'their size: half, actual, or far: as from 6 m (default: half)',
    },
  ],
} as const;
