import { EXIT } from '../shell/io.js';

/** What Ctrl-C asks for. */
export interface Interrupt {
  /** Said once: finish with what there is. */
  readonly enough: AbortSignal;
  /** Said twice: stop at once. */
  readonly signal: AbortSignal;
  /** Listens no longer. */
  readonly end: () => void;
}

/** Listens for Ctrl-C; `onFirst` is told when it comes for the first time. */
export function onInterrupt(onFirst: () => void): Interrupt {
  const [enough, stop] = [new AbortController(), new AbortController()];
  const heard = (): void => {
    // Asked a third time, a person does not want to wait for anything.
    if (stop.signal.aborted) process.exit(EXIT.interrupted);
    if (enough.signal.aborted) {
      stop.abort();
    } else {
      onFirst();
      enough.abort();
    }
  };
  process.on('SIGINT', heard);
  return { enough: enough.signal, signal: stop.signal, end: () => process.off('SIGINT', heard) };
}

/**
 * Ends the process in order where it is told to end: what it had under way is cleared away, and the terminal is as it
 * was. Ctrl-C is left to those who listen for it. Returns what ends the listening.
 */
export function onEnd(): () => void {
  const ends = [
    ['SIGHUP', EXIT.hungUp],
    ['SIGTERM', EXIT.terminated],
    ['SIGINT', EXIT.interrupted],
  ] as const;
  const listeners = ends.map(([signal, code]) => {
    const heard = (): void => {
      if (signal !== 'SIGINT' || process.listenerCount(signal) === 1) process.exit(code);
    };
    process.on(signal, heard);
    return (): void => void process.off(signal, heard);
  });
  return () => {
    for (const end of listeners) end();
  };
}
