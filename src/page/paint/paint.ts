import type { Draft } from '../../draft/draft.js';
import { AT_THE_LOOM, type Seen } from '../../draft/point-of-view.js';
import type { Picture } from '../../render/cloth.js';
import { clothFrom } from './step-back.js';

/** How a piece of cloth is looked at. */
interface Look {
  readonly side: 'face' | 'back';
  readonly grey: boolean;
  readonly metres: number;
  /** CSS pixels per millimetre of cloth. */
  readonly scale: number;
  /** Size of the piece in CSS pixels. */
  readonly width: number;
  readonly height: number;
}

/** From where the page's gallery is seen: set when a gallery is shown. */
let seen: Seen = AT_THE_LOOM;
export const seenFrom = (): Seen => seen;
export function seeFrom(place: Seen): void {
  seen = place;
}

/** CSS pixels per true millimetre, before a person has set the screen. */
export const POINTS = 96 / 25.4;
/** Greatest side of a painted picture, in picture points. */
const LARGEST = 4096;

/** Paints cloth at its size on the page, as fine as the screen can show it. */
export function paintCanvas(canvas: HTMLCanvasElement, draft: Draft, look: Look): void {
  const { side, grey, metres, scale, width, height } = look;
  const finest = Math.min(scale * devicePixelRatio, LARGEST / Math.max(width, height));
  put(canvas, clothFrom(draft, { seen, side, grey, millimetres: { width, height }, perMillimetre: finest }, metres));
  canvas.style.width = `${width * scale}px`;
  canvas.style.height = `${height * scale}px`;
}

/** Puts a picture on a canvas, which takes the picture's size. */
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

/** Longest uninterrupted painting in milliseconds, so that the page stays responsive. */
const SLICE = 12;

/** A queue of painting jobs, one per thing, run in short slices. */
export class Painter {
  private readonly jobs = new Map<object, () => void>();
  private running = false;

  /** Queues a job; it replaces an older job for the same thing. */
  soon(thing: object, job: () => void): void {
    this.jobs.set(thing, job);
    if (this.running) return;
    this.running = true;
    requestAnimationFrame(() => this.work());
  }

  /** Removes the job of a thing. */
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
