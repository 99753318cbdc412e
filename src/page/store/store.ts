import type { Manifest } from '../../gallery/manifest/manifest.js';
import { draftOf } from '../../gallery/manifest/manifest-draft.js';
import { partsOfFound, type Ranked, ranked } from '../../gallery/manifest/ranking.js';
import { liveliness } from '../../score/look/look.js';
import { weightsOf } from '../../score/rank/presets.js';
import { type FloatLimit, sameWeights } from '../../score/rank/rank.js';
import { nearestInWords, whyInWords } from '../../score/rank/why.js';
import type { Found } from '../../search/strategy/outcome.js';
import { holds, passes } from './filters.js';
import { Marks } from './marks.js';
import { type Preference, preferenceOf } from './preference.js';
import { addressOf, floatOf, type View, viewOf } from './view.js';

/** The address of the page, whose part after `#` holds the view. */
export interface Address {
  read(): string;
  /** Writes the view; a step is one for the browser's back button. */
  write(view: string, step: boolean): void;
}

/** What an old gallery, which does not say it, was ranked by. */
const EARLIER_RANK = { contrast: 3, symmetry: 2, float: 1 };

/** What the page is about, and what is shown of it now. Every part of the page listens to it and tells it. */
export class Store {
  readonly found: readonly Found[];
  readonly byCode: ReadonlyMap<string, Found>;
  readonly marks = new Marks();
  /** What was asked for: how it was ranked, and the limit for floats. */
  readonly usual: View;
  readonly floatLimit: FloatLimit;
  view: View;
  private readonly address: Address;
  private readonly listeners: (() => void)[] = [];
  private readonly codes: ReadonlySet<string>;

  constructor(manifest: Manifest, address: Address) {
    this.address = address;
    this.found = manifest.candidates.map((candidate) => ({ ...candidate, draft: draftOf(candidate, manifest) }));
    this.byCode = new Map(this.found.map((found) => [found.code, found]));
    this.codes = new Set(this.byCode.keys());
    const { rank = EARLIER_RANK, limits } = manifest.question;
    this.floatLimit = floatOf(String(limits?.float ?? '')) ?? { threads: 7 };
    this.usual = {
      weights: weightsOf(rank),
      filters: {},
      order: 'best',
      find: '',
      kept: false,
      size: 'actual',
      metres: 0,
      grey: false,
      compare: [],
      comparing: false,
    };
    this.view = this.usual;
  }

  /** The limit for floats that holds now. */
  get limit(): FloatLimit {
    return this.view.filters.float ?? this.floatLimit;
  }

  /** All cloths within the limits, best first, by the weights of now. */
  ranked(): Ranked[] {
    const within = this.found.filter((found) => passes(found, this.view.filters));
    return ranked(within, this.view.weights, this.limit);
  }

  /** Whether cloths are ranked as the question asked. */
  get asAsked(): boolean {
    return sameWeights(this.view.weights, this.usual.weights);
  }

  /** Why a cloth stands where it does, by the weights of now; half a sentence. */
  why(found: Found): string {
    if (this.asAsked) return found.why;
    const why = whyInWords(partsOfFound(found, this.limit), this.view.weights);
    return [why, nearestInWords(found.scores) ?? []].flat().join('; ');
  }

  /** A cloth with its score by the weights of now. */
  rescored(found: Found): Found {
    const [{ score }] = ranked([found], this.view.weights, this.limit) as [Ranked];
    return { ...found, scores: { ...found.scores, score } };
  }

  /** What the stars say. */
  liking(): Preference | undefined {
    const starred = this.marks.all.flatMap(({ code, stars }) => {
      const found = this.byCode.get(code);
      return found !== undefined && stars > 0 ? [[found, stars] as const] : [];
    });
    return preferenceOf(this.found, starred);
  }

  /** The cloths to be seen, in their order, each with its rank. */
  listed(): { readonly found: Found; readonly rank: number }[] {
    const { order, find, kept } = this.view;
    const seen = this.ranked()
      .map(({ found }, at) => ({ found, rank: at + 1 }))
      .filter(({ found: { code } }) => !kept || this.marks.has(code))
      .filter(({ found }) => find === '' || holds(found, this.marks.of(found.code)?.note ?? '', find));
    const by = this.keyOf(order);
    return by === undefined
      ? seen
      : seen
          .map((each) => ({ each, key: by(each.found) }))
          .sort((a, b) => a.key - b.key || a.each.rank - b.each.rank)
          .map(({ each }) => each);
  }

  listen(listener: () => void): void {
    this.listeners.push(listener);
  }

  /** Shows something else. A step that a person may want to take back (`step`) is one for the browser's back button. */
  show(change: Partial<View>, step = false): void {
    this.view = { ...this.view, ...change };
    this.address.write(addressOf(this.view, this.usual), step);
    this.tell();
  }

  /** Shows what the address says. */
  readAddress(): void {
    this.view = viewOf(this.address.read(), this.usual, this.codes);
    this.tell();
  }

  /** Tells every part of the page that something has changed. */
  tell(): void {
    for (const listener of this.listeners) listener();
  }

  private keyOf(order: View['order']): ((found: Found) => number) | undefined {
    switch (order) {
      case 'best':
        return undefined;
      case 'calm':
        return ({ scores }) => liveliness(scores);
      case 'lively':
        return ({ scores }) => -liveliness(scores);
      case 'small':
        return ({ draft }) => draft.warp.length * draft.weft.length;
      case 'liked': {
        const preference = this.liking();
        return preference && ((found) => -preference.stars(found));
      }
    }
  }
}
