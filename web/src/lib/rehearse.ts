/** A simulated panel under a virtual board: how the eye stands, what a touch of the picture means, what tips there are. */
import type { Rehearsal } from '../api/types';
import type { Eye, Look, Vec3 } from './mirror';
import { surfaceOf, type Surface } from './surface';

/** Height over width of the picture. */
export const ASPECT = 0.86;
const EYE: Vec3 = [0, -260, 430];
const FAR = Math.hypot(...EYE);
const FOCAL = 5;
/** From the panel to the board, mm: near enough for the lines over a low to run wide, and far enough to turn them over. */
export const BOARDS_MM = { near: 300, far: 1500 };

const unit = (a: Vec3): Vec3 => [a[0] / FAR, a[1] / FAR, a[2] / FAR];
const AHEAD = unit([-EYE[0], -EYE[1], -EYE[2]]);

/** The eye of a person bent over the panel. */
const eye: Eye = { at: EYE, right: [1, 0, 0], down: [0, AHEAD[2], -AHEAD[1]], ahead: AHEAD, focal: FOCAL, k1: 0 };

/** Eye and board, the board so far away, mm, with lines of this pitch. */
export function standing(board_mm: number, pitch: number): Look {
  const to: Vec3 = [0, -AHEAD[1] * -1, -AHEAD[2]];
  const wide = 2.2 * (board_mm + 400);
  return {
    eye,
    board: { middle: [0, to[1] * board_mm, to[2] * board_mm], u: [1, 0, 0], v: [0, -to[2], to[1]], size: [wide, wide], pitch, turn: 0, slid: 0 },
    times: 1,
    surface: 0,
  };
}

/** From the panel to the eye, mm. */
export const eyeFar = (look: Look) => Math.hypot(...look.eye.at);
/** From the panel to the board, mm. */
export const boardFar = (look: Look) => Math.hypot(...look.board.middle);

/** Place on the panel that is seen at a share of the picture's width and height, mm. */
export function placeAt(look: Look, x: number, y: number): { x: number; y: number } {
  const { at, right, down, ahead, focal } = look.eye;
  const [across, along] = [(x - 0.5) / focal, ((y - 0.5) * ASPECT) / focal];
  const ray = ahead.map((v, k) => v + across * right[k]! + along * down[k]!) as Vec3;
  const far = -at[2] / ray[2];
  return { x: at[0] + far * ray[0], y: at[1] + far * ray[1] };
}

/** Where a place of the panel is seen, in shares of the picture's width and height. */
export function seenAt(look: Look, place: { x: number; y: number }): { x: number; y: number } {
  const { at, right, down, ahead, focal } = look.eye;
  const to: Vec3 = [place.x - at[0], place.y - at[1], -at[2]];
  const dot = (a: Vec3) => a[0] * to[0] + a[1] * to[1] + a[2] * to[2];
  return { x: 0.5 + (focal * dot(right)) / dot(ahead), y: 0.5 + (focal * dot(down)) / (ASPECT * dot(ahead)) };
}

/** The panel with a change laid over it. */
export function surfaceNow(panel: Pick<Rehearsal, 'grid' | 'intended_mm'>, deviation: readonly number[], change?: readonly number[] | null): Surface {
  const { nx, ny } = panel.grid;
  const now = Float32Array.from(deviation, (v, k) => v + (change?.[k] ?? 0));
  const height = Float32Array.from(now, (v, k) => v + panel.intended_mm[k]!);
  return surfaceOf(panel.grid, { nx, ny, data: height }, { nx, ny, data: now });
}

/** Half of the panel's side that a tip may stand on, mm. */
export const halfOf = (panel: Pick<Rehearsal, 'grid'>) => -panel.grid.x0_mm;

export type RehearsedKind = 'push' | 'tap' | 'pull';
const ball = (radius_mm: number) => ({ shape: 'sphere' as const, radius_mm });
export const REHEARSED_TIPS = { sharp: ball(6), ball: ball(12), blunt: ball(24), tab: { shape: 'disc' as const, radius_mm: 12 } };
export type RehearsedTip = keyof typeof REHEARSED_TIPS;
export const REHEARSED_TIPS_FOR: Record<RehearsedKind, RehearsedTip[]> = { push: ['sharp', 'ball', 'blunt'], tap: ['sharp', 'ball', 'blunt'], pull: ['tab'] };

/** Monday of the week of a moment, as a date. */
export function weekOf(moment: string): string {
  const day = new Date(moment);
  day.setHours(12, 0, 0, 0);
  day.setDate(day.getDate() - ((day.getDay() + 6) % 7));
  return day.toISOString().slice(0, 10);
}
