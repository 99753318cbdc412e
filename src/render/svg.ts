/** Text made safe for SVG and HTML, in an element or in a quoted attribute; control characters are dropped. */
export function escapeText(text: string): string {
  const named: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
  return text
    .replace(/[&<>"']/g, (sign) => named[sign]!)
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '');
}

/** A number as short as it can be written to two decimals. */
export function short(value: number): string {
  return String(Math.round(value * 100) / 100).replace(/^(-?)0\./, '$1.');
}

/** An SVG element; attributes are escaped, `inside` is markup and is not. */
export function element(name: string, attributes: Readonly<Record<string, string | number>>, inside = ''): string {
  const written = Object.entries(attributes).map(
    ([key, value]) => ` ${key}="${typeof value === 'number' ? short(value) : escapeText(value)}"`,
  );
  return inside === '' ? `<${name}${written.join('')}/>` : `<${name}${written.join('')}>${inside}</${name}>`;
}
