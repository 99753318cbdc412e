import { EXIT } from '../shell/io.js';

/** Signals of Ctrl-C. */
export interface Interrupt {
  /** Aborted by the first Ctrl-C: finish with what was found. */
  readonly enough: AbortSignal;
  /** Aborted by the second Ctrl-C: stop at once. */
  readonly signal: AbortSignal;
  /** Stops listening. */
  readonly end: () => void;
}

/** Listens for Ctrl-C; calls `onFirst` at the first. */
export function onInterrupt(onFirst: () => void): Interrupt {
  const [enough, stop] = [new AbortController(), new AbortController()];
  const heard = (): void => {
    // After a third Ctrl-C the process ends without waiting for anything.
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
 * Listens for signals to end the process (all but Ctrl-C), and then exits in order: temporary files are deleted and the
 * terminal is restored. Returns a function that stops listening.
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
