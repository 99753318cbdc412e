import cliProgress, { type GenericFormatter, type SingleBar } from 'cli-progress';
import type { Stage } from '../../search/explore.js';
import { grouped } from '../../words/counts.js';

/** The display of progress. */
export interface Progress {
  readonly tell: (stage: Stage) => void;
  /** Restores the terminal; call this last. */
  readonly end: () => void;
}

/** Word for what goes on in a stage, by the first word of the stage's name. */
const WORDS: Readonly<Record<string, string>> = {
  search: 'searching',
  find: 'finding',
  hold: 'holding',
  describe: 'describing',
  draw: 'drawing',
  cross: 'crossing',
};

/**
 * Shows progress on a stream: a bar with rate and time left if it is a terminal that can move its cursor; nothing
 * elsewhere, and nothing if `quiet`.
 */
export function progressOn(stream: NodeJS.WriteStream, quiet: boolean): Progress {
  const cannot = quiet || !stream.isTTY || process.env.TERM === 'dumb';
  return cannot ? { tell: () => {}, end: () => {} } : bars(stream);
}

function bars(stream: NodeJS.WriteStream): Progress {
  let bar: SingleBar | undefined;
  let told = '';
  const end = (): void => {
    bar?.stop();
    bar = undefined;
    process.off('exit', end);
  };
  return {
    tell({ name, done, of, note }) {
      if (name !== told) {
        end();
        told = name;
        bar = new cliProgress.SingleBar({
          stream,
          format: lineOf(name),
          barsize: 24,
          fps: 10,
          hideCursor: true,
          gracefulExit: false,
        });
        bar.start(of, 0, { note });
        // The cursor is restored however the process ends.
        process.once('exit', end);
      }
      bar?.update(done, { note });
    },
    end,
  };
}

/** One line of progress: stage, bar, how many of how many, rate, time left. */
function lineOf(name: string): GenericFormatter {
  return (options, { progress, value, total, startTime }, { note }: { readonly note?: string }) => {
    const bar = cliProgress.Format.BarFormat(progress, {
      ...options,
      barCompleteString: '█'.repeat(24),
      barIncompleteString: '░'.repeat(24),
    });
    const seconds = (performance.timeOrigin + performance.now() - startTime) / 1000;
    const pace = value === 0 || seconds < 0.2 ? '' : `, ${paceInWords(value / seconds, total - value)}`;
    const going = name.replace(/^\w+/, (word) => WORDS[word] ?? word);
    return `${going} ${bar} ${grouped(value)} of ${grouped(total)}${note === undefined ? '' : `, ${note}`}${pace}`;
  };
}

/** Rate and time left in words. */
function paceInWords(perSecond: number, left: number): string {
  const seconds = Math.ceil(left / perSecond);
  return `${grouped(Math.round(perSecond))} a second, ${seconds < 90 ? `${seconds} s` : `${Math.ceil(seconds / 60)} min`} left`;
}
