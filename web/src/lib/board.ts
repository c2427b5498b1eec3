/**
 * A screen as the board: how it is laid out in its own pixels, and what each pixel shows.
 *
 * Everything falls on whole pixels, so that the sizes told to the server are those that are shown.
 */
import type { LiveState, Screen, Wave } from '../api/types';

/** The lit area inside its dark frame, and its tags, px. */
export interface Layout {
  width: number;
  height: number;
  /** Dark frame on every side. */
  frame: number;
  /** A tag's module. */
  module: number;
  /** Centres in the lit area, from its upper left corner: top left, top right, bottom right, bottom left. */
  centres: [number, number][];
}

/** ISO/IEC 7810, ID-1: width of a bank card, mm. */
export const CARD_MM = 85.6;
/** Its height, mm. */
export const CARD_HEIGHT_MM = 53.98;
/** Modules along a tag's black square. */
const MODULES = 8;
/** Dark frame over the shorter side: the lit edge must not touch the bezel, which the mirror would mix in. */
const FRAME_SHARE = 0.024;
/** A tag's side over the lit height: large enough for a set-up photo from the side. */
const TAG_SHARE = 0.15;
/** Brightness in light of the plain board between its tags. */
const PLAIN = 0.8;

/** Lays out a screen of so many pixels. */
export function layOut(screenWidth: number, screenHeight: number): Layout {
  const frame = Math.round(Math.min(screenWidth, screenHeight) * FRAME_SHARE);
  const [width, height] = [screenWidth - 2 * frame, screenHeight - 2 * frame];
  const module = Math.max(2, Math.round((Math.min(width, height) * TAG_SHARE) / MODULES));
  // One white module round a tag, and one more to the edge.
  const inset = (MODULES / 2 + 2) * module;
  return { width, height, frame, module, centres: [[inset, inset], [width - inset, inset], [width - inset, height - inset], [inset, height - inset]] };
}

/** As the server wants to know it. */
export function told(layout: Layout, mm_per_px: number, ids: number[]): Screen {
  const tags = ids.map((id, k) => ({ id, x_px: layout.centres[k]![0], y_px: layout.centres[k]![1], size_px: MODULES * layout.module }));
  return { width_px: layout.width, height_px: layout.height, mm_per_px, tags };
}

/** The value of a screen's pixel that shines with this share of full white: IEC 61966-2-1 (sRGB), rounded. */
export function screenValue(light: number): number {
  const value = light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
  return Math.round(255 * value);
}

/** The values along a wave's axis: from left to right, or from top to bottom while the axis itself runs up. */
export function waveValues(wave: Wave, length: number): Uint8ClampedArray {
  return Uint8ClampedArray.from({ length }, (_, at) => {
    const s = (at + 0.5) / length;
    const along = wave.axis === 'u' ? s : 1 - s;
    return screenValue(0.5 + 0.5 * Math.cos(2 * Math.PI * (wave.periods * along + wave.shift)));
  });
}

/** Draws what a turn shows on a canvas that has one pixel for each of the screen's. */
export function draw(canvas: HTMLCanvasElement, layout: Layout, wave: Wave | null, tags: LiveState['tags']): void {
  const { width, height, frame } = layout;
  [canvas.width, canvas.height] = [width + 2 * frame, height + 2 * frame];
  const context = canvas.getContext('2d', { alpha: false })!;
  context.fillStyle = '#000';
  context.fillRect(0, 0, canvas.width, canvas.height);
  if (wave) drawWave(context, layout, wave);
  else drawTags(context, layout, tags);
}

function drawWave(context: CanvasRenderingContext2D, { width, height, frame }: Layout, wave: Wave): void {
  const across = wave.axis === 'u';
  const values = waveValues(wave, across ? width : height);
  const image = context.createImageData(width, height);
  const pixels = new Uint32Array(image.data.buffer);
  const grey = Uint32Array.from(values, (value) => 0xff000000 | (value << 16) | (value << 8) | value);
  for (let y = 0; y < height; y++) {
    if (across) pixels.set(grey, y * width);
    else pixels.fill(grey[y]!, y * width, (y + 1) * width);
  }
  context.putImageData(image, frame, frame);
}

function drawTags(context: CanvasRenderingContext2D, { width, height, frame, module, centres }: Layout, tags: LiveState['tags']): void {
  const plain = screenValue(PLAIN);
  context.fillStyle = `rgb(${plain},${plain},${plain})`;
  context.fillRect(frame, frame, width, height);
  tags.forEach(({ rows }, k) => {
    const [left, top] = centres[k]!.map((at) => frame + at - (MODULES / 2) * module) as [number, number];
    context.fillStyle = '#fff';
    context.fillRect(left - module, top - module, (MODULES + 2) * module, (MODULES + 2) * module);
    rows.forEach((row, y) =>
      [...row].forEach((white, x) => {
        context.fillStyle = white === '1' ? '#fff' : '#000';
        context.fillRect(left + x * module, top + y * module, module, module);
      }),
    );
  });
}
