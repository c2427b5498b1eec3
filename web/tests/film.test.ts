import { describe, expect, it } from 'vitest';
import type { PanelCode } from '../src/api/types';
import { judgePaint } from '../src/lib/film';
import { layArrival } from '../src/lib/outbox/arrival';
import type { Item } from '../src/lib/outbox/item';

const PANELS: PanelCode[] = ['bonnet', 'roof', 'boot_lid', 'front_wing_left', 'front_wing_right', 'front_door_left'];
const car = (values: number[]) => values.map((um, k) => ({ id: String(k), panel: PANELS[k]!, um }));
const says = (values: number[]) => judgePaint(car(values)).map((row) => row.says);

describe('paint, as the server judges it', () => {
  it('finds thick and thin panels beside the others', () => {
    expect(says([118, 310, 109, 121, 60, 124])).toEqual(['usual', 'thick', 'usual', 'usual', 'thin', 'usual']);
    expect(says([118, 126, 109, 121, 115, 131])).toEqual(Array(6).fill('usual'));
  });
  it('says nothing of three panels, and takes the median of a panel', () => {
    expect(says([118, 400, 121])).toEqual(Array(3).fill('too_few'));
    const bonnet = judgePaint([...car([118, 119, 121, 124]), { panel: 'bonnet', um: 640 }, { panel: 'bonnet', um: 117 }])[0]!;
    expect(bonnet).toMatchObject({ um: 118, readings: 3, others_um: 121, says: 'usual' });
  });
});

describe('what waits, laid over what was recorded at the car', () => {
  const job = 'j';
  const item = (sort: object): Item => ({ n: 1, id: 'i', job, at: 0, ...sort }) as Item;
  const old = { id: 'o', panel: 'roof', x: 0.1, y: 0.2, kind: 'chip', note: '' };
  it('marks and takes away, keeps photos and the signature', () => {
    const items = [
      item({ kind: 'call', method: 'PUT', path: '/api/jobs/j/old-damages', body: old }),
      item({ kind: 'call', method: 'PUT', path: '/api/jobs/j/paint', body: { id: 'p', panel: 'roof', um: 120 } }),
      item({ kind: 'file', path: '/api/jobs/j/photos/vin', name: 'a.jpg' }),
      item({ kind: 'call', method: 'PUT', path: '/api/jobs/j/signed', body: { id: 's', signature: { name: 'Ada', at: 't', strokes: [] }, consent: ['c'], old: [old] } }),
    ];
    const laid = layArrival(job, null, items);
    expect(laid).toEqual({ old: [old], paint: [{ id: 'p', panel: 'roof', um: 120 }], photos: [], waiting: ['vin'], signed: { name: 'Ada', at: 't', consent: ['c'], old: [old] } });
    const gone = layArrival(job, null, [...items, item({ kind: 'call', method: 'DELETE', path: '/api/jobs/j/old-damages/o' })]);
    expect([gone.old, gone.signed!.old]).toEqual([[], [old]]);
  });
});
