import { describe, expect, it } from 'vitest';
import { ASPECT, boardFar, eyeFar, placeAt, seenAt, standing, weekOf } from '../src/lib/rehearse';

describe('a rehearsal', () => {
  it('sees the place it was touched at', () => {
    const look = standing(700, 12);
    for (const [x, y] of [[0, 0], [31, -17], [-40, 38]] as const) {
      const seen = seenAt(look, { x, y });
      const place = placeAt(look, seen.x, seen.y);
      expect(place.x).toBeCloseTo(x, 9);
      expect(place.y).toBeCloseTo(y, 9);
    }
    expect(placeAt(look, 0.5, 0.5)).toEqual({ x: 0, y: expect.closeTo(0, 9) });
    expect(seenAt(look, { x: 10, y: 0 }).x).toBeGreaterThan(0.5);
    expect(seenAt(look, { x: 0, y: 10 }).y).toBeLessThan(0.5);
    expect(ASPECT).toBeGreaterThan(0.5);
  });
  it('has the board stand where a level panel mirrors the eye to, facing it', () => {
    const { eye, board } = standing(700, 12);
    // law of reflection at the middle: the ray along `ahead` leaves with its z turned
    const out = [eye.ahead[0], eye.ahead[1], -eye.ahead[2]];
    board.middle.forEach((v, k) => expect(v).toBeCloseTo(700 * out[k]!, 9));
    const [u, v] = [board.u, board.v];
    const facing = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    expect(facing[0]! * out[0]! + facing[1]! * out[1]! + facing[2]! * out[2]!).toBeCloseTo(-1, 9);
    expect(boardFar(standing(700, 12))).toBeCloseTo(700, 9);
    expect(eyeFar(standing(700, 12))).toBeCloseTo(Math.hypot(260, 430), 9);
  });
  it('counts weeks from Monday', () => {
    expect(weekOf('2026-11-26T10:00:00Z')).toBe('2026-11-23');
    expect(weekOf('2026-11-29T10:00:00Z')).toBe('2026-11-23');
    expect(weekOf('2026-11-30T10:00:00Z')).toBe('2026-11-30');
  });
});
