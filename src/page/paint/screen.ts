import { POINTS } from './paint.js';

const KEY = 'shedlight-screen';

/** The size of a true millimetre on this screen, as measured by a person and stored by the browser. */
export class Screen {
  /** Factor from a CSS millimetre to a true millimetre. */
  factor: number;
  /** Whether a person has measured it. */
  isSet: boolean;

  constructor() {
    const known = recalled();
    this.factor = known ?? 1;
    this.isSet = known !== undefined;
    this.set(this.factor);
  }

  /** CSS pixels per true millimetre. */
  get points(): number {
    return POINTS * this.factor;
  }

  set(factor: number): void {
    this.factor = factor;
    document.documentElement.style.setProperty('--mm', `${factor}mm`);
  }

  /** Stores the factor, for all galleries. */
  keep(): void {
    this.isSet = true;
    try {
      localStorage.setItem(KEY, String(this.factor));
    } catch {
      // This browser stores nothing for pages on disk; the factor lasts while the page is open.
    }
  }
}

function recalled(): number | undefined {
  try {
    const factor = Number(localStorage.getItem(KEY));
    return factor >= 0.5 && factor <= 2 ? factor : undefined;
  } catch {
    return undefined;
  }
}
