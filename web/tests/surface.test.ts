import { describe, expect, it } from 'vitest';
import { layOn, surfaceOf } from '../src/lib/surface';

const grid = { x0_mm: -2, y0_mm: -1, step_mm: 0.5, nx: 9, ny: 5 };
const map = (value: (x: number, y: number) => number) => ({
  nx: grid.nx,
  ny: grid.ny,
  data: Float32Array.from({ length: 45 }, (_, k) => value(grid.x0_mm + 0.5 * (k % 9), grid.y0_mm + 0.5 * Math.floor(k / 9))),
});

describe('a surface for the mirror', () => {
  it('has the slopes of the intended shape and of the deviation apart', () => {
    const made = surfaceOf(grid, map((x, y) => 0.3 * x - 0.2 * y + 0.01 * x), map((x) => 0.01 * x));
    const middle = 4 * (2 * 9 + 4);
    expect([...made.slopes.slice(middle, middle + 4)].map((v) => Number(v.toFixed(4)))).toEqual([0.3, -0.2, 0.01, 0]);
    expect(made.heights[middle + 2]).toBe(1);
    expect(made.middle_mm).toBeCloseTo(0, 5);
  });
  it('leaves out what was not read and is one-sided beside it', () => {
    const hole = map((x, y) => (x === 0 && y === 0 ? NaN : 0.5 * x));
    const made = surfaceOf(grid, hole, map(() => 0));
    const at = (x: number, y: number) => 4 * (y * 9 + x);
    expect(made.heights[at(4, 2) + 2]).toBe(0);
    expect(made.slopes[at(3, 2)]).toBeCloseTo(0.5, 5);
    expect(made.slopes[at(0, 0)]).toBeCloseTo(0.5, 5);
  });
});

describe('laying one reading on another', () => {
  const tags = [[-100, -80], [90, -70], [110, 95], [-95, 100]].map(([x_mm, y_mm], id) => ({ id, x_mm: x_mm!, y_mm: y_mm!, z_mm: 0 }));
  it('finds turn and shift from the tags that both have', () => {
    const [cos, sin] = [Math.cos(0.3), Math.sin(0.3)];
    const moved = tags.slice(1).map((tag) => ({ ...tag, x_mm: cos * tag.x_mm - sin * tag.y_mm + 12, y_mm: sin * tag.x_mm + cos * tag.y_mm - 7 }));
    const laid = layOn(tags, moved)!;
    expect(laid.turn).toBeCloseTo(0.3, 9);
    expect(laid.shift[0]).toBeCloseTo(12, 9);
    expect(laid.shift[1]).toBeCloseTo(-7, 9);
  });
  it('does not guess from one tag', () => {
    expect(layOn(tags, [tags[0]!])).toBeNull();
  });
});
