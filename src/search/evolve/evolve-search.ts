import { KEY_WORDS } from '../evaluate/columns.js';
import type { Jobs } from '../pool/jobs.js';
import { type Candidate, draftOf } from '../space/candidate.js';
import { candidateOf } from '../space/genome.js';
import { absorb, gathering, type Search, type Searched } from '../strategy/strategies.js';
import { Canonicalizer } from './canonical-genome.js';
import { MutationSpace } from './mutation-space.js';
import { Rounds, type Told } from './rounds.js';

/** Candidates of one scoring job. */
const TOGETHER = 32;

/**
 * Searches a space that is too large to list by mutating the elites of its niches, until the last rounds gain next to
 * nothing or the space's limit of candidates is scored. It restarts as often as the question's `tries` says, each time
 * with other random numbers; a shard does some of the restarts. See EVOLVE.md.
 */
export async function searchEvolved(given: Search): Promise<Searched> {
  const { question, space, shard, newArchive, enough } = given;
  const { families, numbers: most } = space;
  // The numbers of a restart’s candidates do not depend on the other restarts.
  const tries: string[][] = Array.from({ length: question.tries }, () => []);
  const at = (index: number): Candidate => candidateOf(tries[Math.floor(index / most)]![index % most]!, families);
  const searched = { ...gathering(newArchive(at), question), pruned: 0 };
  const kinds = new Set<number>();
  let rounds = 0;
  let settled = true;
  let whole = true;
  for (const [number, lines] of tries.entries()) {
    if (shard && number % shard.of !== shard.part - 1) continue;
    if (enough?.aborted) {
      whole = false;
      break;
    }
    const one = await tryOnce(given, searched, number, lines, number * most);
    for (const kind of one.kinds) kinds.add(kind);
    rounds += one.rounds;
    settled &&= one.settled;
    whole &&= one.settled || lines.length >= most;
  }
  return { ...searched, at, whole, evolved: { rounds, niches: kinds.size, settled } };
}

interface Tried {
  readonly kinds: readonly number[];
  readonly rounds: number;
  readonly settled: boolean;
}

/** One restart. It adds its candidates to `lines`, numbered from `from` on, and their results to the archive. */
async function tryOnce(
  { question, space, pool, before, progress, enough }: Search,
  searched: Parameters<typeof absorb>[0],
  number: number,
  lines: string[],
  from: number,
): Promise<Tried> {
  const { families, numbers: most } = space;
  const isNear = (key: string, candidate: Candidate): boolean =>
    before?.isNear(key, () => draftOf(candidate, question)) === true;
  const alike = new Canonicalizer(question, families);
  const seed = number === 0 ? question.seed : `${question.seed}/${number + 1}`;
  const rounds = new Rounds(new MutationSpace(question, families), alike, families, seed, isNear);
  const name = question.tries === 1 ? 'search' : `search ${number + 1} of ${question.tries}`;
  let settled = false;
  while (lines.length < most && !settled && !enough?.aborted) {
    const first = from + lines.length;
    const asked = rounds.ask(most - lines.length);
    lines.push(...asked);
    const told: (Told | undefined)[] = asked.map(() => undefined);
    const jobs: Jobs = {
      count: Math.ceil(asked.length / TOGETHER),
      at: (job) => {
        const skipped = job * TOGETHER;
        return { kind: 'lines', from: first + skipped, lines: asked.slice(skipped, skipped + TOGETHER) };
      },
    };
    await pool.run(jobs, ({ batch }) => {
      absorb(searched, batch);
      for (let k = 0; k < batch.length; k++) {
        const key = batch.key.subarray(k * KEY_WORDS, (k + 1) * KEY_WORDS).join();
        if (before?.isDone(key)) continue;
        told[batch.index[k]! - first] = { niche: batch.niche[k]!, score: batch.score[k]! / 1e9, key };
      }
    });
    rounds.tell(told);
    // If no slot of a round finds a new candidate, there is nothing left to find.
    settled = rounds.settled || asked.length === 0;
    const { filled, best } = rounds.stats();
    const note = `${filled} kinds, best ${best.toFixed(3)}`;
    progress?.({ name, done: lines.length, of: most, note });
  }
  return { kinds: rounds.kinds(), rounds: rounds.stats().rounds, settled };
}
