/** Eye and board as they stood, and as a hand moves them. */
import type { Reading } from '../api/types';
import type { Eye, Vec3, VirtualBoard } from './mirror';

type Stand = NonNullable<Reading['stand']>;

const vec = (a: readonly number[]): Vec3 => [a[0]!, a[1]!, a[2]!];
export const add = (a: Vec3, b: Vec3, times = 1): Vec3 => [a[0] + times * b[0], a[1] + times * b[1], a[2] + times * b[2]];
const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vec3, b: Vec3): Vec3 => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a: Vec3): Vec3 => add([0, 0, 0], a, 1 / Math.hypot(...a));

/** The eye as the camera stood. */
export function eyeOf(reading: Reading, stand: Stand): Eye {
  const { focal_px, k1 } = reading.camera;
  return { at: vec(stand.eye_mm), right: vec(stand.right), down: vec(stand.down), ahead: vec(stand.ahead), focal: focal_px / reading.photo.width_px, k1 };
}

/** The board as it stood, with lines of this pitch that run up and down. */
export function boardOf(stand: Stand, pitch: number): VirtualBoard {
  const [wide, high] = stand.board_size_mm;
  return { middle: vec(stand.board_mm), u: vec(stand.board_u), v: vec(stand.board_v), size: [wide!, high!], pitch, turn: 0, slid: 0 };
}

const LOWEST_EYE = 0.25;

/**
 * The eye carried around what it looks at: `right` and `up` in radians, `closer` a factor of the distance. It never
 * goes behind the panel or flat over it.
 */
export function carry(eye: Eye, right: number, up: number, closer = 1): Eye {
  const far = -eye.at[2] / eye.ahead[2];
  const target = add(eye.at, eye.ahead, far);
  const turned = rotate(rotate(add(eye.at, target, -1), [0, 1, 0], right), eye.right, up);
  const distance = Math.hypot(...turned) / closer;
  const at = add(target, unit(turned), distance);
  if (unit(turned)[2] < LOWEST_EYE || distance < 120 || distance > 3000) return eye;
  return look(eye, at, target);
}

/** The same eye at another place, its picture as upright as it was. */
function look(eye: Eye, at: Vec3, target: Vec3): Eye {
  const ahead = unit(add(target, at, -1));
  const right = unit(add(eye.right, ahead, -dot(eye.right, ahead)));
  return { ...eye, at, ahead, right, down: cross(ahead, right) };
}

/** Rodrigues' rotation about a unit axis. */
function rotate(a: Vec3, axis: Vec3, by: number): Vec3 {
  const [cos, sin] = [Math.cos(by), Math.sin(by)];
  const along = cross(axis, a);
  const part = dot(axis, a) * (1 - cos);
  return [a[0] * cos + along[0] * sin + axis[0] * part, a[1] * cos + along[1] * sin + axis[1] * part, a[2] * cos + along[2] * sin + axis[2] * part];
}

/** The board dragged within its own plane, and pushed toward the panel or away. */
export function shift(board: VirtualBoard, u: number, v: number, out = 0): VirtualBoard {
  return { ...board, middle: add(add(add(board.middle, board.u, u), board.v, v), cross(board.u, board.v), out) };
}
