import { describe, expect, it } from 'vitest';
import { STAGES, type JobRow } from '../src/api/types';
import { arrange, due, fromField, monthOf, ticking, toField } from '../src/lib/day';

const now = new Date(2026, 10, 26, 14, 30);
const row = (number: string, other: Partial<JobRow> = {}): JobRow =>
  ({ id: number, number, customer_name: '', car_title: '', plate: '', stage: 'in_work', promised: null, promised_time: null, place: '', running: false, damage_count: 0, gross: null, currency: null, ...other }) as JobRow;

describe('due', () => {
  it('is late by days, or by the hour of today', () => {
    expect(due(row('1', { promised: '2026-11-24' }), now)).toEqual({ kind: 'late', days: -2, time: null });
    expect(due(row('1', { promised: '2026-11-26', promised_time: '14:00:00' }), now)).toEqual({ kind: 'late', days: 0, time: '14:00' });
    expect(due(row('1', { promised: '2026-11-26', promised_time: '14:30:00' }), now).kind).toBe('today');
    expect(due(row('1', { promised: '2026-11-26' }), now).kind).toBe('today');
    expect(due(row('1', { promised: '2026-11-27', promised_time: '08:00:00' }), now).kind).toBe('tomorrow');
    expect(due(row('1', { promised: '2026-12-01' }), now)).toEqual({ kind: 'later', days: 5, time: null });
    expect(due(row('1'), now).kind).toBe('none');
  });
  it('is never late once the work is done', () => {
    for (const stage of ['finished', 'handed_over'] as const) expect(due(row('1', { promised: '2026-11-01', stage }), now).kind).toBe('done');
  });
  it('counts days over the change of summer time', () => {
    const spring = new Date(2026, 2, 28, 23, 59);
    expect(due(row('1', { promised: '2026-03-30' }), spring).days).toBe(2);
  });
});

describe('arrange', () => {
  const rows = [
    row('6', { promised: '2026-12-02', place: 'Yard' }),
    row('5', { place: 'hall' }),
    row('4', { promised: '2026-11-25', stage: 'finished' }),
    row('3', { promised: '2026-11-26', promised_time: '18:00:00', place: 'Hall', stage: 'quoted' }),
    row('2', { promised: '2026-11-26', promised_time: '09:00:00' }),
    row('1', { promised: '2026-11-20', place: 'yard' }),
  ];
  const told = (order: 'promise' | 'stage' | 'place' | 'newest') => arrange(rows, order, STAGES, now).map((group) => [group.text ?? group.name ?? '', group.rows.map((one) => one.number).join()]);
  it('puts the late ones first and the done ones last', () => {
    expect(told('promise')).toEqual([['due-group-late', '1,2'], ['due-group-today', '3'], ['due-group-later', '6'], ['due-group-none', '5'], ['due-group-done', '4']]);
  });
  it('follows the stages', () => expect(told('stage')).toEqual([['stage-quoted', '3'], ['stage-in_work', '1,2,6,5'], ['stage-finished', '4']]));
  it('joins a place however it was spelled, places first', () => {
    expect(told('place')).toEqual([['Hall', '3,5'], ['yard', '1,6'], ['car-place-none', '4,2']]);
  });
  it('leaves the newest first', () => expect(told('newest')).toEqual([['', '6,5,4,3,2,1']]));
  it('loses nobody', () => {
    for (const order of ['promise', 'stage', 'place', 'newest'] as const) expect(arrange(rows, order, STAGES, now).flatMap((group) => group.rows).length).toBe(rows.length);
  });
});

describe('times in a form', () => {
  it('come back to the minute', () => {
    const moment = new Date(2026, 10, 5, 7, 8).toISOString();
    expect(toField(moment)).toBe('2026-11-05T07:08');
    expect(fromField(toField(moment))).toBe(moment);
    expect(fromField('')).toBeNull();
    expect(fromField('nothing')).toBeNull();
  });
  it('know their month', () => {
    expect(monthOf(new Date(2028, 1, 10))).toEqual({ from: '2028-02-01', until: '2028-02-29' });
    expect(monthOf(new Date(2026, 11, 31, 23))).toEqual({ from: '2026-12-01', until: '2026-12-31' });
  });
  it('tick', () => expect([ticking(5), ticking(245), ticking(3845), ticking(-3)]).toEqual(['0:05', '4:05', '1:04:05', '0:00']));
});
