/** A warmed panel that cools: how long it stays warm enough, and how near the end is. */

/** A move is still right this far below its warmth, °C. */
export const MAY_FALL_C = 5;
/** The end is told ahead by this, s. */
export const SOON_S = 20;

export interface Cooling {
  /** When it falls below, ms since 1970; null where it never does. */
  until: number | null;
}

export type CoolState = 'warm' | 'soon' | 'over';

export const leftS = (cooling: Cooling, now: number): number | null => (cooling.until === null ? null : Math.max(0, (cooling.until - now) / 1000));

export function coolState(cooling: Cooling, now: number): CoolState {
  const left = leftS(cooling, now);
  if (left === null || left > SOON_S) return 'warm';
  return left > 0 ? 'soon' : 'over';
}

/** Whether a move asks for more warmth than the panel has. */
export const wantsHeat = (paint_c: number, panel_c: number) => paint_c - MAY_FALL_C > panel_c;
