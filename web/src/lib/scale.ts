/**
 * The colours of the map: lows blue, highs orange, sound metal the colour of the ground.
 * Even steps of deviation are even steps to the eye: the two arms are laid out by arc length in
 * OKLab (Björn Ottosson, "A perceptual color space for image processing", 2020). Blue against
 * orange, with brightness growing along both arms, stays apart in all common colour blindness.
 */
export type Rgb = [number, number, number];
export type Ground = 'dark' | 'light';

/** Colours on each arm, without the middle. */
export const STEPS = 127;

interface Arm {
  hue: number;
  lightness: number;
  chroma: number;
}

/** Where each arm ends, OKLCH. Chosen inside sRGB; a test checks it. */
const ARMS: Record<Ground, { middle: number; low: Arm; high: Arm }> = {
  dark: {
    middle: 0.27,
    low: { hue: 245, lightness: 0.84, chroma: 0.1 },
    high: { hue: 62, lightness: 0.84, chroma: 0.14 },
  },
  light: {
    middle: 0.96,
    low: { hue: 256, lightness: 0.4, chroma: 0.14 },
    high: { hue: 50, lightness: 0.46, chroma: 0.12 },
  },
};

/** All colours from deepest low to tallest high: `2 · STEPS + 1` of them, the middle sound metal. */
export function palette(ground: Ground): Rgb[] {
  const { middle, low, high } = ARMS[ground];
  const down = arm(middle, low).reverse();
  return [...down, toRgb(middle, 0, 0), ...arm(middle, high)];
}

/** Place of a deviation among the colours; `range_mm` is where an arm ends. */
export function stepOf(value_mm: number, range_mm: number): number {
  const part = Math.max(-1, Math.min(1, value_mm / range_mm));
  return STEPS + Math.round(part * STEPS);
}

/** Ends the scale can have, mm: a dial with detents. */
export const RANGES_MM = [0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5] as const;

/** The finest range that shows all but three hundredths of what was read; the deepest may lie beyond its end. */
export function rangeFor(data: Float32Array): number {
  const sizes: number[] = [];
  const stride = Math.max(1, Math.floor(data.length / 50_000));
  for (let at = 0; at < data.length; at += stride) {
    const value = data[at]!;
    if (Number.isFinite(value)) sizes.push(Math.abs(value));
  }
  if (sizes.length === 0) return RANGES_MM[1];
  sizes.sort((a, b) => a - b);
  const most = sizes[Math.floor((sizes.length - 1) * 0.97)]!;
  return RANGES_MM.find((range) => range >= most) ?? RANGES_MM[RANGES_MM.length - 1]!;
}

/** An arm from just beside the middle to its end, evenly spaced by length in OKLab. */
function arm(middle: number, end: Arm): Rgb[] {
  const at = (t: number): [number, number, number] => {
    // Chroma leads lightness a little, so that small deviations already carry a hue.
    const c = end.chroma * Math.sin((t * Math.PI) / 2);
    const l = middle + (end.lightness - middle) * t;
    const h = (end.hue * Math.PI) / 180;
    return [l, c * Math.cos(h), c * Math.sin(h)];
  };
  const fine = 2000;
  const length = new Float64Array(fine + 1);
  let before = at(0);
  for (let i = 1; i <= fine; i++) {
    const here = at(i / fine);
    length[i] = length[i - 1]! + Math.hypot(here[0] - before[0], here[1] - before[1], here[2] - before[2]);
    before = here;
  }
  const colours: Rgb[] = [];
  for (let step = 1, i = 0; step <= STEPS; step++) {
    const want = (length[fine]! * step) / STEPS;
    while (i < fine && length[i]! < want) i++;
    colours.push(toRgb(...at(i / fine)));
  }
  return colours;
}

/** OKLab to sRGB, 0 to 255. */
export function toRgb(L: number, a: number, b: number): Rgb {
  const l = (L + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (L - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (L - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [
    encode(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
    encode(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
    encode(-0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s),
  ];
}

/** sRGB, 0 to 255, to OKLab. */
export function toLab([r, g, b]: Rgb): [number, number, number] {
  const [R, G, B] = [decode(r), decode(g), decode(b)];
  const l = Math.cbrt(0.4122214708 * R + 0.5363325363 * G + 0.0514459929 * B);
  const m = Math.cbrt(0.2119034982 * R + 0.6806995451 * G + 0.1073969566 * B);
  const s = Math.cbrt(0.0883024619 * R + 0.2817188376 * G + 0.6299787005 * B);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
}

function encode(linear: number): number {
  const v = Math.max(0, Math.min(1, linear));
  return Math.round(255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055));
}

/** Linear light of an sRGB value, IEC 61966-2-1. */
export function decode(value: number): number {
  const v = value / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
}
