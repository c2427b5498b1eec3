import type { Grid, Point } from './profile';

/** What part of the panel the screen shows: `scale` pixels a millimetre, the panel's `centre` in the middle. */
export interface View {
  scale: number;
  centre: Point;
}

export interface Size {
  width: number;
  height: number;
}

/** Least and most zoom, times the fit. */
const ZOOM_MOST = 60;

/** Edges of a map, mm: half a cell beyond the outer cells' middles. */
export function bounds(grid: Grid): { left: number; right: number; bottom: number; top: number } {
  const half = grid.step_mm / 2;
  return {
    left: grid.x0_mm - half,
    right: grid.x0_mm + grid.step_mm * (grid.nx - 1) + half,
    bottom: grid.y0_mm - half,
    top: grid.y0_mm + grid.step_mm * (grid.ny - 1) + half,
  };
}

/** All of the map, with a margin. */
export function fit(grid: Grid, size: Size): View {
  const { left, right, bottom, top } = bounds(grid);
  const scale = 0.96 * Math.min(size.width / (right - left), size.height / (top - bottom));
  return { scale, centre: { x: (left + right) / 2, y: (bottom + top) / 2 } };
}

export function toScreen(view: View, size: Size, at: Point): Point {
  return { x: size.width / 2 + (at.x - view.centre.x) * view.scale, y: size.height / 2 - (at.y - view.centre.y) * view.scale };
}

export function toPanel(view: View, size: Size, at: Point): Point {
  return { x: view.centre.x + (at.x - size.width / 2) / view.scale, y: view.centre.y - (at.y - size.height / 2) / view.scale };
}

/** Zooms so that what lies under a place on the screen stays there. */
export function zoomAt(view: View, size: Size, grid: Grid, at: Point, times: number): View {
  const whole = fit(grid, size).scale;
  const scale = Math.max(whole * 0.8, Math.min(whole * ZOOM_MOST, view.scale * times));
  const held = toPanel(view, size, at);
  return keepIn({ scale, centre: { x: held.x - (at.x - size.width / 2) / scale, y: held.y + (at.y - size.height / 2) / scale } }, grid);
}

/** Moves the map by pixels of the screen. */
export function pan(view: View, grid: Grid, dx: number, dy: number): View {
  return keepIn({ scale: view.scale, centre: { x: view.centre.x - dx / view.scale, y: view.centre.y + dy / view.scale } }, grid);
}

/** The middle of the screen never leaves the map, so it cannot be lost. */
function keepIn(view: View, grid: Grid): View {
  const { left, right, bottom, top } = bounds(grid);
  return {
    scale: view.scale,
    centre: { x: Math.max(left, Math.min(right, view.centre.x)), y: Math.max(bottom, Math.min(top, view.centre.y)) },
  };
}
