import { describe, expect, it } from 'vitest';
import { largest, marks, toLast } from '../src/lib/change';

describe('a reading laid on the last', () => {
  const grid = { x0_mm: -10, y0_mm: 4, step_mm: 2, ny: 5 };
  const apply = ([a, b, c, d, e, f]: number[], u: number, v: number) => [a! * u + c! * v + e!, b! * u + d! * v + f!];

  it('puts the middle of a cell where it lies, down being negative', () => {
    // Column 3 of the lowest row: x = -10 + 3·2, y = 4; its pixel is the fourth of the fifth row.
    const [x, y] = apply(toLast(grid, null), 3.5, 4.5);
    expect(x).toBeCloseTo(-4);
    expect(y).toBeCloseTo(-4);
  });
  it('turns and shifts as the server says', () => {
    const laying = { turn_rad: Math.PI / 2, dx_mm: 100, dy_mm: 7 };
    // The place (-4, 4) turned a quarter is (-4, -4), then shifted (96, 3).
    const [x, y] = apply(toLast(grid, laying), 3.5, 4.5);
    expect(x).toBeCloseTo(96);
    expect(y).toBeCloseTo(-3);
  });
});

it('marks say which way the metal went', () => {
  const one = { way: 'better' as const, x_mm: 1, y_mm: 2, before_mm: -0.2, after_mm: 0, change_mm: 0.2, sigma_mm: 0.001, area_mm2: Math.PI * 100, volume_mm3: 8, volume_sigma_mm3: 0.1 };
  const [up, down] = marks([one, { ...one, way: 'worse', change_mm: -0.1, volume_mm3: -3 }]);
  expect([up!.kind, down!.kind]).toEqual(['high', 'low']);
  expect(up!.length_mm).toBeCloseTo(20);
  expect(down!.volume_mm3).toBe(3);
});

it('one scale for a row of maps passes over what was not read', () => {
  const map = (data: number[]) => ({ nx: data.length, ny: 1, data: Float32Array.from(data) });
  expect(largest([map([NaN, 0.5]), map([-2, 0])])).toBe(2);
  expect(largest([])).toBe(0);
});
