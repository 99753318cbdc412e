import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { html, safe } from '../../../src/gallery/html/html.js';

/** The five named signs of HTML read back (HTML standard, 13.5: named character references). */
function readBack(markup: string): string {
  return markup
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&amp;/g, '&');
}

const text = fc.oneof(
  fc.string({ unit: 'grapheme' }),
  fc.constantFrom(
    '<img src=x onerror=alert(1)>',
    '</style><script>',
    '"><b>',
    "' onload='x",
    '&lt;',
    '&amp;amp;',
    '{{x}}',
  ),
);

describe('html', () => {
  test('holds nothing of a text that could open a tag or end an attribute, and loses none of it', () => {
    fc.assert(
      fc.property(text, (given) => {
        const { markup } = html`<p title="${given}">${given}</p>`;
        const [, attribute, inside] = /^<p title="([^"]*)">([^<]*)<\/p>$/.exec(markup)!;
        expect(attribute).not.toMatch(/[<>'"]/);
        expect(inside).not.toMatch(/[<>'"]/);
        expect(readBack(inside!)).toBe(given);
        expect(readBack(attribute!)).toBe(given);
      }),
    );
  });

  test('never reads what stands in one hole as a part of another', () => {
    fc.assert(
      fc.property(fc.array(text), (list) => {
        const { markup } = html`<ul>${list.map((each) => html`<li>${each}</li>`)}</ul>`;
        const items = markup.slice('<ul>'.length, -'</ul>'.length).split(/(?<=<\/li>)/);
        expect(items.filter((item) => item !== '').map((item) => readBack(item.slice(4, -5)))).toEqual(list);
      }),
    );
  });

  test('leaves markup of its own as it is, escapes it once, and leaves out what is not there', () => {
    expect(html`${html`<b>${'a&b'}</b>`}`.markup).toBe('<b>a&amp;b</b>');
    expect(html`${safe('<svg/>')}`.markup).toBe('<svg/>');
    expect(html`a${undefined}${null}${false}${[]}b${0}`.markup).toBe('ab0');
  });
});
