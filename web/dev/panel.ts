import { deflateSync } from 'node:zlib';

/** An invented reading: two lows, a crease and a high on a panel of 240 by 180 mm. */
export const GRID = { x0_mm: -120, y0_mm: -90, step_mm: 0.75, nx: 321, ny: 241 };

interface Bump {
  x: number;
  y: number;
  height: number;
  a: number;
  b: number;
}
const BUMPS: Bump[] = [
  { x: -38, y: 22, height: -0.412, a: 11, b: 9 },
  { x: 46, y: -18, height: -0.138, a: 18, b: 5 },
  { x: -20, y: 6, height: 0.034, a: 6, b: 5 },
  { x: 72, y: 40, height: -0.0061, a: 7, b: 6 },
];

const wave = (x: number, y: number) => 0.0009 * Math.sin(x / 5.1 + 1.7 * Math.sin(y / 9)) * Math.cos(y / 4.3);

export function deviation(x: number, y: number): number {
  return BUMPS.reduce((sum, one) => sum + one.height * Math.exp(-0.5 * (((x - one.x) / one.a) ** 2 + ((y - one.y) / one.b) ** 2)), wave(x, y));
}

/** Code of an unread place, 0 where it was read. */
export function unread(x: number, y: number): number {
  if (Math.hypot(x / 1.25, y * 1.1) > 91) return 1;
  if (Math.max(Math.abs(x - 80), Math.abs(y + 58)) < 13 || Math.max(Math.abs(x + 78), Math.abs(y - 52)) < 13) return 2;
  if (Math.hypot(x + 38, y - 22) < 3.4) return 5;
  return 0;
}

export const SPOTS = BUMPS.map((one) => ({
  kind: one.height < 0 ? ('low' as const) : ('high' as const),
  x_mm: one.x,
  y_mm: one.y,
  height_mm: one.height,
  sigma_mm: 0.0008,
  length_mm: 3.4 * Math.max(one.a, one.b),
  width_mm: 3.4 * Math.min(one.a, one.b),
  angle_deg: 0,
  area_mm2: 9.1 * one.a * one.b,
  volume_mm3: 2 * Math.PI * one.a * one.b * Math.abs(one.height),
  at_px: inPhoto(one.x, one.y),
  outline_px: Array.from({ length: 24 }, (_, i) => {
    const turn = (i / 24) * 2 * Math.PI;
    return inPhoto(one.x + 1.7 * one.a * Math.cos(turn), one.y + 1.7 * one.b * Math.sin(turn));
  }),
}));

export const PHOTO = { file: 'panel.jpg', width_px: 480, height_px: 360 };

function inPhoto(x: number, y: number): [number, number] {
  return [Math.round(240 + 1.6 * x + 0.1 * y), Math.round(180 - 1.6 * y)];
}

/** A map as an NPY file. */
export function npy(kind: 'f4' | 'u1', value: (x: number, y: number) => number): Uint8Array {
  const { x0_mm, y0_mm, step_mm, nx, ny } = GRID;
  const head = `{'descr': '${kind === 'f4' ? '<f4' : '|u1'}', 'fortran_order': False, 'shape': (${ny}, ${nx}), }`;
  const padded = head.padEnd(Math.ceil((head.length + 11) / 64) * 64 - 11) + '\n';
  const data = kind === 'f4' ? new Float32Array(nx * ny) : new Uint8Array(nx * ny);
  for (let row = 0; row < ny; row++) for (let column = 0; column < nx; column++) data[row * nx + column] = value(x0_mm + column * step_mm, y0_mm + row * step_mm);
  const start = Buffer.from([0x93, 0x4e, 0x55, 0x4d, 0x50, 0x59, 1, 0, padded.length & 255, padded.length >> 8]);
  return Buffer.concat([start, Buffer.from(padded, 'latin1'), Buffer.from(data.buffer)]);
}

/** The panel with mirrored lines, as a PNG. */
export function photo(): Uint8Array {
  const { width_px: width, height_px: height } = PHOTO;
  const rows = Buffer.alloc(height * (width + 1));
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const [px, py] = [(x - 240) / 1.6, (180 - y) / 1.6];
      const slope = (deviation(px, py + 0.5) - deviation(px, py - 0.5)) * 900;
      const line = 0.5 + 0.5 * Math.tanh(4 * Math.sin((py + 0.0006 * px * px + slope) * 0.9));
      rows[y * (width + 1) + 1 + x] = 24 + 150 * line * (unread(px, py) === 1 ? 0.12 : 1);
    }
  const chunk = (name: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(name), data]);
    const ends = Buffer.alloc(8);
    ends.writeUInt32BE(data.length, 0);
    ends.writeUInt32BE(crc(body), 4);
    return Buffer.concat([ends.subarray(0, 4), body, ends.subarray(4)]);
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 0, 0, 0, 0], 8);
  return Buffer.concat([Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]), chunk('IHDR', header), chunk('IDAT', deflateSync(rows)), chunk('IEND', Buffer.alloc(0))]);
}

function crc(bytes: Buffer): number {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
  }
  return (sum ^ 0xffffffff) >>> 0;
}
