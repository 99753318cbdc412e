import { KEY_WORDS } from '../batch.js';
import { type Candidate, draftOf } from '../candidate.js';
import type { Jobs } from '../jobs.js';
import { absorb, noneAside, type Search, type Searched } from '../methods.js';
import { Alike } from './alike.js';
import { Room } from './room.js';
import { Rounds, type Told } from './rounds.js';
import { candidateOf } from './written.js';

/** Candidates scored in one go. */
const TOGETHER = 32;

/**
 * Searches a space that is beyond listing by changing what has done well, kind by kind, until that brings next to
 * nothing or as many candidates have been scored as the space says.
 */
export async function searchEvolved(given: Search): Promise<Searched> {
  const { question, space, crew, before, newArchive, progress, enough } = given;
  const { families, numbers: most } = space;
  const lines: string[] = [];
  const at = (index: number): Candidate => candidateOf(lines[index]!, families);
  const searched = { archive: newArchive(at), setAside: noneAside(), passed: 0 };
  const isNear = (candidate: Candidate): boolean => before?.isNear(draftOf(candidate, question)) === true;
  const alike = new Alike(question, families);
  const rounds = new Rounds(new Room(question, families), alike, families, question.seed, isNear);
  let settled = false;
  while (lines.length < most && !settled && !enough?.aborted) {
    const from = lines.length;
    const asked = rounds.ask();
    lines.push(...asked);
    const told: (Told | undefined)[] = asked.map(() => undefined);
    const jobs: Jobs = {
      count: Math.ceil(asked.length / TOGETHER),
      at: (job) => {
        const first = job * TOGETHER;
        return { kind: 'lines', from: from + first, lines: asked.slice(first, first + TOGETHER) };
      },
    };
    await crew.run(jobs, ({ batch }) => {
      absorb(searched, batch);
      for (let k = 0; k < batch.length; k++) {
        const key = batch.key.subarray(k * KEY_WORDS, (k + 1) * KEY_WORDS);
        if (before?.isDone(key)) continue;
        told[batch.index[k]! - from] = { niche: batch.niche[k]!, score: batch.score[k]! / 1e9, key: key.join() };
      }
    });
    rounds.tell(told);
    // A round in which nothing new was met has been through all there is.
    settled = rounds.settled || asked.length === 0;
    const { filled, best } = rounds.stats();
    const note = `${filled} kinds, best ${best.toFixed(3)}`;
    progress?.({ name: 'search', done: Math.min(lines.length, most), of: most, note });
  }
  const { rounds: count, filled } = rounds.stats();
  return {
    ...searched,
    at,
    whole: settled || lines.length >= most,
    evolved: { rounds: count, niches: filled, settled },
  };
}
