type Numbers = Float64Array | Int32Array | Uint32Array | Uint16Array | Uint8Array;

/**
 * Room for passing results: for each length one typed array, made when it is first asked for and then handed out again
 * and again. What it held before is still in it, and the next use overwrites it. Making a typed array costs as much as
 * some hundred multiplications, and a search scores millions of cloths.
 */
export function scratch<T extends Numbers>(type: new (length: number) => T): (length: number) => T {
  const rooms = new Map<number, T>();
  return (length) => {
    let room = rooms.get(length);
    if (room === undefined) {
      room = new type(length);
      rooms.set(length, room);
    }
    return room;
  };
}
