import { lightness, luminance, type Yarn } from './yarn.js';

/** How well two yarns can be told apart by light and dark alone. */
type Verdict = 'strong' | 'moderate' | 'soft' | 'will not show';

/** Two yarns and the difference of their CIE L* (0–100). */
interface ValuePair {
  readonly darker: Yarn;
  readonly lighter: Yarn;
  readonly difference: number;
  readonly verdict: Verdict;
}

/** Differences of L* from which a pattern shows strongly, moderately, softly (our proposal; no standard). */
const LEAST: readonly (readonly [number, Verdict])[] = [
  [40, 'strong'],
  [25, 'moderate'],
  [15, 'soft'],
];

/** CIE L* (0–100) of a yarn. */
export function yarnLightness(yarn: Pick<Yarn, 'hex'>): number {
  return lightness(luminance(yarn.hex));
}

/** Every pair of yarns, the largest difference of L* first; ties in alphabetical order of the letters. */
export function valuePairs(yarns: readonly Yarn[]): ValuePair[] {
  const pairs = yarns.flatMap((a, at) =>
    yarns.slice(at + 1).map((b): ValuePair => {
      const [darker, lighter] = yarnLightness(a) <= yarnLightness(b) ? [a, b] : [b, a];
      const difference = yarnLightness(lighter) - yarnLightness(darker);
      return { darker, lighter, difference, verdict: verdictOn(difference) };
    }),
  );
  const letters = (pair: ValuePair): string => pair.darker.letter + pair.lighter.letter;
  return pairs.sort((a, b) => b.difference - a.difference || (letters(a) < letters(b) ? -1 : 1));
}

/** The verdict on a difference of L*. */
function verdictOn(difference: number): Verdict {
  return LEAST.find(([least]) => difference >= least)?.[1] ?? 'will not show';
}

/** Divides the yarns into a dark and a light group at the widest gap; `gap` is the difference of L* across it. */
export function valueGroups(yarns: readonly Yarn[]): { readonly dark: Yarn[]; readonly light: Yarn[]; gap: number } {
  const sorted = [...yarns].sort((a, b) => yarnLightness(a) - yarnLightness(b) || (a.letter < b.letter ? -1 : 1));
  let at = 0;
  let gap = 0;
  for (let k = 1; k < sorted.length; k++) {
    const step = yarnLightness(sorted[k]!) - yarnLightness(sorted[k - 1]!);
    if (step > gap) [at, gap] = [k, step];
  }
  return { dark: sorted.slice(0, at), light: sorted.slice(at), gap };
}

/**
 * Warnings, one sentence each, about yarns that spoil the pattern: pairs that will not show, three or more yarns that
 * do not divide into dark and light, and a D that is lighter than L.
 */
export function valueWarnings(yarns: readonly Yarn[]): string[] {
  const near = valuePairs(yarns)
    .filter((pair) => pair.verdict === 'will not show')
    .map(
      ({ darker, lighter, difference }) =>
        `${darker.letter} and ${lighter.letter} differ by only ${difference.toFixed(1)} L*: they will not show on each other`,
    );
  const { gap } = valueGroups(yarns);
  const parted = yarns.length < 3 || verdictOn(gap) !== 'will not show';
  if (!parted) near.push(`no step in lightness parts dark yarns from light ones: the widest is ${gap.toFixed(1)} L*`);
  const dark = yarns.find((yarn) => yarn.letter === 'D');
  const light = yarns.find((yarn) => yarn.letter === 'L');
  const turned = dark !== undefined && light !== undefined && yarnLightness(dark) > yarnLightness(light);
  return turned ? [...near, 'D is the lighter yarn and L the darker one'] : near;
}
