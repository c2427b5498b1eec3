import type { NpyMap } from './npy';

/** Where a map lies on the panel, mm. */
export interface Grid {
  x0_mm: number;
  y0_mm: number;
  step_mm: number;
  nx: number;
  ny: number;
}

export interface Point {
  x: number;
  y: number;
}

/** One place on a cut; `null` where nothing was read. */
export interface Sample {
  along_mm: number;
  height_mm: number | null;
  sigma_mm: number | null;
}

/** Value at a place on the panel, between the four cells around it; `null` off the map or where one is unread. */
export function valueAt(map: NpyMap<Float32Array>, grid: Grid, at: Point): number | null {
  const column = (at.x - grid.x0_mm) / grid.step_mm;
  const row = (at.y - grid.y0_mm) / grid.step_mm;
  if (column < 0 || row < 0 || column > map.nx - 1 || row > map.ny - 1) return null;
  const c = Math.min(Math.floor(column), map.nx - 2);
  const r = Math.min(Math.floor(row), map.ny - 2);
  if (c < 0 || r < 0) return null;
  const [u, v] = [column - c, row - r];
  const first = r * map.nx + c;
  const second = first + map.nx;
  const value =
    (1 - v) * ((1 - u) * map.data[first]! + u * map.data[first + 1]!) +
    v * ((1 - u) * map.data[second]! + u * map.data[second + 1]!);
  return Number.isFinite(value) ? value : null;
}

/** The code of the cell nearest to a place; 0 off the map. */
export function codeAt(map: NpyMap<Uint8Array>, grid: Grid, at: Point): number {
  const column = Math.round((at.x - grid.x0_mm) / grid.step_mm);
  const row = Math.round((at.y - grid.y0_mm) / grid.step_mm);
  if (column < 0 || row < 0 || column >= map.nx || row >= map.ny) return 0;
  return map.data[row * map.nx + column]!;
}

/** A cut from one place to another, one sample per half cell, at most `most`. */
export function cut(
  deviation: NpyMap<Float32Array>,
  sigma: NpyMap<Float32Array> | null,
  grid: Grid,
  from: Point,
  to: Point,
  most = 600,
): Sample[] {
  const length_mm = Math.hypot(to.x - from.x, to.y - from.y);
  if (length_mm === 0) return [];
  const count = Math.max(2, Math.min(most, Math.ceil((2 * length_mm) / grid.step_mm) + 1));
  return Array.from({ length: count }, (_, i) => {
    const t = i / (count - 1);
    const at = { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) };
    return {
      along_mm: t * length_mm,
      height_mm: valueAt(deviation, grid, at),
      sigma_mm: sigma ? valueAt(sigma, grid, at) : null,
    };
  });
}

/** Runs of samples that were read, so that a gap is drawn as a gap. */
export function runs(samples: Sample[]): Sample[][] {
  const found: Sample[][] = [];
  let open: Sample[] = [];
  for (const sample of samples) {
    if (sample.height_mm !== null) open.push(sample);
    else if (open.length > 0) {
      found.push(open);
      open = [];
    }
  }
  if (open.length > 0) found.push(open);
  return found;
}
