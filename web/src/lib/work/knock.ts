/**
 * Two knocks on the phone or what it stands on, told from its accelerometer. A knock is a short spike; two of them 0.15
 * to 0.7 s apart, about as hard as each other, with quiet before and after. Steady tapping on the panel makes longer
 * runs of spikes and is learned as what the place is used to: two knocks must stand out of it.
 */

/** Seconds between two spikes that are two knocks. */
const APART_S = [0.15, 0.7] as const;
/** Quiet before the first and after the second, s. */
const QUIET_S = 0.8;
/** A spike less than this after another is the same knock ringing, s. */
const RINGS_S = 0.1;
/** What goes on longer than this is no knock but the phone being moved, s. */
const LONGEST_S = 0.12;
/** Weakest knock, m/s². */
const LEAST = 2.5;
/** A spike stands so many times out of the shaking about it. */
const STANDS_OUT = 6;
/** Of two knocks the weaker has at least this share of the harder. */
const ALIKE = 0.35;
/** Knocks are this many times harder than what the place is used to. */
const OVER_TAPPING = 1.6;
/** Half of what was learned of the tapping is forgotten after this, s. */
const FORGETS_S = 60;
/** The pull of the earth is followed with this time constant, s, and the shaking with this one. */
const REST_S = 0.4;
const SHAKE_S = 1.5;

export interface Shake {
  /** Time, s. */
  t: number;
  /** Acceleration with gravity, m/s². */
  x: number;
  y: number;
  z: number;
}

interface Spike {
  from: number;
  to: number;
  most: number;
}

/** Hears the accelerometer; `hear` is true at the moment when two knocks are sure. */
export class KnockEar {
  private rest: [number, number, number] | null = null;
  private last = 0;
  private shaking = 0.1;
  private run: Spike[] = [];
  private spike: Spike | null = null;
  private tapping = { level: 0, at: 0 };

  hear({ t, x, y, z }: Shake): boolean {
    if (!this.rest || t - this.last > 1 || t <= this.last) {
      [this.rest, this.last, this.run, this.spike] = [[x, y, z], t, [], null];
      return false;
    }
    const dt = t - this.last;
    this.last = t;
    const off = Math.hypot(x - this.rest[0], y - this.rest[1], z - this.rest[2]);
    const follow = 1 - Math.exp(-dt / REST_S);
    // A blow moves the followed rest less than what stays.
    const share = off > LEAST ? 0.2 * follow : follow;
    this.rest = [this.rest[0] + share * (x - this.rest[0]), this.rest[1] + share * (y - this.rest[1]), this.rest[2] + share * (z - this.rest[2])];
    const line = Math.max(LEAST, STANDS_OUT * this.shaking);
    if (off < line) this.shaking += (1 - Math.exp(-dt / SHAKE_S)) * (off - this.shaking);
    this.mark(t, off, line);
    return this.ended(t);
  }

  private mark(t: number, off: number, line: number) {
    if (off >= line) {
      if (this.spike && t - this.spike.to <= RINGS_S) [this.spike.to, this.spike.most] = [t, Math.max(this.spike.most, off)];
      else this.run.push((this.spike = { from: t, to: t, most: off }));
    } else if (this.spike && t - this.spike.to > RINGS_S) this.spike = null;
  }

  /** After quiet the run of spikes is judged. */
  private ended(t: number): boolean {
    const last = this.run.at(-1);
    if (!last || t - last.to < QUIET_S) return false;
    const run = this.run;
    this.run = [];
    const most = Math.max(...run.map((one) => one.most));
    const used = this.tapping.level * 0.5 ** ((t - this.tapping.at) / FORGETS_S);
    if (run.length > 2) {
      this.tapping = { level: Math.max(used, most), at: t };
      return false;
    }
    const [a, b] = run;
    if (!a || !b) return false;
    const apart = b.from - a.from;
    const short = run.every((one) => one.to - one.from <= LONGEST_S);
    const alike = Math.min(a.most, b.most) >= ALIKE * most;
    return short && alike && apart >= APART_S[0] && apart <= APART_S[1] && Math.min(a.most, b.most) > OVER_TAPPING * used;
  }
}
