import { describe, expect, it } from 'vitest';
import type { Rack } from '../src/api/plan';
import { cornerNear, flawsOf, frameOf, freeName, lengthOf, newTip, newTool, snapped } from '../src/lib/rack';

const rack = (): Rack => ({ tool: [newTool('a'), newTool('b')], tip: [newTip('ball')], tab: [newTip('tab')], knock_down: [newTip('head')] });

describe('the rack', () => {
  it('tells a length along the middle line', () => {
    expect(lengthOf({ line: [[0, 0], [0, -40], [30, -80]] })).toBe(90);
  });
  it('gives names that none has', () => {
    expect(freeName([], 'Bar')).toBe('Bar');
    expect(freeName(['Bar', 'Bar 2'], 'Bar')).toBe('Bar 3');
  });
  it('is saved only where every name is there once and every bar goes somewhere', () => {
    expect(flawsOf(rack())).toEqual([]);
    expect(flawsOf({ ...rack(), tool: [newTool('a'), newTool('a')] })).toEqual(['a']);
    expect(flawsOf({ ...rack(), tab: [newTip('ball')] })).toEqual(['ball']);
    expect(flawsOf({ ...rack(), tip: [newTip(' ')] })).toEqual([' ']);
    expect(flawsOf({ ...rack(), tool: [{ ...newTool('c'), line: [[0, 0], [5, 0], [5, 0]] }] })).toEqual(['c']);
  });
  it('is drawn whole, in the ratio of its frame', () => {
    const frame = frameOf([[0, 0], [0, -80], [600, -80]], 30, 5);
    expect(frame.width / frame.height).toBeCloseTo(5);
    expect(frame.x).toBeLessThanOrEqual(-30);
    expect(frame.x + frame.width).toBeGreaterThanOrEqual(630);
    expect(frame.y).toBeLessThanOrEqual(-30);
    expect(frame.y + frame.height).toBeGreaterThanOrEqual(110);
  });
  it('takes a corner for the one that a finger is near, and never the tip', () => {
    const line = newTool('a').line;
    expect(cornerNear(line, [495, -35], 20)).toBe(2);
    expect(cornerNear(line, [0, 0], 10)).toBeNull();
    expect(cornerNear(line, [250, 100], 20)).toBeNull();
    expect(snapped([12.6, -2.4])).toEqual([15, 0]);
  });
});
