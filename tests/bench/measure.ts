/** Seconds of user time that this process has taken, its threads included. */
export function userSeconds(): number {
  return process.cpuUsage().user / 1e6;
}

/** Least user time that must pass for one measurement, in seconds: the clock of the system has ticks. */
const LONG_ENOUGH = 0.05;

/** Microseconds of user time a call. The least of several measurements is what the work itself takes. */
export function microseconds(work: () => void): number {
  const from = userSeconds();
  let calls = 0;
  let taken = 0;
  for (; taken < LONG_ENOUGH; taken = userSeconds() - from) {
    work();
    calls++;
  }
  return (taken * 1e6) / calls;
}
