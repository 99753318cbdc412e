import { POINTS } from './paint.js';

const KEY = 'shedlight-screen';

/** How large a true millimetre is on this screen, as a person has measured it; remembered by the browser. */
export class Screen {
  /** What a millimetre of the page must be taken times to be true. */
  factor = recalled();

  /** Points of the page to a true millimetre. */
  get points(): number {
    return POINTS * this.factor;
  }

  /** Takes on a factor, for now and for every gallery to come. */
  set(factor: number): void {
    this.factor = factor;
    this.apply();
    try {
      localStorage.setItem(KEY, String(factor));
    } catch {
      // A browser that keeps nothing for pages on disk; the factor holds while the page is open.
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
