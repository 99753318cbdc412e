/** Fields of a table as RFC 4180 has them, read sign by sign. */
export function fields(text: string): string[][] {
  const rows: string[][] = [[]];
  let [field, inQuotes] = ['', false];
  for (let at = 0; at < text.length; at++) {
    const sign = text[at]!;
    if (inQuotes && sign === '"' && text[at + 1] === '"') field += text[at++];
    else if (sign === '"') inQuotes = !inQuotes;
    else if (!inQuotes && (sign === ',' || sign === '\r')) {
      rows.at(-1)!.push(field);
      field = '';
      if (sign === '\r') at++;
      if (sign === '\r' && at < text.length - 1) rows.push([]);
    } else field += sign;
  }
  return rows;
}
