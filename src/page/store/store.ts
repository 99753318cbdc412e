import type { Manifest } from '../../gallery/manifest/manifest.js';
import { manifestDraft } from '../../gallery/manifest/manifest-draft.js';
import { partsOfFound, type Ranked, ranked } from '../../gallery/manifest/ranking.js';
import type { FloatLimit } from '../../score/model/float-limit.js';
import { liveliness } from '../../score/parts/records/lively-parts.js';
import { weightsOf } from '../../score/rank/presets.js';
import { sameWeights } from '../../score/rank/rank.js';
import { nearestInWords, whyInWords } from '../../score/rank/why.js';
import type { Found } from '../../search/strategy/outcome.js';
import { holds, passes, searchedText } from './filters.js';
import { Marks } from './marks.js';
import { type Preference, preferenceOf } from './preference.js';
import { repeatMillimetres } from './sizes.js';
import { addressOf, floatOf, usualView, type View, viewOf } from './view.js';

/** The address of the page; its part after `#` holds the view. */
export interface Address {
  read(): string;
  /** Writes the view; with `step`, as a new entry for the browser's back button. */
  write(view: string, step: boolean): void;
}

/** Parts of the view that change which cloths are listed, or in what order. */
const RELISTS = ['weights', 'filters', 'order', 'find', 'kept'] as const;

/** The weights of old galleries, which do not store them. */
const EARLIER_RANK = { contrast: 3, symmetry: 2, float: 1 };

/** The state of the page: gallery, marks and view. All parts of the page read it, change it and listen to it. */
export class Store {
  readonly found: readonly Found[];
  readonly byCode: ReadonlyMap<string, Found>;
  readonly marks: Marks;
  /** The longest repeat of all cloths, in millimetres. */
  readonly longest: number;
  /** How many different cloths the search found; those that are not in this gallery are not ranked again. */
  readonly cloths: number;
  /** The view that the question asked for: its ranking and float limit. */
  readonly usual: View;
  readonly floatLimit: FloatLimit;
  view: View;
  private readonly address: Address;
  private readonly listeners: (() => void)[] = [];
  private readonly codes: ReadonlySet<string>;
  private readonly said = new Map<string, string>();

  constructor(manifest: Manifest, address: Address, marks = new Marks()) {
    this.address = address;
    this.marks = marks;
    this.cloths = manifest.counts.cloths;
    this.found = manifest.candidates.map((candidate) => ({ ...candidate, draft: manifestDraft(candidate, manifest) }));
    this.byCode = new Map(this.found.map((found) => [found.code, found]));
    this.codes = new Set(this.byCode.keys());
    this.longest = Math.max(1, ...this.found.flatMap(({ draft }) => Object.values(repeatMillimetres(draft))));
    const { rank = EARLIER_RANK, limits } = manifest.question;
    this.floatLimit = floatOf(String(limits?.float ?? '')) ?? { threads: 7 };
    this.usual = usualView(weightsOf(rank));
    this.view = this.usual;
  }

  /** The current float limit. */
  get limit(): FloatLimit {
    return this.view.filters.float ?? this.floatLimit;
  }

  /** All cloths that pass the filters, best first by the current weights. */
  ranked(): Ranked[] {
    const within = this.found.filter((found) => passes(found, this.view.filters));
    return ranked(within, this.view.weights, this.limit);
  }

  /** Whether the ranking is the question's own. */
  get asAsked(): boolean {
    return sameWeights(this.view.weights, this.usual.weights);
  }

  /** The reason for a cloth's rank by the current weights; half a sentence. */
  why(found: Found): string {
    if (this.asAsked) return found.why;
    const why = whyInWords(partsOfFound(found, this.limit), this.view.weights);
    return [why, nearestInWords(found.scores) ?? []].flat().join('; ');
  }

  /** A cloth with its score by the current weights. */
  rescored(found: Found): Found {
    const [{ score }] = ranked([found], this.view.weights, this.limit) as [Ranked];
    return { ...found, scores: { ...found.scores, score } };
  }

  /** The preference model of the current stars. */
  liking(): Preference | undefined {
    const starred = this.marks.all.flatMap(({ code, stars }) => {
      const found = this.byCode.get(code);
      return found !== undefined && stars > 0 ? [[found, stars] as const] : [];
    });
    return preferenceOf(this.found, starred);
  }

  /** The listed cloths in their order, each with its rank. */
  listed(): { readonly found: Found; readonly rank: number }[] {
    const { order, find, kept } = this.view;
    const seen = this.ranked()
      .map(({ found }, at) => ({ found, rank: at + 1 }))
      .filter(({ found: { code } }) => !kept || this.marks.has(code))
      .filter(
        ({ found }) => find === '' || holds(`${this.wordsOf(found)} ${this.marks.of(found.code)?.note ?? ''}`, find),
      );
    const by = this.keyOf(order);
    return by === undefined
      ? seen
      : seen
          .map((each) => ({ each, key: by(each.found) }))
          .sort((a, b) => a.key - b.key || a.each.rank - b.each.rank)
          .map(({ each }) => each);
  }

  /** Everything that page and details say of a cloth, to be searched. */
  private wordsOf(found: Found): string {
    const known = this.said.get(found.code);
    if (known !== undefined) return known;
    const words = searchedText(found);
    this.said.set(found.code, words);
    return words;
  }

  listen(listener: () => void): void {
    this.listeners.push(listener);
  }

  /**
   * Changes the view. `step` makes an entry for the browser's back button, for changes a person may want to undo. A list
   * of other cloths, or in another order, begins at its first page.
   */
  show(change: Partial<View>, step = false): void {
    const anew = RELISTS.some((key) => change[key] !== undefined);
    this.view = { ...this.view, ...(anew && { page: 1 }), ...change };
    this.address.write(addressOf(this.view, this.usual), step);
    this.tell();
  }

  /** Sets the view from the address. */
  readAddress(): void {
    this.view = viewOf(this.address.read(), this.usual, this.codes);
    this.tell();
  }

  /** Notifies all listeners of a change. */
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
