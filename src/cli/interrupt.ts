import { EXIT } from './io.js';

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
