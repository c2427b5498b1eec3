import { describe, expect, it } from 'vitest';
import { KnockEar, type Shake } from '../src/lib/work/knock';

/** A phone leaning at the panel: gravity, a little noise, and blows that ring for some samples. */
interface Blow {
  t: number;
  /** m/s². */
  hard: number;
}
function trace(blows: Blow[], { seconds = 4, hz = 60, noise = 0.05, seed = 1, drift = 0 } = {}): Shake[] {
  let state = seed;
  const dice = () => (state = (state * 16807) % 2147483647) / 2147483647 - 0.5;
  return Array.from({ length: seconds * hz }, (_, k) => {
    const t = k / hz;
    // A blow shakes the phone at some 80 Hz and is gone after some 25 ms.
    const ring = blows.reduce((sum, { t: at, hard }) => (t < at ? sum : sum + hard * Math.exp(-(t - at) / 0.012) * Math.cos(500 * (t - at))), 0);
    return { t, x: 1.2 + 2 * noise * dice() + drift * t, y: 6.9 + 2 * noise * dice(), z: 6.9 + ring + 2 * noise * dice() };
  });
}
const heard = (shakes: Shake[], ear = new KnockEar()) => shakes.filter((one) => ear.hear(one)).map((one) => one.t);
const knocks = (from: number, apart: number, hard = 12) => [{ t: from, hard }, { t: from + apart, hard: 0.8 * hard }];
/** Blows at this moment of a sample, so that every one is felt in full. */
const onSample = (blows: Blow[]) => blows.map(({ t, hard }) => ({ t: Math.round(t * 60) / 60, hard }));
/** As many taps, a second's `rate` of them. */
const taps = (from: number, count: number, rate: number, hard: number) => Array.from({ length: count }, (_, k) => ({ t: from + k / rate, hard: hard * (1 + 0.2 * Math.sin(7 * k)) }));

describe('two knocks', () => {
  it('are heard once, shortly after the second', () => {
    for (const apart of [0.18, 0.3, 0.5, 0.66]) {
      const found = heard(trace(onSample(knocks(1.5, apart))));
      expect(found, `${apart} s apart`).toHaveLength(1);
      expect(found[0]! - (1.5 + apart)).toBeGreaterThan(0.7);
      expect(found[0]! - (1.5 + apart)).toBeLessThan(1);
    }
  });
  it('are heard again after quiet', () => {
    expect(heard(trace(onSample([...knocks(1.5, 0.3), ...knocks(4.5, 0.35)]), { seconds: 8 }))).toHaveLength(2);
  });
  it('are heard by a slow accelerometer and through an unsteady stand', () => {
    expect(heard(trace(knocks(1.5, 0.5).map(({ t, hard }) => ({ t: Math.round(t * 50) / 50, hard })), { hz: 50 }))).toHaveLength(1);
    expect(heard(trace(onSample(knocks(1.5, 0.4)), { noise: 0.25 }))).toHaveLength(1);
  });
});

describe('what is no pair of knocks', () => {
  it.each([
    ['one knock', [{ t: 1.5, hard: 12 }]],
    ['two too close', knocks(1.5, 0.12)],
    ['two too far apart', knocks(1.5, 0.76)],
    ['three', [...knocks(1.5, 0.3), { t: 2.1, hard: 11 }]],
    ['a hard and a weak one', [{ t: 1.5, hard: 20 }, { t: 1.85, hard: 4 }]],
    ['two that hardly stir the phone', knocks(1.5, 0.3, 2)],
  ])('%s', (_, blows) => {
    expect(heard(trace(onSample(blows)))).toEqual([]);
  });
  it('tapping on the panel, fast or slow, strong or weak', () => {
    for (const rate of [1, 1.3, 1.6, 2, 3, 5, 7])
      for (const hard of [3, 6, 15]) expect(heard(trace(onSample(taps(1, 14, rate, hard)), { seconds: 17 })), `${rate} taps a second, ${hard} m/s²`).toEqual([]);
  });
  it('two taps by themselves after much tapping as hard, while knocks that stand out are heard', () => {
    const work = onSample([...taps(1, 12, 3, 6), ...knocks(8, 0.4, 6)]);
    expect(heard(trace(work, { seconds: 11 }))).toEqual([]);
    expect(heard(trace(onSample([...taps(1, 12, 3, 6), ...knocks(8, 0.4, 20)]), { seconds: 11 }))).toHaveLength(1);
  });
  it('a phone that is taken up and put down', () => {
    const moved = trace([], { seconds: 6 }).map((one) => {
      const lifted = one.t > 2 && one.t < 3.5 ? 6 * Math.sin(4 * (one.t - 2)) : 0;
      return { ...one, x: one.x + lifted, z: one.z - 0.7 * lifted };
    });
    expect(heard(moved)).toEqual([]);
  });
  it('a pause in the readings', () => {
    const shakes = trace(onSample(knocks(1.5, 0.4))).filter(({ t }) => t < 1.6);
    expect(heard([...shakes, ...trace(onSample([{ t: 0.4, hard: 12 }]), { seconds: 3 }).map((one) => ({ ...one, t: one.t + 20 }))])).toEqual([]);
  });
});
