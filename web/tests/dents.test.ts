import { describe, expect, it } from 'vitest';
import type { Damage, Dent } from '../src/api/types';
import { panelOf, panels, placeInDrawing } from '../src/lib/car';
import { jobOf, BLANK, textOf } from '../src/lib/carText';
import { alike, bySize, dentsOf } from '../src/lib/dents';

const ding: Dent = { kind: 'round', length_mm: 20, width_mm: 20, depth_mm: 0.4, metal: 'steel', access: 'open', place: 'flat', count: 1 };

describe('dents', () => {
  const damage = (dents: [number, number][]): Damage => ({
    id: 'd', panel: 'roof', x: 0.5, y: 0.5, note: '', photos: [], captures: [],
    dents: dents.map(([length_mm, count], k) => ({ id: String(k), source: 'hand', at_least: false, dent: { ...ding, length_mm, width_mm: length_mm, count } })),
  });
  it('share a line where they are alike in all but their number', () => {
    expect(alike(ding, { ...ding, count: 9, sharpness: null })).toBe(true);
    for (const other of [{ length_mm: 21 }, { place: 'body_line' as const }, { metal: 'aluminium' as const }, { sharpness: 0.2 }]) expect(alike(ding, { ...ding, ...other })).toBe(false);
  });
  it('are counted over damages and by size', () => {
    const damages = [damage([[20, 3], [10, 4]]), damage([[10, 1]])];
    expect(dentsOf(damages)).toBe(8);
    expect(bySize(damages)).toEqual([{ across_mm: 10, count: 5 }, { across_mm: 20, count: 3 }]);
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
