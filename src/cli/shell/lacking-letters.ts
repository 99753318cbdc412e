import { lettersLacking } from '../../render/type.js';

/** A line for each name that cannot be written whole on paper: which letters of it the type lacks. */
export function lackingLines(named: readonly { readonly what: string; readonly name: string | undefined }[]): string[] {
  return named.flatMap(({ what, name = '' }) => {
    const lacking = lettersLacking(name).join(' ');
    return lacking === '' ? [] : [`${what} ${name}: no type for ${lacking}; the sheets have boxes to write in by hand`];
  });
}
