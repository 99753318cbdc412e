/** Lets events arrive between two pieces of work: an abort, progress. */
export function pause(): Promise<void> {
  // Browsers have no setImmediate; Node's timers wait for a millisecond.
  return new Promise<void>((resume) => (typeof setImmediate === 'function' ? setImmediate : setTimeout)(resume));
}
