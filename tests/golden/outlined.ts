import { textPath } from '../../src/render/text.js';

const ALIGN: Readonly<Record<string, 'left' | 'middle' | 'right'>> = { start: 'left', middle: 'middle', end: 'right' };

/** Outlines are rounded to tenths: they are drawn so many times too large, and then made smaller. */
const LARGER = 100;

/**
 * A draft's drawing with outlines for its letters, in the type of the sheets. The drawing itself leaves the type to
 * whatever shows it, and every machine has others.
 */
export function outlined(svg: string): string {
  const drawing = svg.replace(
    /<g ([^>]*)>((?:<text [^>]*>[^<]*<\/text>)+)/g,
    (_, group: string, texts: string) =>
      `<g ${group}>${texts.replace(/<text ([^>]*)>([^<]*)<\/text>/g, (_, own: string, said: string) => paths(said, `${own} ${group}`))}`,
  );
  if (drawing.includes('<text')) throw new Error('found letters that are not in a group of letters');
  return drawing;
}

/** Outlines of one text; several places are those of its letters in turn. */
function paths(said: string, attributes: string): string {
  const of = (name: string): string => new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes)?.[1] ?? '';
  const places = of('x').split(' ').map(Number);
  const y = (Number(of('y')) + Number(of('dy'))) * LARGER;
  const type = { y, size: Number(of('font-size')) * LARGER, align: ALIGN[of('text-anchor')]! };
  return (places.length === 1 ? [said] : [...said])
    .map((word, at) => textPath(word, { x: places[at]! * LARGER, ...type }))
    .map((d) => `<path transform="scale(${1 / LARGER})" d="${d}"/>`)
    .join('');
}
