/** Arrays shorter than this are short. */
const SHORT = 512;

type Numbers = Float64Array | Int32Array | Uint32Array | Uint16Array | Uint8Array;

/*
 * A search scores millions of cloths, and making a typed array costs as much as some hundred multiplications. So what
 * passes from step to step is written into the same arrays again and again.
 */

/**
 * Room for passing results: for each length one typed array, made when it is first asked for and handed out every time.
 * What it held before is still in it.
 */
export function scratch<T extends Numbers>(type: new (length: number) => T): (length: number) => T {
  // Short ones lie in a list, which is sooner asked than a map.
  const short: T[] = [];
  const long = new Map<number, T>();
  let last = new type(0);
  return (length) => {
    if (length === last.length) return last;
    const known = length < SHORT ? short[length] : long.get(length);
    last = known ?? new type(length);
    if (known === undefined) {
      if (length < SHORT) short[length] = last;
      else long.set(length, last);
    }
    return last;
  };
}

/** An array with room for so many numbers at least: the one given, if it is large enough. Its contents are not kept. */
export function roomy<T extends Numbers>(array: T, length: number): T {
  if (array.length >= length) return array;
  return new (array.constructor as new (length: number) => T)(Math.max(length, 2 * array.length));
}

/** What several users keep with one thing: after each user, what it keeps. */
export type Rooms = unknown[];

/**
 * One user's room with a thing. It is made once and stays with the thing when that comes to hold something else, so the
 * user notes in it for what it was filled. Things without rooms all share one.
 */
export function roomIn<T>(make: () => T): (rooms: Rooms | undefined) => T {
  const shared = make();
  return (rooms) => {
    if (rooms === undefined) return shared;
    for (let at = 0; at < rooms.length; at += 2) if (rooms[at] === make) return rooms[at + 1] as T;
    const room = make();
    rooms.push(make, room);
    return room;
  };
}
