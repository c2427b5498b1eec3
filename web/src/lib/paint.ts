import type { NpyMap } from './npy';
import type { Grid, Point } from './profile';
import { palette, stepOf, type Ground } from './scale';
import { bounds, toScreen, type Size, type View } from './view';
import type { Fold, Spot } from '../api/types';

/** The colours of the drawing that are not the map's own, from the page's style. */
export interface Inks {
  ground: string;
  ink: string;
  soft: string;
  mark: string;
  care: string;
  low: string;
  high: string;
}

export interface Scene {
  grid: Grid;
  image: HTMLCanvasElement;
  /** Unread cells of one reason, to be shown; `null` for none. */
  reason: HTMLCanvasElement | null;
  spots: Spot[];
  /** Holes that were too steep to read. */
  folds?: Fold[];
  /** Where a depth was measured by hand. */
  gauges?: Point[];
  chosen: number | null;
  probe: Point | null;
  cut: { from: Point; to: Point } | null;
  inks: Inks;
}

/** The map as a picture, one pixel a cell, top row first. Unread cells are clear. */
export function picture(map: NpyMap<Float32Array>, range_mm: number, ground: Ground): HTMLCanvasElement {
  const colours = palette(ground);
  return cells(map, (value) => (Number.isNaN(value) ? null : [...colours[stepOf(value, range_mm)]!, 255]));
}

/** The cells of one unread code as a picture. */
export function reasonPicture(map: NpyMap<Uint8Array>, code: number, [r, g, b]: number[]): HTMLCanvasElement {
  return cells(map, (value) => (value === code ? [r!, g!, b!, 150] : null));
}

function cells(map: NpyMap, colour: (value: number) => number[] | null): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [map.nx, map.ny];
  const context = canvas.getContext('2d')!;
  const image = context.createImageData(map.nx, map.ny);
  for (let row = 0; row < map.ny; row++) {
    for (let column = 0; column < map.nx; column++) {
      const found = colour(map.data[row * map.nx + column]!);
      if (found) image.data.set(found, 4 * ((map.ny - 1 - row) * map.nx + column));
    }
  }
  context.putImageData(image, 0, 0);
  return canvas;
}

/** Draws everything that one view shows. */
export function draw(context: CanvasRenderingContext2D, scene: Scene, view: View, size: Size): void {
  context.fillStyle = scene.inks.ground;
  context.fillRect(0, 0, size.width, size.height);
  drawMap(context, scene, view, size);
  scene.folds?.forEach((fold) => drawFold(context, scene, view, size, fold));
  scene.spots.forEach((spot, index) => drawSpot(context, scene, view, size, spot, index));
  scene.gauges?.forEach((at) => drawGauge(context, scene.inks, toScreen(view, size, at)));
  if (scene.cut) drawCut(context, scene, view, size);
  if (scene.probe) drawProbe(context, scene.inks, toScreen(view, size, scene.probe));
}

/** A round glass above the finger: what is under it, twice and a half as large. */
export function drawLens(context: CanvasRenderingContext2D, scene: Scene, view: View, size: Size, finger: Point, probe: Point): void {
  const radius = 62;
  const above = finger.y - 118 > radius ? -118 : 118;
  const middle = { x: Math.max(radius + 4, Math.min(size.width - radius - 4, finger.x)), y: finger.y + above };
  const near: View = { scale: view.scale * 2.5, centre: probe };
  context.save();
  context.beginPath();
  context.arc(middle.x, middle.y, radius, 0, 2 * Math.PI);
  context.clip();
  context.translate(middle.x - size.width / 2, middle.y - size.height / 2);
  context.fillStyle = scene.inks.ground;
  context.fillRect(0, 0, size.width, size.height);
  drawMap(context, scene, near, size);
  drawProbe(context, scene.inks, { x: size.width / 2, y: size.height / 2 });
  context.restore();
  context.beginPath();
  context.arc(middle.x, middle.y, radius, 0, 2 * Math.PI);
  context.lineWidth = 3;
  context.strokeStyle = scene.inks.ink;
  context.stroke();
}

function drawMap(context: CanvasRenderingContext2D, scene: Scene, view: View, size: Size): void {
  const { left, right, bottom, top } = bounds(scene.grid);
  const a = toScreen(view, size, { x: left, y: top });
  const b = toScreen(view, size, { x: right, y: bottom });
  hatch(context, a, b, scene.inks);
  context.imageSmoothingEnabled = view.scale * scene.grid.step_mm < 8;
  context.imageSmoothingQuality = 'high';
  context.drawImage(scene.image, a.x, a.y, b.x - a.x, b.y - a.y);
  if (scene.reason) context.drawImage(scene.reason, a.x, a.y, b.x - a.x, b.y - a.y);
}

/** Slanted lines where nothing was read; the map covers the rest. */
function hatch(context: CanvasRenderingContext2D, a: Point, b: Point, inks: Inks): void {
  const gap = 11;
  const [x0, y0] = [Math.max(a.x, -20), Math.max(a.y, -20)];
  const [x1, y1] = [Math.min(b.x, context.canvas.width + 20), Math.min(b.y, context.canvas.height + 20)];
  context.save();
  context.beginPath();
  context.rect(x0, y0, x1 - x0, y1 - y0);
  context.clip();
  context.beginPath();
  for (let x = x0 - (y1 - y0); x < x1; x += gap) {
    context.moveTo(x, y1);
    context.lineTo(x + (y1 - y0), y0);
  }
  context.strokeStyle = inks.soft;
  context.globalAlpha = 0.45;
  context.lineWidth = 1.2;
  context.stroke();
  context.restore();
}

/** Where the number stands: just outside the outline, up and to the right. */
function corner(at: Point, along: number, across: number, turn: number): Point {
  const way = -Math.PI / 4 - turn;
  const reach = (along * across) / Math.hypot(across * Math.cos(way), along * Math.sin(way)) + 13;
  return { x: at.x + reach * Math.SQRT1_2, y: at.y - reach * Math.SQRT1_2 };
}

/** A low is a ring, a high a diamond, so that colour is never alone in telling them apart. */
function drawSpot(context: CanvasRenderingContext2D, scene: Scene, view: View, size: Size, spot: Spot, index: number): void {
  const { inks } = scene;
  const at = toScreen(view, size, { x: spot.x_mm, y: spot.y_mm });
  const chosen = scene.chosen === index;
  const [along, across] = [spot.length_mm, spot.width_mm].map((size_mm) => Math.max(11, (size_mm / 2) * view.scale + 3)) as [number, number];
  const turn = (-spot.angle_deg * Math.PI) / 180;
  context.beginPath();
  if (spot.kind === 'low') context.ellipse(at.x, at.y, along, across, turn, 0, 2 * Math.PI);
  else diamond(context, at, along * 1.3, across * 1.3, turn);
  for (const [width, colour] of [[chosen ? 7 : 4, inks.ground], [chosen ? 3.5 : 1.8, chosen ? inks.mark : inks.ink]] as const) {
    context.lineWidth = width;
    context.strokeStyle = colour;
    context.stroke();
  }
  label(context, String(index + 1), corner(at, along, across, turn), chosen ? inks.mark : inks.ink, inks.ground);
}

/** A dashed ring round what was too steep to read, with what its rim tells. */
function drawFold(context: CanvasRenderingContext2D, { inks }: Scene, view: View, size: Size, fold: Fold): void {
  const at = toScreen(view, size, { x: fold.x_mm, y: fold.y_mm });
  const ink = fold.kind ? inks[fold.kind] : inks.care;
  context.save();
  context.beginPath();
  context.arc(at.x, at.y, Math.max(9, (fold.across_mm / 2) * view.scale), 0, 2 * Math.PI);
  for (const [width, colour] of [[5, inks.ground], [2.5, ink]] as const) {
    context.setLineDash(width > 3 ? [] : [7, 5]);
    context.lineWidth = width;
    context.strokeStyle = colour;
    context.stroke();
  }
  context.restore();
  label(context, fold.kind ? '≥' : '?', at, ink, inks.ground);
}

/** The tip of a gauge: a triangle that stands on its place. */
function drawGauge(context: CanvasRenderingContext2D, inks: Inks, at: Point): void {
  context.beginPath();
  for (const [dx, dy] of [[0, 0], [-9, -18], [9, -18]] as const) context.lineTo(at.x + dx, at.y + dy);
  context.closePath();
  context.fillStyle = inks.mark;
  context.lineWidth = 4;
  context.strokeStyle = inks.ground;
  context.stroke();
  context.fill();
}

function diamond(context: CanvasRenderingContext2D, at: Point, along: number, across: number, turn: number): void {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  for (const [u, v] of [[along, 0], [0, across], [-along, 0], [0, -across]] as const) context.lineTo(at.x + u * c - v * s, at.y + u * s + v * c);
  context.closePath();
}

function drawCut(context: CanvasRenderingContext2D, scene: Scene, view: View, size: Size): void {
  const from = toScreen(view, size, scene.cut!.from);
  const to = toScreen(view, size, scene.cut!.to);
  for (const [width, colour] of [[6, scene.inks.ground], [2.5, scene.inks.mark]] as const) {
    context.beginPath();
    context.moveTo(from.x, from.y);
    context.lineTo(to.x, to.y);
    context.lineWidth = width;
    context.strokeStyle = colour;
    context.stroke();
  }
  label(context, 'A', { x: from.x, y: from.y - 14 }, scene.inks.mark, scene.inks.ground);
  label(context, 'B', { x: to.x, y: to.y - 14 }, scene.inks.mark, scene.inks.ground);
}

function drawProbe(context: CanvasRenderingContext2D, inks: Inks, at: Point): void {
  for (const [width, colour] of [[5, inks.ground], [2, inks.mark]] as const) {
    context.beginPath();
    for (const [dx, dy] of [[1, 0], [-1, 0], [0, 1], [0, -1]] as const) {
      context.moveTo(at.x + 5 * dx, at.y + 5 * dy);
      context.lineTo(at.x + 18 * dx, at.y + 18 * dy);
    }
    context.lineWidth = width;
    context.strokeStyle = colour;
    context.stroke();
  }
}

function label(context: CanvasRenderingContext2D, text: string, at: Point, colour: string, ground: string): void {
  context.font = '600 15px Barlow, system-ui, sans-serif';
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.lineWidth = 4;
  context.lineJoin = 'round';
  context.strokeStyle = ground;
  context.strokeText(text, at.x, at.y);
  context.fillStyle = colour;
  context.fillText(text, at.x, at.y);
}
