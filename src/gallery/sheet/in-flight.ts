/**
 * Runs work for each item, in order, at most `most` at a time. After a failure no further work is begun, and the error
 * is thrown once all running work has ended.
 */
export async function inFlight<T>(items: Iterable<T>, most: number, work: (item: T) => Promise<void>): Promise<void> {
  const left = items[Symbol.iterator]();
  const failures: unknown[] = [];
  const hand = async (): Promise<void> => {
    for (let next = left.next(); !next.done && failures.length === 0; next = left.next()) {
      try {
        await work(next.value);
      } catch (failure) {
        failures.push(failure);
      }
    }
  };
  await Promise.all(Array.from({ length: most }, hand));
  if (failures.length > 0) throw failures[0];
}
