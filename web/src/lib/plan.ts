/** A plan on the screen: its marks, and what is looked at. */
import type { Act, Plan, Planned } from '../api/plan';
import { outward } from '../lang/plan';
import type { Mark } from './marks';
import type { Point } from './profile';

export const pointOf = ([x, y]: readonly [number, number]): Point => ({ x, y });

export const markOf = (move: Planned, px: readonly [number, number] | null, text: string): Mark => ({ at: pointOf(move.at_mm), px, text, out: outward(move.act) });

/** Marks of a round's moves. */
export const marksOf = (plan: Plan, round = 0): Mark[] => plan.rounds[round]?.moves.map((move, k) => markOf(move, plan.at_px[round]?.[k] ?? null, String(k + 1))) ?? [];

/** The patch that a plan is for; its middle on the photo is taken from the round's marks. */
export function patchOf(plan: Plan, zoom = 1) {
  if (!plan.sheet) return undefined;
  const px = (plan.at_px[0] ?? []).filter((one) => one !== null);
  const middle = px.length > 0 ? ([0, 1].map((k) => px.reduce((sum, one) => sum + one[k]!, 0) / px.length) as [number, number]) : null;
  return { at: pointOf(plan.sheet.at_mm), px: middle, half_mm: plan.sheet.half_mm, zoom };
}

/** The kind of work that an act is clocked as. */
export const WORK_OF: Record<Act, 'push' | 'tap' | 'glue'> = { push: 'push', pull: 'glue', tap: 'tap', blend: 'tap' };
