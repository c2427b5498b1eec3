/** Round values for an axis from `from` to `to`, about `count` of them. */
export function ticks(from: number, to: number, count: number): number[] {
  const rough = (to - from) / Math.max(1, count);
  if (!(rough > 0)) return [from];
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5, 10].find((one) => one * power >= rough) ?? 10);
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
}
