import type { Floats } from '../../cloth/floats.js';
import { floatInWords } from '../../score/words/figure-words.js';
import { counted } from '../../words/counts.js';
import type { Question } from '../question/question.js';
import type { Outcome } from '../strategy/outcome.js';
import { floatRemedy } from './float-remedy.js';

/**
 * One sentence about candidates set aside for their floats: the shortest of their longest floats, and the remedies.
 * Undefined if most candidates are within the limit.
 */
export function floatRemedyInWords(question: Question, outcome: Outcome): string | undefined {
  const { counts, found, nearestFloats } = outcome;
  const isMost = found.length === 0 || counts.setAside.float > counts.examined / 2;
  return nearestFloats && isMost ? remedyInWords(question, nearestFloats) : undefined;
}

/** The sentence, for the floats of the cloth that is nearest to the limit. */
export function remedyInWords(question: Question, nearest: Floats): string {
  const { sett, limits } = question;
  const { times, run, sett: closer, structures, grows } = floatRemedy(question, nearest);
  const named = structures.map(({ name, floats }) => `${name} (${threadsIn(floats)})`).join(' or ');
  const kind = grows ? 'a structure whose floats do not grow with the block' : 'a structure with shorter floats';
  const ways = [
    ...(times === undefined ? [] : [`a smaller size (×${times})`]),
    ...(run === undefined ? [] : [`a block order with at most ${counted(run, 'unit')} of a block side by side`]),
    ...(closer === undefined
      ? []
      : [`a closer sett in finer yarn (${closer.ends} ends and ${closer.picks} picks per ${closer.per})`]),
    ...(named === '' ? [] : [`${kind}, ${named}`]),
  ];
  const float = floatInWords({ floats: nearest }, { sett, floatLimit: limits.float }).replace('longest float ', '');
  const met = `The cloth nearest to the limit has a float of ${float}`;
  const last = ways.at(-1);
  if (last === undefined) return `${met}; only a longer limit allows it.`;
  return `${met}; within the limit would be ${ways.length === 1 ? last : `${ways.slice(0, -1).join(', ')}, or ${last}`}.`;
}

function threadsIn({ longest }: Floats): string {
  return counted(longest!, 'thread');
}
