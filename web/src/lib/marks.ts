/** Numbered marks over the panel's photo or its map: where they stand on the screen. */
import type { Grid, Point } from './profile';
import { fit, toScreen, type Size, type View } from './view';

export interface Mark {
  at: Point;
  /** On the photo, px; null where the reading does not tell. */
  px: readonly [number, number] | null;
  text: string;
  /** Whether metal comes outward. */
  out: boolean;
  /** Whether it stands for what was done already. */
  faint?: boolean;
}

/** What part of the photo is seen: its corner at the frame's corner, px of the photo, and screen px a photo px. */
export interface PhotoView {
  x: number;
  y: number;
  scale: number;
}

/** The piece of a map about a place that shows so far around it, mm; the whole map without. */
export function mapView(grid: Grid, size: Size, about?: { at: Point; half_mm: number }): View {
  if (!about) return fit(grid, size);
  return { scale: Math.min(size.width, size.height) / (2 * about.half_mm), centre: about.at };
}

/** The photo filling the frame, nearer by `zoom` about a place of it, and never off its edge. */
export function photoView(photo: Size, size: Size, about?: { px: readonly [number, number]; zoom: number }): PhotoView {
  const scale = (about?.zoom ?? 1) * Math.max(size.width / photo.width, size.height / photo.height);
  const [across, down] = [size.width / scale, size.height / scale];
  const [cx, cy] = about?.px ?? [photo.width / 2, photo.height / 2];
  const clamp = (v: number, most: number) => Math.max(0, Math.min(most, v));
  return { x: clamp(cx - across / 2, photo.width - across), y: clamp(cy - down / 2, photo.height - down), scale };
}

export const onPhoto = (view: PhotoView, px: readonly [number, number]): Point => ({ x: (px[0] - view.x) * view.scale, y: (px[1] - view.y) * view.scale });
export const onMap = toScreen;
