import type { PanelPaint } from '../api/types';

/** A panel's paint, judged on the device itself so that no network is waited for: the server's own rule (`job/src/paint.rs`). */
const STANDS_OUT = 3.5;
const QUANTILE = 0.6745;
const LEAST_MAD_UM = 8;
const FEWEST_OTHERS = 3;

/** Every panel that was read beside the car's others, by name. */
export function judgePaint(readings: { panel: PanelPaint['panel']; um: number }[]): PanelPaint[] {
  const panels = [...new Set(readings.map((reading) => reading.panel))];
  const of = new Map(panels.map((panel) => [panel, readings.filter((one) => one.panel === panel).map((one) => one.um)]));
  const medians = new Map([...of].map(([panel, all]) => [panel, median(all)]));
  return panels.map((panel) => {
    const um = medians.get(panel)!;
    const others = [...medians].filter(([other]) => other !== panel).map(([, value]) => value);
    const others_um = others.length > 0 ? median(others) : null;
    const spread_um = others_um === null ? null : median(others.map((other) => Math.abs(other - others_um)));
    return { panel, um, readings: of.get(panel)!.length, others_um, spread_um, says: says(um, others.length, others_um, spread_um) };
  });
}

function says(um: number, others: number, middle: number | null, mad: number | null): PanelPaint['says'] {
  if (middle === null || mad === null || others < FEWEST_OTHERS) return 'too_few';
  const z = (QUANTILE * (um - middle)) / Math.max(mad, LEAST_MAD_UM);
  return z > STANDS_OUT ? 'thick' : z < -STANDS_OUT ? 'thin' : 'usual';
}

function median(values: number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
