/** Flags for the options of a plan, in groups, as `plan` and `deal` have them. */
export const PLAN_FLAGS = {
  'The warp:': {
    usual: ['width', 'sett', 'yarn size', 'reed', 'border', 'mirror'],
    seldom: ['mirror weft', 'balance', 'floating', 'in hand', 'put-up', 'wraps', 'fibre', 'hand'],
  },
  'Warp length:': {
    usual: ['piece', 'pieces', 'take-up', 'shrinkage', 'waste'],
    seldom: ['draw-in', 'divider', 'header', 'footer', 'testing'],
  },
  'The loom:': { usual: ['loom'] },
  'The sheets:': { usual: ['for', 'paper'], seldom: ['project', 'seen', 'columns', 'pictures'] },
} as const;
