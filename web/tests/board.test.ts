import { describe, expect, it } from 'vitest';
import { layOut, screenValue, told, waveValues } from '../src/lib/board';

describe('a screen as the board', () => {
  it('lays the reference screen out as the rendered captures have it', () => {
    const layout = layOut(1456, 836);
    expect(layout).toMatchObject({ width: 1416, height: 796, frame: 20, module: 15 });
    const screen = told(layout, 0.5, [20, 21, 22, 23]);
    expect(screen.tags[0]).toEqual({ id: 20, x_px: 90, y_px: 90, size_px: 120 });
    expect(screen.tags[2]).toEqual({ id: 22, x_px: 1326, y_px: 706, size_px: 120 });
  });
  it('falls on whole pixels whatever the screen', () => {
    for (const [w, h] of [[3840, 2160], [1366, 768], [2388, 1668], [1080, 1920], [800, 600]]) {
      const { width, height, frame, module, centres } = layOut(w!, h!);
      expect([width, height, frame, module, ...centres.flat()].every(Number.isInteger)).toBe(true);
      expect(width + 2 * frame).toBe(w);
      expect(centres[0]![0] - 5 * module).toBeGreaterThanOrEqual(0);
      expect(height).toBeGreaterThan(20 * module);
    }
  });
  it('shines as the wave says: IEC 61966-2-1 has half the light at 188', () => {
    expect([screenValue(0), screenValue(0.5), screenValue(1)]).toEqual([0, 188, 255]);
    const u = waveValues({ axis: 'u', periods: 1, shift: 0 }, 1000);
    expect([u[0], u[499], u[999]]).toEqual([255, 0, 255]);
    // v runs up: a quarter of a period further is the lower quarter of the screen
    const v = waveValues({ axis: 'v', periods: 1, shift: 0.25 }, 1000);
    expect(v[749]).toBeLessThan(10);
    expect(v[250]).toBeGreaterThan(245);
  });
});
