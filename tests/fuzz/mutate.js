import { chance } from './chance.js';
import { WORDS } from './hostile.js';

/** Bytes of the longest file: a little more than is read. */
const LONGEST = 4_100_000;

/**
 * Makes mutated files: a file of the corpus with one change, or in half of them up to eight (bytes, numbers, words, lines and stretches of
 * other files). The same start gives the same files in the same order.
 */
export function mutator(start, others) {
  const { random, below, pick } = chance(`fuzz ${start}`);
  const splice = (bytes, from, to, insert) => Buffer.concat([bytes.subarray(0, from), insert, bytes.subarray(to)]);
  const stretch = (bytes, longest) => {
    const from = below(bytes.length + 1);
    return [from, Math.min(bytes.length, from + below(longest))];
  };
  const lineAt = (bytes) => {
    const from = bytes.lastIndexOf(10, below(bytes.length + 1)) + 1;
    const end = bytes.indexOf(10, from);
    return [from, end < 0 ? bytes.length : end + 1];
  };
  const changes = [
    (bytes) => {
      const copy = Buffer.from(bytes);
      if (copy.length > 0) copy[below(copy.length)] = below(256);
      return copy;
    },
    (bytes) => splice(bytes, ...stretch(bytes, 20), Buffer.alloc(0)),
    (bytes) => splice(bytes, ...lineAt(bytes), Buffer.alloc(0)),
    (bytes) => {
      const [from, to] = lineAt(bytes);
      const at = lineAt(bytes)[0];
      return splice(bytes, at, at, bytes.subarray(from, to));
    },
    (bytes) => {
      const at = below(bytes.length + 1);
      return splice(bytes, at, at, Buffer.from(pick(WORDS)));
    },
    (bytes) => {
      const other = pick(others);
      const at = below(bytes.length + 1);
      return splice(bytes, at, at, other.subarray(...stretch(other, 400)));
    },
    (bytes) => {
      const text = bytes.toString('latin1');
      const numbers = [...text.matchAll(/\d+/g)];
      if (numbers.length === 0) return bytes;
      const { index, 0: number } = pick(numbers);
      return splice(bytes, index, index + number.length, Buffer.from(random() < 0.5 ? String(below(30)) : pick(WORDS)));
    },
    (bytes) => {
      const [from, to] = lineAt(bytes);
      const wanted = random() < 0.02 ? 2000 : 1 + below(8);
      const times = Math.min(wanted, Math.floor(LONGEST / (to - from + 1)));
      return splice(bytes, to, to, Buffer.concat(Array.from({ length: times }, () => bytes.subarray(from, to))));
    },
    (bytes) => {
      const text = bytes.toString('latin1');
      const equals = [...text.matchAll(/=[^\r\n]*/g)];
      if (equals.length === 0) return bytes;
      const { index, 0: value } = pick(equals);
      return splice(bytes, index + 1, index + value.length, Buffer.from(pick(WORDS)));
    },
  ];
  return (corpus) => {
    let bytes = pick(corpus);
    for (let left = random() < 0.5 ? 1 : 1 + below(8); left > 0; left--)
      bytes = pick(changes)(bytes).subarray(0, LONGEST);
    return bytes;
  };
}
