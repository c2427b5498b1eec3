/** The measured panel made ready for the mirror: heights and slopes, intended and deviating, and where it lies. */
import type { Reading } from '../api/types';
import type { NpyMap } from './npy';

export interface Surface {
  grid: Reading['grid'];
  /** Four floats a cell: slopes of the intended shape along x and y, of the deviation along x and y. */
  slopes: Float32Array;
  /** Four floats a cell: intended height, deviation, 1 where read, 0. */
  heights: Float32Array;
  /** Height in the middle of what was read, where rays begin to look. */
  middle_mm: number;
  /** How a point of the look's frame is turned and shifted into this surface's own. */
  laid: Laid;
}

export interface Laid {
  turn: number;
  shift: [number, number];
}

export const AS_IT_LIES: Laid = { turn: 0, shift: [0, 0] };

/** From the maps of a reading. Where a neighbour was not read the slope is one-sided; alone it is zero. */
export function surfaceOf(grid: Reading['grid'], height: NpyMap<Float32Array>, deviation: NpyMap<Float32Array>, laid: Laid = AS_IT_LIES): Surface {
  const { nx, ny, step_mm } = grid;
  const count = nx * ny;
  const intended = Float32Array.from({ length: count }, (_, k) => height.data[k]! - deviation.data[k]!);
  const [slopes, heights] = [new Float32Array(4 * count), new Float32Array(4 * count)];
  const heightsRead: number[] = [];
  for (let k = 0; k < count; k++) {
    if (!Number.isFinite(intended[k]!)) continue;
    heights.set([intended[k]!, deviation.data[k]!, 1, 0], 4 * k);
    heightsRead.push(height.data[k]!);
    const [x, y] = [k % nx, Math.floor(k / nx)];
    slopes.set([...slopeAt(intended, k, x, y), ...slopeAt(deviation.data, k, x, y)], 4 * k);
  }
  heightsRead.sort((a, b) => a - b);
  return { grid, slopes, heights, middle_mm: heightsRead[heightsRead.length >> 1] ?? 0, laid };

  function slopeAt(map: Float32Array, k: number, x: number, y: number): [number, number] {
    return [rise(map, k, x > 0 ? k - 1 : k, x + 1 < nx ? k + 1 : k, 1), rise(map, k, y > 0 ? k - nx : k, y + 1 < ny ? k + nx : k, nx)];
  }
  function rise(map: Float32Array, here: number, before: number, after: number, stride: number): number {
    const from = Number.isFinite(map[before]!) ? before : here;
    const to = Number.isFinite(map[after]!) ? after : here;
    return to > from ? (map[to]! - map[from]!) / (((to - from) / stride) * step_mm) : 0;
  }
}

/**
 * How the tags of `here` must be turned and shifted to lie on those of `there`: least squares over the ids that both
 * have (Umeyama 1991, without scale). None with fewer than two.
 */
export function layOn(here: Reading['panel_tags'], there: Reading['panel_tags']): Laid | null {
  const pairs = here.flatMap((tag) => there.filter((other) => other.id === tag.id).map((other) => [tag, other] as const));
  if (pairs.length < 2) return null;
  const mean = (pick: 0 | 1, axis: 'x_mm' | 'y_mm') => pairs.reduce((sum, pair) => sum + pair[pick][axis], 0) / pairs.length;
  const [ax, ay, bx, by] = [mean(0, 'x_mm'), mean(0, 'y_mm'), mean(1, 'x_mm'), mean(1, 'y_mm')];
  let [dot, cross] = [0, 0];
  for (const [a, b] of pairs) {
    const [px, py, qx, qy] = [a.x_mm - ax, a.y_mm - ay, b.x_mm - bx, b.y_mm - by];
    dot += px * qx + py * qy;
    cross += px * qy - py * qx;
  }
  const turn = Math.atan2(cross, dot);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return { turn, shift: [bx - (cos * ax - sin * ay), by - (sin * ax + cos * ay)] };
}
