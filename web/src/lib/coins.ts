/** A thing that every technician has in the pocket and can hold beside a dent. */
export interface Gauge {
  /** What is written on it. */
  name: string;
  across_mm: number;
}

/** Round gauges of our own choice, mm. */
export const CIRCLES_MM = [5, 10, 15, 20, 25, 30, 40, 60];

/** Euro coins: Council Regulation (EC) 975/98. */
const EURO: Gauge[] = [
  { name: '1 ct', across_mm: 16.25 },
  { name: '10 ct', across_mm: 19.75 },
  { name: '5 ct', across_mm: 21.25 },
  { name: '1 €', across_mm: 23.25 },
  { name: '50 ct', across_mm: 24.25 },
  { name: '2 €', across_mm: 25.75 },
];

/** Coins of the United States: US Mint. */
const DOLLAR: Gauge[] = [
  { name: 'dime', across_mm: 17.91 },
  { name: 'nickel', across_mm: 21.21 },
  { name: 'quarter', across_mm: 24.26 },
  { name: 'half dollar', across_mm: 30.61 },
];

/** The coins of a currency; none where their sizes were not looked up. */
export function coinsOf(currency: string): Gauge[] {
  return { EUR: EURO, USD: DOLLAR }[currency] ?? [];
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
