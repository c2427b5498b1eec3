import { describe, expect, it } from 'vitest';
import type { Dent, DentEntry } from '../src/api/types';
import { panelOf, panels, placeInDrawing } from '../src/lib/car';
import { jobOf, BLANK, textOf } from '../src/lib/carText';
import { countOne, takeBack } from '../src/lib/dents';

const ding: Dent = { kind: 'round', length_mm: 20, width_mm: 20, depth_mm: 0.4, metal: 'steel', access: 'open', place: 'flat', count: 1 };

describe('a tally', () => {
  const entries: DentEntry[] = [
    { id: 'a', dent: { ...ding, count: 3 }, source: 'hand' },
    { id: 'b', dent: { ...ding, length_mm: 30 }, source: 'reading' },
  ];
  it('adds to the line that is alike', () => {
    expect(countOne(entries, ding)).toEqual({ change: 'a', from: entries[0]!.dent, to: { ...ding, count: 4 } });
  });
  it('begins a line for another size, place or depth, and never touches a measured one', () => {
    expect(countOne(entries, { ...ding, place: 'body_line' })).toEqual({ add: { ...ding, place: 'body_line' } });
    expect(countOne(entries, { ...ding, length_mm: 30 })).toEqual({ add: { ...ding, length_mm: 30 } });
  });
  it('is taken back step by step', () => {
    const step = countOne(entries, ding);
    expect(takeBack(step, 'a')).toEqual({ change: 'a', to: entries[0]!.dent, from: { ...ding, count: 4 } });
    expect(takeBack({ add: ding }, 'new')).toEqual({ remove: 'new', was: ding });
    expect(takeBack({ remove: 'a', was: ding }, 'a')).toEqual({ add: ding });
  });
});

describe('the drawn car', () => {
  it('has every panel once, left and right mirrored', () => {
    const names = panels('boot').map((panel) => panel.name);
    expect(new Set(names).size).toBe(names.length);
    expect(names).toHaveLength(18);
    expect(panels('hatch').map((panel) => panel.name)).toContain('tailgate');
    for (const name of names.filter((one) => one.endsWith('_left'))) {
      const [left, right] = [panelOf(name)!, panelOf(name.replace('_left', '_right'))!];
      expect(placeInDrawing(left, { x: 0, y: 0.3 }).x + placeInDrawing(right, { x: 1, y: 0.3 }).x).toBeCloseTo(420, 9);
    }
  });
});

describe('the form', () => {
  it('sends numbers as numbers and leaves out what is none', () => {
    const sent = jobOf({ ...BLANK, name: ' Ada ', vin: ' 1m8gdm9axkp042788', odometer_km: '48.200', year: 'new' });
    expect(sent.customer.name).toBe('Ada');
    expect(sent.car).toMatchObject({ vin: '1M8GDM9AXKP042788', odometer_km: 48200, year: null });
    expect(sent.promised).toBeNull();
  });
  it('comes back from a job as it was typed', () => {
    const text = { ...BLANK, name: 'Ada', plate: 'EX 1', odometer_km: '48200', year: '2023', promised: '2026-11-27', notes: 'scratch is old' };
    expect(textOf({ ...jobOf(text), id: '', number: '', stage: 'taken_in', damages: [] })).toEqual(text);
  });
});
