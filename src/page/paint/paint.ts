import type { Draft } from '../../draft/draft.js';
import type { Picture } from '../../render/cloth.js';
import { clothFrom } from './step-back.js';

/** How a piece of cloth is looked at. */
export interface Look {
  readonly side: 'face' | 'back';
  readonly grey: boolean;
  readonly metres: number;
  /** Points of the page to a millimetre of cloth. */
  readonly scale: number;
  /** How much cloth is seen. */
  readonly width: number;
  readonly height: number;
}

/** Points of the page to a true millimetre, before the screen is set. */
export const POINTS = 96 / 25.4;
/** No picture is painted larger than this each way. */
const LARGEST = 4096;

/** Paints cloth as fine as the screen can show it, at its size on the page. */
export function paintCloth(canvas: HTMLCanvasElement, draft: Draft, look: Look): void {
  const { side, grey, metres, scale, width, height } = look;
  const finest = Math.min(scale * devicePixelRatio, LARGEST / Math.max(width, height));
  put(canvas, clothFrom(draft, { side, grey, millimetres: { width, height }, perMillimetre: finest }, metres));
  canvas.style.width = `${width * scale}px`;
  canvas.style.height = `${height * scale}px`;
}

/** Puts a picture on a canvas of its size. */
export function put(canvas: HTMLCanvasElement, { width, height, rgb }: Picture): void {
  canvas.width = width;
  canvas.height = height;
  const image = new ImageData(width, height);
  for (let at = 0, from = 0; from < rgb.length; at += 4) {
    image.data[at] = rgb[from++]!;
    image.data[at + 1] = rgb[from++]!;
    image.data[at + 2] = rgb[from++]!;
    image.data[at + 3] = 255;
  }
  canvas.getContext('2d')!.putImageData(image, 0, 0);
}

/** Longest stretch of painting in one go, in milliseconds: the page goes on answering. */
const SLICE = 12;

/** Things to be painted, the latest wish for each, done in short stretches. */
export class Painter {
  private readonly jobs = new Map<object, () => void>();
  private running = false;

  /** Paints soon; a newer wish for the same thing takes the place of an older one. */
  soon(thing: object, job: () => void): void {
    this.jobs.set(thing, job);
    if (this.running) return;
    this.running = true;
    requestAnimationFrame(() => this.work());
  }

  /** No longer wanted. */
  forget(thing: object): void {
    this.jobs.delete(thing);
  }

  private work(): void {
    const until = performance.now() + SLICE;
    for (const [thing, job] of this.jobs) {
      this.jobs.delete(thing);
      job();
      if (performance.now() > until) break;
    }
    if (this.jobs.size > 0) setTimeout(() => this.work());
    else this.running = false;
  }
}
