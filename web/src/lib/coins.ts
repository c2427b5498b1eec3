import { api } from '../api/client';
import { kept } from './outbox/seen.svelte';
import { shop } from './shop.svelte';

/** A thing that every technician has in the pocket and can hold beside a dent. */
export interface Gauge {
  /** What is written on it; empty for a circle, which is called by its size. */
  name: string;
  across_mm: number;
}

/** Round gauges of our own choice, mm. */
export const CIRCLES: Gauge[] = [5, 10, 15, 20, 25, 30, 40, 60].map((across_mm) => ({ name: '', across_mm }));

/** The coins of the shop's country, smallest first, from its pack; none where there is no pack of its money. */
export async function coins(): Promise<Gauge[]> {
  const [packs, billing] = await Promise.all([kept('countries', api.countries), kept('billing', api.billing)]);
  const pack = packs.find((one) => one.code === billing.country) ?? packs.find((one) => one.currency === shop.value?.currency);
  return pack?.coins.map((coin) => ({ name: coin.name, across_mm: Number(coin.mm) })).sort((a, b) => a.across_mm - b.across_mm) ?? [];
}

/**
 * Depth classes for a dent that nobody measured, mm: as a fingernail and the lines tell it.
 * Common practice, no published source.
 */
export const DEPTHS = [
  { name: 'faint', depth_mm: 0.15 },
  { name: 'shallow', depth_mm: 0.4 },
  { name: 'clear', depth_mm: 1 },
  { name: 'deep', depth_mm: 2.2 },
] as const;
