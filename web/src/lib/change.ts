import type { Spot, Worked } from '../api/types';
import type { NpyMap } from './npy';

/** Areas that changed as marks on the map: a ring came down, a diamond came up. */
export function marks(worked: Worked[]): Spot[] {
  return worked.map((one) => {
    const across_mm = 2 * Math.sqrt(one.area_mm2 / Math.PI);
    return {
      kind: one.change_mm < 0 ? 'low' : 'high',
      x_mm: one.x_mm,
      y_mm: one.y_mm,
      height_mm: one.change_mm,
      sigma_mm: one.sigma_mm,
      length_mm: across_mm,
      width_mm: across_mm,
      angle_deg: 0,
      area_mm2: one.area_mm2,
      volume_mm3: Math.abs(one.volume_mm3),
      at_px: [0, 0],
      outline_px: [],
    };
  });
}

interface Laid {
  turn_rad: number;
  dx_mm: number;
  dy_mm: number;
}
interface Placed {
  x0_mm: number;
  y0_mm: number;
  step_mm: number;
}

/**
 * Where a cell of a reading's picture (one pixel a cell, top row first) lies in the last reading's frame: the six
 * numbers of a canvas transform whose result is in millimetres, right and down from the frame's origin.
 */
export function toLast(grid: Placed & { ny: number }, laying: Laid | null): [number, number, number, number, number, number] {
  const [sin, cos] = laying ? [Math.sin(laying.turn_rad), Math.cos(laying.turn_rad)] : [0, 1];
  const s = grid.step_mm;
  // Pixel (0, 0) is the upper left corner of the top row's first cell.
  const x = grid.x0_mm - s / 2;
  const y = grid.y0_mm + (grid.ny - 1) * s + s / 2;
  const e = x * cos - y * sin + (laying?.dx_mm ?? 0);
  const f = x * sin + y * cos + (laying?.dy_mm ?? 0);
  return [s * cos, -s * sin, s * sin, s * cos, e, -f];
}

/** Largest size of what was read, of all maps: one colour scale for a row of them. */
export function largest(maps: NpyMap<Float32Array>[]): number {
  let most = 0;
  for (const { data } of maps) for (const value of data) if (Math.abs(value) > most) most = Math.abs(value);
  return most;
}
