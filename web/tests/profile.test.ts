import { describe, expect, it } from 'vitest';
import { codeAt, cut, runs, valueAt, type Grid } from '../src/lib/profile';
import { ticks } from '../src/lib/ticks';
import { bounds, fit, pan, toPanel, toScreen, zoomAt } from '../src/lib/view';

const grid: Grid = { x0_mm: -10, y0_mm: 5, step_mm: 0.5, nx: 41, ny: 21 };
const of = (value: (x: number, y: number) => number) => ({
  nx: grid.nx,
  ny: grid.ny,
  data: Float32Array.from({ length: grid.nx * grid.ny }, (_, i) => value(grid.x0_mm + (i % grid.nx) * grid.step_mm, grid.y0_mm + Math.floor(i / grid.nx) * grid.step_mm)),
});
/** A plane is met exactly between its cells. */
const plane = of((x, y) => 0.01 * x - 0.02 * y);

describe('values of a map', () => {
  it('are met exactly on a plane, row 0 at the bottom', () => {
    expect(valueAt(plane, grid, { x: 1.23, y: 9.87 })).toBeCloseTo(0.0123 - 0.1974, 6);
    expect(valueAt(plane, grid, { x: -10, y: 5 })).toBeCloseTo(-0.2, 6);
    expect(valueAt(plane, grid, { x: 10, y: 15 })).toBeCloseTo(-0.2, 6);
  });
  it('are none off the map and beside unread cells', () => {
    expect(valueAt(plane, grid, { x: 10.1, y: 10 })).toBeNull();
    expect(valueAt(plane, grid, { x: 0, y: 4.9 })).toBeNull();
    expect(valueAt(of((x) => (x > 2 ? NaN : 1)), grid, { x: 2.2, y: 10 })).toBeNull();
  });
  it('have the code of the nearest cell where unread', () => {
    const codes = { nx: grid.nx, ny: grid.ny, data: Uint8Array.from({ length: grid.nx * grid.ny }, (_, i) => (i === 2 * grid.nx + 3 ? 5 : 0)) };
    expect(codeAt(codes, grid, { x: -8.6, y: 6.1 })).toBe(5);
    expect(codeAt(codes, grid, { x: 50, y: 6 })).toBe(0);
  });
});

describe('a cut', () => {
  it('has even samples at half a cell with their doubt', () => {
    const samples = cut(plane, of(() => 0.001), grid, { x: 0, y: 6 }, { x: 3, y: 10 });
    expect(samples).toHaveLength(21);
    expect(samples.at(-1)!.along_mm).toBeCloseTo(5, 9);
    for (const { along_mm, height_mm, sigma_mm } of samples) {
      expect(height_mm).toBeCloseTo(0.01 * 0.6 * along_mm - 0.02 * (6 + 0.8 * along_mm), 6);
      expect(sigma_mm).toBeCloseTo(0.001, 9);
    }
  });
  it('breaks where nothing was read', () => {
    const samples = cut(of((x) => (Math.abs(x) < 1 ? NaN : x)), null, grid, { x: -5, y: 10 }, { x: 5, y: 10 });
    const [left, right, ...rest] = runs(samples);
    expect(rest).toEqual([]);
    expect(left!.at(-1)!.height_mm).toBeLessThanOrEqual(-1);
    expect(right![0]!.height_mm).toBeGreaterThanOrEqual(1);
  });
  it('is nothing without a length, and never longer than asked', () => {
    expect(cut(plane, null, grid, { x: 1, y: 9 }, { x: 1, y: 9 })).toEqual([]);
    expect(cut(plane, null, grid, { x: -10, y: 5 }, { x: 10, y: 15 }, 12)).toHaveLength(12);
  });
});

describe('the view', () => {
  const size = { width: 400, height: 300 };
  it('fits the whole map and goes to the screen and back', () => {
    const view = fit(grid, size);
    const { left, top, right, bottom } = bounds(grid);
    for (const at of [{ x: left, y: top }, { x: right, y: bottom }]) {
      const on = toScreen(view, size, at);
      expect(on.x).toBeGreaterThanOrEqual(0);
      expect(on.x).toBeLessThanOrEqual(size.width);
      const back = toPanel(view, size, on);
      expect(back.x).toBeCloseTo(at.x, 9);
      expect(back.y).toBeCloseTo(at.y, 9);
    }
    expect(toScreen(view, size, { x: 0, y: top }).y).toBeLessThan(toScreen(view, size, { x: 0, y: bottom }).y);
  });
  it('zooms about the finger', () => {
    const finger = { x: 250, y: 120 };
    const view = fit(grid, size);
    const before = toPanel(view, size, finger);
    const after = toPanel(zoomAt(view, size, grid, finger, 3), size, finger);
    expect(after.x).toBeCloseTo(before.x, 9);
    expect(after.y).toBeCloseTo(before.y, 9);
  });
  it('cannot lose the map', () => {
    const view = pan(fit(grid, size), grid, -1e6, 1e6);
    expect(view.centre).toEqual({ x: bounds(grid).right, y: bounds(grid).top });
    expect(zoomAt(view, size, grid, { x: 0, y: 0 }, 1e9).scale).toBeLessThanOrEqual(fit(grid, size).scale * 60);
  });
});

it('ticks are round and inside', () => {
  expect(ticks(-0.43, 0.06, 4)).toEqual([-0.4, -0.2, 0].map((one) => expect.closeTo(one, 9)));
  expect(ticks(0, 0, 4)).toEqual([0]);
});
