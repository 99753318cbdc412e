import { POINTS } from './paint.js';

const KEY = 'shedlight-screen';

/** The size of a true millimetre on this screen, as measured by a person and stored by the browser. */
export class Screen {
  /** Factor from a CSS millimetre to a true millimetre. */
  factor = recalled();

  /** CSS pixels per true millimetre. */
  get points(): number {
    return POINTS * this.factor;
  }

  /** Sets the factor, and stores it for all galleries. */
  set(factor: number): void {
    this.factor = factor;
    this.apply();
    try {
      localStorage.setItem(KEY, String(factor));
    } catch {
      // This browser stores nothing for pages on disk; the factor lasts while the page is open.
    }
  }

  apply(): void {
    document.documentElement.style.setProperty('--mm', `${this.factor}mm`);
  }
}

function recalled(): number {
  try {
    const factor = Number(localStorage.getItem(KEY));
    return factor >= 0.5 && factor <= 2 ? factor : 1;
  } catch {
    return 1;
  }
}
