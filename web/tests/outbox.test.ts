import { describe, expect, it } from 'vitest';
import type { Dent, Edit, Job } from '../src/api/types';
import { editsBetween, fieldsOf } from '../src/lib/outbox/edits';
import { hailDamage, newId, nextCall, type Item } from '../src/lib/outbox/item';
import { lay } from '../src/lib/outbox/lay';
import { BLANK, jobOf, textOf } from '../src/lib/carText';

const JOB = '019a0000-0000-7000-8000-000000000001';
const hail: Dent = { kind: 'hail', length_mm: 15, width_mm: 15, depth_mm: 0.4, metal: 'steel', access: 'open', place: 'flat', count: 1 };
let n = 0;
const about = (job = JOB) => ({ n: ++n, id: newId(), job, at: 0 });
const tap = (by: number, dent = hail, damage = 'd', job = JOB): Item => ({ ...about(job), kind: 'tap', damage, panel: 'roof', dent, by });
const fresh = (): Item => ({ ...about(), kind: 'new', body: { id: JOB, ...jobOf({ ...BLANK, name: 'Ada' }) } });
const edit = (field: string, base: unknown, to: unknown): Item => ({ ...about(), kind: 'edit', edits: [{ field, base, to } as Edit] });
const counts = (job: Job | null) => job!.damages.flatMap((damage) => damage.dents.map((entry) => [damage.panel, entry.dent.length_mm, entry.dent.count]));

describe('what waits, laid over a job', () => {
  it('makes a job that the server does not know yet', () => {
    const job = lay(null, [fresh(), tap(1), tap(1), tap(1, { ...hail, length_mm: 25, width_mm: 25 }), edit('/customer/phone', '', '030')]);
    expect(job).toMatchObject({ id: JOB, number: '', stage: 'taken_in', customer: { name: 'Ada', phone: '030' } });
    expect(counts(job)).toEqual([['roof', 15, 2], ['roof', 25, 1]]);
  });
  it('adds to what the server told and takes back what is taken back', () => {
    const told = lay(null, [fresh(), tap(7)])!;
    expect(counts(lay(told, [tap(1), tap(1), tap(-1)]))).toEqual([['roof', 15, 8]]);
    expect(counts(lay(told, [tap(-9)]))).toEqual([]);
    expect(counts(told)).toEqual([['roof', 15, 7]]);
  });
  it('leaves a measured dent alone', () => {
    const told = lay(null, [fresh(), tap(2)])!;
    told.damages[0]!.dents[0]!.source = 'reading';
    expect(counts(lay(told, [tap(1)]))).toEqual([['roof', 15, 2], ['roof', 15, 1]]);
  });
  it('edits metals and notes by name, and nothing of a job that nobody knows', () => {
    const told = lay(null, [fresh(), tap(1)])!;
    expect(lay(told, [edit('/car/metals/roof', null, 'aluminium')])!.car.metals).toEqual({ roof: 'aluminium' });
    expect(lay(told, [edit('/damages/d/note', '', 'sharp')])!.damages[0]!.note).toBe('sharp');
    expect(lay(null, [tap(1)])).toBeNull();
  });
});

describe('the outbox', () => {
  it('sends taps of a job together, and nothing before what was entered before it', () => {
    const [first, one, two, change, three] = [fresh(), tap(1), tap(1), edit('/notes', '', 'x'), tap(1)];
    const items = [first!, one!, two!, change!, three!];
    const calls: string[][] = [];
    for (let rest = items; rest.length > 0; ) {
      const call = nextCall(rest);
      calls.push(call.map((item) => item.kind));
      rest = rest.filter((item) => !call.includes(item));
    }
    expect(calls).toEqual([['new'], ['tap', 'tap'], ['edit'], ['tap']]);
  });
  it('passes over what was refused, what is not on the disk yet, and takes jobs one by one', () => {
    const other = tap(1, hail, 'e', '019a0000-0000-7000-8000-000000000002');
    const refused = { ...tap(1), trouble: { code: 'value', message: '', next: '' } };
    const { n: _, ...unwritten } = tap(1);
    const mine = tap(1);
    expect(nextCall([refused, mine, other])).toEqual([mine]);
    expect(nextCall([unwritten as Item, other])).toEqual([other]);
    expect(nextCall(Array.from({ length: 900 }, () => tap(1)))).toHaveLength(500);
  });
  it('makes ids that sort by time and are of their form', () => {
    const ids = [newId(1_790_000_000_000), newId(1_790_000_000_001)];
    expect(ids[0]! < ids[1]!).toBe(true);
    for (const id of ids) expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    const panels = ['bonnet', 'roof'];
    expect(hailDamage(JOB, 'roof', panels)).toBe('019a0000-0000-8000-8000-000000000001');
    expect(hailDamage(JOB, 'bonnet', panels)).not.toBe(hailDamage(JOB, 'roof', panels));
  });
});

describe('edits', () => {
  it('are the fields that differ, each with what was known', () => {
    const was = fieldsOf(lay(null, [fresh()])!);
    const text = { ...textOf(lay(null, [fresh()])!), phone: '030', plate: 'EX 1', high_voltage: 'no' as const };
    expect(editsBetween(was, jobOf(text))).toEqual([
      { field: '/customer/phone', base: '', to: '030' },
      { field: '/car/plate', base: '', to: 'EX 1' },
      { field: '/car/high_voltage', base: null, to: false },
    ]);
    expect(editsBetween(was, jobOf(textOf(lay(null, [fresh()])!)))).toEqual([]);
  });
  it('made and sent leave nothing to edit', () => {
    const was = lay(null, [fresh()])!;
    const text = { ...textOf(was), promised: '2026-12-01', promised_time: '10:30', vin: '1m8gdm9axkp042788', notes: 'scratch is old' };
    const edits = editsBetween(fieldsOf(was), jobOf(text, { roof: 'steel' }));
    const after = lay(was, [{ ...about(), kind: 'edit', edits }])!;
    expect(editsBetween(fieldsOf(after), jobOf(textOf(after), after.car.metals))).toEqual([]);
    expect(after.car.metals).toEqual({ roof: 'steel' });
  });
});
