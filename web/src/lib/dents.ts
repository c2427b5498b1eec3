import type { Damage, Dent } from '../api/types';

/** Whether two dents are alike in all but their number, so that they share a line. */
export function alike(one: Dent, other: Dent): boolean {
  return (['kind', 'length_mm', 'width_mm', 'depth_mm', 'metal', 'access', 'place'] as const).every((name) => one[name] === other[name]) && (one.sharpness ?? null) === (other.sharpness ?? null);
}

/** How many dents some damages have. */
export const dentsOf = (damages: Damage[]): number => damages.reduce((sum, damage) => sum + damage.dents.reduce((all, entry) => all + entry.dent.count, 0), 0);

/** Dents of some damages by their longer way across, smallest first. */
export function bySize(damages: Damage[]): { across_mm: number; count: number }[] {
  const counts = new Map<number, number>();
  for (const { dent } of damages.flatMap((damage) => damage.dents)) counts.set(dent.length_mm, (counts.get(dent.length_mm) ?? 0) + dent.count);
  return [...counts].map(([across_mm, count]) => ({ across_mm, count })).sort((a, b) => a.across_mm - b.across_mm);
}
