import { describe, expect, it } from 'vitest';
import { decode, palette, RANGES_MM, rangeFor, STEPS, stepOf, toLab, toRgb, type Ground, type Rgb } from '../src/lib/scale';

const GROUNDS: Ground[] = ['dark', 'light'];
const far = (a: Rgb, b: Rgb) => {
  const [p, q] = [toLab(a), toLab(b)];
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
};

/** Full colour blindness, linear light: Machado, Oliveira and Fernandes, IEEE TVCG 2009, severity 1.0. */
const BLIND = {
  protan: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deutan: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritan: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
};
function seenBy(m: number[], colour: Rgb): Rgb {
  const light = colour.map(decode);
  const row = (r: number) => m[r * 3]! * light[0]! + m[r * 3 + 1]! * light[1]! + m[r * 3 + 2]! * light[2]!;
  const encode = (v: number) => 255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);
  return [0, 1, 2].map((r) => encode(Math.max(0, Math.min(1, row(r))))) as Rgb;
}

describe.each(GROUNDS)('colours on a %s ground', (ground) => {
  const colours = palette(ground);

  it('has both arms and one middle without hue', () => {
    expect(colours).toHaveLength(2 * STEPS + 1);
    const [r, g, b] = colours[STEPS]!;
    expect(Math.max(r, g, b) - Math.min(r, g, b)).toBeLessThanOrEqual(1);
  });
  it('steps evenly to the eye', () => {
    for (const arm of [colours.slice(0, STEPS + 1), colours.slice(STEPS)]) {
      // eight colours at a time: single ones are rounded to whole sRGB values
      const hops = Array.from({ length: Math.floor((arm.length - 1) / 8) }, (_, i) => far(arm[8 * i]!, arm[8 * i + 8]!));
      const mean = hops.reduce((a, b) => a + b) / hops.length;
      for (const hop of hops) expect(Math.abs(hop / mean - 1)).toBeLessThan(0.1);
    }
  });
  it('changes brightness one way only along each arm', () => {
    const lightness = colours.map((one) => toLab(one)[0]);
    const sign = ground === 'dark' ? 1 : -1;
    for (let i = 8; i <= STEPS; i += 8) {
      expect(sign * (lightness[STEPS + i]! - lightness[STEPS + i - 8]!)).toBeGreaterThan(0);
      expect(sign * (lightness[STEPS - i]! - lightness[STEPS - i + 8]!)).toBeGreaterThan(0);
    }
  });
  it.each(Object.entries(BLIND))('keeps low and high apart for %s eyes', (_, matrix) => {
    for (const part of [0.25, 0.5, 1]) {
      const low = seenBy(matrix, colours[STEPS - Math.round(part * STEPS)]!);
      const high = seenBy(matrix, colours[STEPS + Math.round(part * STEPS)]!);
      // 0.02 in OKLab is about the smallest difference one sees side by side
      expect(far(low, high)).toBeGreaterThan(0.03);
    }
  });
});

describe('the scale', () => {
  it('turns OKLab into sRGB and back', () => {
    for (const colour of [[12, 200, 99], [255, 255, 255], [0, 0, 0], [250, 120, 3]] as Rgb[]) expect(toRgb(...toLab(colour))).toEqual(colour);
  });
  it('puts zero in the middle and everything beyond at the ends', () => {
    expect(stepOf(0, 0.1)).toBe(STEPS);
    expect(stepOf(-0.05, 0.1)).toBe(64);
    expect([stepOf(-9, 0.1), stepOf(9, 0.1)]).toEqual([0, 2 * STEPS]);
  });
  it('chooses the finest range that holds nearly all', () => {
    const data = Float32Array.from({ length: 10_000 }, (_, i) => (i % 100 === 0 ? -1.4 : i % 7 === 0 ? NaN : 0.004));
    expect(rangeFor(data)).toBe(0.005);
    expect(rangeFor(data.map((value) => value * 10))).toBe(0.05);
    expect(rangeFor(new Float32Array([NaN, NaN]))).toBe(RANGES_MM[1]);
  });
});
