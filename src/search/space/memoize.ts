/**
 * A function that remembers its results by a key (the first argument, unless another is said), up to `most` of them: with
 * one more it forgets all and begins again.
 */
export function memoized<A extends readonly unknown[], T>(
  most: number,
  make: (...given: A) => T,
  keyOf: (...given: A) => unknown = (...given) => given[0],
): (...given: A) => T {
  const known = new Map<unknown, T>();
  return (...given) => {
    const key = keyOf(...given);
    let value = known.get(key);
    if (value === undefined) {
      value = make(...given);
      if (known.size >= most) known.clear();
      known.set(key, value);
    }
    return value;
  };
}
