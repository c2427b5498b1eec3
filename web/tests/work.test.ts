import { describe, expect, it } from 'vitest';
import type { Planned, Work } from '../src/api/plan';
import { dayOn, isDue } from '../src/lib/lookAgain';
import type { Item } from '../src/lib/outbox/item';
import { askedOf, formOf } from '../src/lib/planAsked';
import { coolState, leftS } from '../src/lib/work/cooling';
import { lastStep, layMoves, madeOf, nextMove, type Made } from '../src/lib/work/session';
import { wordIn } from '../src/lib/work/voice';

const planned = (act: 'push' | 'tap', x: number): Planned => ({ act, at_mm: [x, 0], tip: { name: 'ball_6', radius: 6, hardness: 'hard' } }) as Planned;
const made = (id: string, act: 'push' | 'tap', x: number, minute: number, more: Partial<Made> = {}): Made => ({
  id, act, at_mm: [x, 0], tip: 'ball_6', radius_mm: 6, held_mm: 1, times: 1, planned: true, made: `2026-11-26T08:${String(minute).padStart(2, '0')}:00Z`, technician: null, warmed_c: null, reading: 'r', ...more,
});
const none = { skipped: [], began: '' };

describe('a round at the panel', () => {
  const round = [planned('tap', 10), planned('push', 0), planned('push', 0)];
  it('goes on with the first move that is neither made nor left out', () => {
    expect(nextMove(madeOf(round, []), none)).toBe(0);
    expect(nextMove(madeOf(round, [made('a', 'tap', 10, 1)]), none)).toBe(1);
    expect(nextMove(madeOf(round, [made('a', 'tap', 10, 1), made('b', 'push', 0.1, 2)]), none)).toBe(2);
    expect(nextMove(madeOf(round, [made('b', 'push', 0, 2)]), { ...none, skipped: [{ move: 0, at: '' }] })).toBe(2);
    expect(nextMove(madeOf([], []), none)).toBeNull();
  });
  it('takes no own move and no other place for a planned one', () => {
    const others = [made('a', 'tap', 10, 1, { planned: false }), made('b', 'tap', 12, 2), made('c', 'push', 10, 3)];
    expect(madeOf(round, others)[0]).toBeNull();
  });
  it('takes back what came last, made or left out', () => {
    const one = made('a', 'tap', 10, 5);
    expect(lastStep([one], none)).toEqual({ made: one });
    expect(lastStep([one], { ...none, skipped: [{ move: 1, at: '2026-11-26T08:06:00Z' }] })).toEqual({ skipped: 1 });
    expect(lastStep([one], { ...none, skipped: [{ move: 1, at: '2026-11-26T08:04:00Z' }] })).toEqual({ made: one });
    expect(lastStep([], none)).toBeNull();
  });
  it('counts what waits on this device', () => {
    const about = { job: 'j', at: 0 };
    const { reading, ...body } = made('b', 'push', 0, 2);
    const items: Item[] = [
      { ...about, id: '1', kind: 'call', what: 'note-move', method: 'POST', path: `/api/readings/${reading}/moves`, body },
      { ...about, id: '2', kind: 'call', what: 'take-back-move', method: 'DELETE', path: '/api/moves/a' },
      { ...about, id: '3', kind: 'call', what: 'note-move', method: 'POST', path: '/api/readings/r/moves', body: { ...body, id: 'c' }, trouble: { code: 'x', message: '', next: '' } },
    ];
    const told = { moves: [made('a', 'tap', 10, 1)] } as Work;
    expect(layMoves(told, items).map((one) => one.id)).toEqual(['b']);
    expect(layMoves({ moves: [made('a', 'tap', 10, 1), made('b', 'push', 0, 2)] } as Work, items.slice(0, 1)).map((one) => one.id)).toEqual(['a', 'b']);
  });
});

describe('a spoken word', () => {
  it('is found in what was heard', () => {
    expect(wordIn('Done.', 'en')).toBe('done');
    expect(wordIn('okay, skip this one', 'en')).toBe('skip');
    expect(wordIn('Fertig!', 'de')).toBe('done');
    expect(wordIn('noch mal zurück', 'de')).toBe('back');
  });
  it('is not guessed', () => {
    for (const heard of ['', 'undone', 'the background', 'done or back', 'fertig']) expect(wordIn(heard, 'en')).toBeNull();
    expect(wordIn('fertige Teile', 'de')).toBeNull();
  });
});

describe('a warm panel', () => {
  it('is told before it is too cold', () => {
    const cooling = { until: 100_000 };
    expect([coolState(cooling, 0), coolState(cooling, 80_000), coolState(cooling, 100_000)]).toEqual(['warm', 'soon', 'over']);
    expect(leftS(cooling, 99_000)).toBe(1);
    expect(leftS(cooling, 120_000)).toBe(0);
    expect([coolState({ until: null }, 1e12), leftS({ until: null }, 1e12)]).toEqual(['warm', null]);
  });
});

describe('looking again', () => {
  it('goes by days of the calendar here', () => {
    expect(dayOn(new Date(2026, 11, 31, 23, 59), 1)).toBe('2027-01-01');
    expect(isDue('2026-11-26', new Date(2026, 10, 26, 0, 1))).toBe(true);
    expect(isDue('2026-11-27', new Date(2026, 10, 26, 23, 59))).toBe(false);
    expect(isDue(null, new Date())).toBe(false);
  });
});

describe('what a plan is asked from', () => {
  const asked = { spot: 2, metal: 'steel_dc04', thickness_mm: 0.7, paint: 'refinish', aged: true, glue: 'eva', panel_c: 10, most_c: 45, makers_rule: null, costs: [120, 480] as [number, number], technician: null };
  it('comes back as it was answered, in °C and in °F', () => {
    for (const unit of ['c', 'f'] as const) expect(askedOf(formOf(asked, 'x', unit, true), unit, null)).toEqual({ asked, wrong: [] });
  });
  it('is for what stands out most on another reading', () => {
    expect(askedOf(formOf(asked, 'x', 'c', false), 'c', 'me').asked).toEqual({ ...asked, spot: null, technician: 'me' });
    expect(askedOf(formOf(null, 'steel_dc06', 'c', true), 'c', null).asked).toMatchObject({ spot: null, metal: 'steel_dc06', glue: null, costs: null, panel_c: 20, most_c: 50 });
  });
  it('says what is wrong', () => {
    const form = formOf(asked, 'x', 'c', true);
    expect(askedOf({ ...form, thickness: '7', panel: '', most: '90', ours: '', conventional: '3' }, 'c', null).wrong).toEqual(['thickness', 'panel', 'most', 'costs']);
    expect(askedOf({ ...form, thickness: ' ', ours: '', conventional: '' }, 'c', null)).toMatchObject({ wrong: [], asked: { thickness_mm: null, costs: null } });
  });
});
