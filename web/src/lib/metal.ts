import { metalMap } from '../api/client';
import type { MetalFacts, MoveAsked, OilCan } from '../api/types';
import { readFloatMap, type NpyMap } from './npy';

/** What can be laid over the panel. */
export const LAYERS = ['stretch', 'tension', 'bent_outer', 'bent_inner'] as const;
export type Layer = (typeof LAYERS)[number];

export type MetalMaps = Record<Layer | 'direction', NpyMap<Float32Array>>;

export async function loadMetalMaps(reading: string): Promise<MetalMaps> {
  const names = [...LAYERS, 'direction'] as const;
  const maps = await Promise.all(names.map((name) => metalMap(reading, name)));
  return Object.fromEntries(names.map((name, index) => [name, readFloatMap(maps[index]!)])) as MetalMaps;
}

/** Largest value in size of a map, for the end of its scale; never nothing. */
export function mostOf(map: NpyMap<Float32Array>): number {
  let most = 0;
  for (const value of map.data) if (Number.isFinite(value)) most = Math.max(most, Math.abs(value));
  return most || 1;
}

/** Tips, tabs and heads that moves are tried with. */
export const TIPS = {
  sharp: { shape: 'sphere', radius_mm: 4 },
  ball: { shape: 'sphere', radius_mm: 8 },
  blunt: { shape: 'sphere', radius_mm: 15 },
  flat: { shape: 'disc', radius_mm: 8 },
  strip: { shape: 'strip', length_mm: 30, width_mm: 6, angle_deg: 0 },
  tab: { shape: 'disc', radius_mm: 12 },
} as const satisfies Record<string, MoveAsked['tip']>;
export type TipName = keyof typeof TIPS;

/** Which tips go with which move. */
export const TIPS_FOR: Record<'push' | 'tap' | 'pull', TipName[]> = {
  push: ['sharp', 'ball', 'blunt', 'flat', 'strip'],
  tap: ['ball', 'flat', 'strip'],
  pull: ['tab', 'strip'],
};

/** How an oil can is put: name of the text. */
export function oilCanWords(found: OilCan | null | undefined): 'unknown' | 'unstable' | 'pops-stays' | 'pops' | 'calm' {
  if (!found) return 'unknown';
  if (!found.stable) return 'unstable';
  if (!found.pops) return 'calm';
  return found.pops.stays ? 'pops-stays' : 'pops';
}

/** How far the quick answer is off here, as a share of what a full solve leaves; null where it was not checked. */
export function quickOff(facts: MetalFacts): number | null {
  const check = facts.check;
  if (!check || Math.abs(check.full_left_mm) < 0.02) return null;
  return Math.abs(check.quick_left_mm / check.full_left_mm - 1);
}
