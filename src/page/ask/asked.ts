import type { OwnDraft } from './own-draft.js';

/** A question as it is asked in the page: the values of its keys, as a person writes them or as a gallery stores them. */
export type Asked = Readonly<Record<string, unknown>>;

/** The question as YAML, a key a line; what is empty is left out. Every value is also JSON. */
export function questionText(asked: Asked): string {
  return Object.entries(asked)
    .filter(([, value]) => value !== undefined && value !== '')
    .map(([key, value]) => `${/ /.test(key) ? JSON.stringify(key) : key}: ${valueText(value)}\n`)
    .join('');
}

/** A value as JSON; a text of several lines as lines, set in by two. */
function valueText(value: unknown): string {
  if (typeof value !== 'string' || !value.trimEnd().includes('\n')) return JSON.stringify(value);
  return `|2-\n${value.trimEnd().replace(/^/gm, '  ')}`;
}

/** The value of a key as the text of its field: `2, 3, 4`, `float 7, repeat 400`, `rising, 4 shafts`. */
export function fieldText(key: string, value: unknown): string {
  if (value === undefined || value === null) return '';
  if (Array.isArray(value)) return value.map(String).join(SPACED.includes(key) ? ' ' : ', ');
  if (typeof value !== 'object') return String(value);
  const write = WRITTEN[key] ?? partsText;
  return write(value as Parts);
}

type Parts = Readonly<Record<string, unknown>>;

/** Keys whose values are written with spaces between them. */
const SPACED: readonly string[] = ['profile', 'treadled', 'heddles'];

/** How values that have keys of their own are written in one line. */
const WRITTEN: Readonly<Record<string, (value: Parts) => string>> = {
  sett: ({ ends, picks, per }) => `${ends === picks ? ends : `${ends}/${picks}`}${per === 'cm' ? ' per cm' : ''}`,
  loom: (loom) =>
    Object.entries(loom)
      .map(([key, value]) => {
        if (key === 'kind' || key === 'width') return String(value);
        return key === 'heddles' ? `heddles ${fieldText(key, value)}` : `${value} ${key}`;
      })
      .join(', '),
  'name draft': ({ text, drafts, mirrored }) =>
    [text, drafts !== 'usual' && `draft ${drafts}`, mirrored === 'yes' && 'mirrored'].filter(Boolean).join(', '),
};

function partsText(value: Parts): string {
  return Object.entries(value)
    .map(([key, part]) => `${key} ${part}`)
    .join(', ');
}

/** A question that was asked, with the draft of a person's own that it is asked of. */
export interface AskedOf {
  readonly asked: Asked;
  readonly own?: OwnDraft | undefined;
}

/** Reads the question out of an address; undefined if it holds none. */
export function askedOfAddress(hash: string): AskedOf | undefined {
  const said = new URLSearchParams(hash);
  try {
    const asked: unknown = JSON.parse(said.get('ask') ?? '');
    if (typeof asked !== 'object' || asked === null || Array.isArray(asked)) return undefined;
    const { draft, 'on the loom': onTheLoom } = asked as Asked;
    const bytes = said.get('draft');
    const name = draft ?? onTheLoom;
    if (bytes === null || typeof name !== 'string') return { asked: asked as Asked };
    return { asked: asked as Asked, own: { name, bytes: Uint8Array.from(atob(bytes), (c) => c.charCodeAt(0)) } };
  } catch {
    return undefined;
  }
}

/** Most bytes of a draft that an address holds; a larger one has to be opened again. */
const LONGEST_DRAFT = 20_000;

/** The part of an address after `#` that asks a question. */
export function addressOfAsked({ asked, own }: AskedOf): string {
  const said = new URLSearchParams({ ask: JSON.stringify(asked) });
  if (own !== undefined && own.bytes.length <= LONGEST_DRAFT) {
    said.set('draft', btoa(Array.from(own.bytes, (byte) => String.fromCharCode(byte)).join('')));
  }
  return said.toString();
}
