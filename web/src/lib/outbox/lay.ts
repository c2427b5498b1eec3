import type { Damage, Dent, Edit, Job } from '../../api/types';
import { alike } from '../dents';
import type { Item } from './item';

/** A job as it will be when everything that waits here has been sent; null where neither side knows it. */
export function lay(job: Job | null, items: Item[]): Job | null {
  return items.reduce(one, job);
}

function one(job: Job | null, item: Item): Job | null {
  if (item.kind === 'new') return job ?? born(item.body);
  if (!job || item.trouble) return job;
  if (item.kind === 'damage') return withDamage(job, item.damage, item.panel, item.x, item.y);
  if (item.kind === 'edit') return item.edits.reduce(edited, job);
  if (item.kind !== 'tap') return job;
  const there = withDamage(job, item.damage, item.panel, 0.5, 0.5);
  return { ...there, damages: there.damages.map((damage) => (damage.id === item.damage ? counted(damage, item.dent, item.by) : damage)) };
}

function born(body: Extract<Item, { kind: 'new' }>['body']): Job {
  return { id: body.id, number: '', stage: 'taken_in', customer: body.customer, car: body.car, promised: body.promised, promised_time: body.promised_time, place: body.place, notes: body.notes, damages: [] };
}

function withDamage(job: Job, id: string, panel: Damage['panel'], x: number, y: number): Job {
  if (job.damages.some((damage) => damage.id === id)) return job;
  return { ...job, damages: [...job.damages, { id, panel, x, y, note: '', dents: [], photos: [], captures: [] }] };
}

/** Adds to the line that is alike or begins one; a line of none goes. */
function counted(damage: Damage, dent: Dent, by: number): Damage {
  const line = damage.dents.find((entry) => entry.source === 'hand' && alike(entry.dent, dent));
  const many = (line?.dent.count ?? 0) + by;
  const rest = damage.dents.filter((entry) => entry !== line);
  if (many <= 0) return { ...damage, dents: rest };
  if (line) return { ...damage, dents: damage.dents.map((entry) => (entry === line ? { ...line, dent: { ...line.dent, count: many } } : entry)) };
  return { ...damage, dents: [...rest, { id: `new-${damage.dents.length}-${dent.length_mm}`, dent: { ...dent, count: many }, source: 'hand', at_least: false }] };
}

/** Sets the field that a JSON pointer names; damages are named by their ids. */
function edited(job: Job, edit: Edit): Job {
  const names = edit.field.split('/').slice(1);
  return (names[0] === 'damages' ? { ...job, damages: job.damages.map((one) => (one.id === names[1] ? { ...one, [names[2]!]: edit.to } : one)) } : put(job, names, edit.to)) as Job;
}

function put(into: unknown, [name, ...rest]: string[], value: unknown): unknown {
  const copy = { ...(into as Record<string, unknown>) };
  if (rest.length > 0) copy[name!] = put(copy[name!], rest, value);
  else if (value === null && Object.hasOwn(copy, name!) === false) return copy;
  else copy[name!] = value;
  return copy;
}
