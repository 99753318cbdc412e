import { roomy } from '../../cloth/scratch.js';

/**
 * The threads of one system in order of what they bring to the light, from the darkest on: all that lie at one place of
 * the weave, for each place of the crossing threads. Arrays may be longer than what they hold.
 */
export class LightOrder {
  /** Threads in a list. */
  each = 0;
  /**
   * List after list, by the place of the crossing threads first: each thread and what it brings. Every list begins with
   * what is darker than any thread.
   */
  threads = new Int32Array(0);
  light = new Float64Array(0);
  /** For each place in a list, in so many words, a bit for each thread up to there, by their order in the cloth. */
  words = 0;
  upTo = new Int32Array(0);

  /**
   * Takes what `count` threads bring, the weave repeating after so many of them and of the crossing ones. The numbers of
   * neighbouring threads, and of neighbouring crossing places, are so many apart.
   */
  fill(
    lines: Float64Array,
    count: number,
    every: number,
    everyCrossing: number,
    threadStep: number,
    crossingStep: number,
  ): void {
    const each = count / every;
    this.each = each;
    const room = (each + 1) * every * everyCrossing;
    this.threads = roomy(this.threads, room);
    this.light = roomy(this.light, room);
    const { threads, light } = this;
    for (let crossing = 0, from = 0; crossing < everyCrossing; crossing++) {
      for (let place = 0; place < every; place++, from += each + 1) {
        light[from] = Number.NEGATIVE_INFINITY;
        for (let k = 1, thread = place; k <= each; k++, thread += every) {
          const own = lines[crossing * crossingStep + thread * threadStep]!;
          let to = from + k;
          for (; light[to - 1]! > own; to--) {
            light[to] = light[to - 1]!;
            threads[to] = threads[to - 1]!;
          }
          light[to] = own;
          threads[to] = thread;
        }
      }
    }
    this.layBits(every, everyCrossing);
  }

  private layBits(every: number, everyCrossing: number): void {
    const { each, threads } = this;
    const words = (each + 31) >> 5;
    this.words = words;
    this.upTo = roomy(this.upTo, (each + 1) * every * everyCrossing * words);
    const { upTo } = this;
    for (let list = 0, place = 0; list < every * everyCrossing; list++) {
      for (let w = 0; w < words; w++) upTo[place * words + w] = 0;
      place++;
      for (let k = 0; k < each; k++, place++) {
        for (let w = 0; w < words; w++) upTo[place * words + w] = upTo[(place - 1) * words + w]!;
        const bit = Math.floor(threads[place]! / every);
        const word = place * words + (bit >> 5);
        upTo[word] = upTo[word]! | (1 << (bit & 31));
      }
    }
  }
}
