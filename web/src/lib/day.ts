/** The day: when jobs are due, in which order they stand, and times as they stand in a form. */
import type { JobRow, Stage } from '../api/types';

export interface Promised {
  promised: string | null;
  promised_time: string | null;
  stage: Stage;
}

export type DueKind = 'late' | 'today' | 'tomorrow' | 'later' | 'none' | 'done';

/** How a promise stands; `days` from today, below zero where it is past. */
export interface Due {
  kind: DueKind;
  days: number;
  time: string | null;
}

const DAY_MS = 86_400_000;

/** How a promise stands at a moment. A job whose work is done is not late any more. */
export function due(job: Promised, now: Date): Due {
  const time = job.promised_time?.slice(0, 5) ?? null;
  if (job.stage === 'finished' || job.stage === 'handed_over') return { kind: 'done', days: 0, time };
  if (!job.promised) return { kind: 'none', days: 0, time: null };
  const [year, month, day] = job.promised.split('-').map(Number) as [number, number, number];
  // Days of the calendar, so that the change of summer time makes none longer.
  const days = Math.round((Date.UTC(year, month - 1, day) - Date.UTC(now.getFullYear(), now.getMonth(), now.getDate())) / DAY_MS);
  const minutes = now.getHours() * 60 + now.getMinutes();
  const passed = days === 0 && time !== null && minutes > Number(time.slice(0, 2)) * 60 + Number(time.slice(3));
  const kind = days < 0 || passed ? 'late' : days === 0 ? 'today' : days === 1 ? 'tomorrow' : 'later';
  return { kind, days, time };
}

export type Order = 'promise' | 'stage' | 'place' | 'newest';
export const ORDERS: Order[] = ['promise', 'stage', 'place', 'newest'];
const DUE_ORDER: DueKind[] = ['late', 'today', 'tomorrow', 'later', 'none', 'done'];

/** Jobs under one heading: a text's name, or a place as it was entered. */
export interface Group {
  key: string;
  name?: string;
  text?: string;
  rows: JobRow[];
}

/** The jobs in an order, under headings. What comes newest first stays so where nothing else tells. */
export function arrange(rows: JobRow[], order: Order, stages: Stage[], now: Date): Group[] {
  if (order === 'newest') return rows.length ? [{ key: 'all', rows }] : [];
  const groups = new Map<string, Group>();
  for (const row of [...rows].sort(byPromise)) {
    const group = groupOf(row, order, now);
    const there = groups.get(group.key);
    if (there) there.rows.push(row);
    else groups.set(group.key, { ...group, rows: [row] });
  }
  const place = (group: Group) =>
    order === 'promise' ? DUE_ORDER.indexOf(group.key as DueKind) : order === 'stage' ? stages.indexOf(group.key as Stage) : group.text === undefined ? 1 : 0;
  return [...groups.values()].sort((a, b) => place(a) - place(b) || (a.text ?? '').localeCompare(b.text ?? ''));
}

function groupOf(row: JobRow, order: Order, now: Date): Omit<Group, 'rows'> {
  if (order === 'stage') return { key: row.stage, name: `stage-${row.stage}` };
  if (order === 'place') return row.place ? { key: `at ${row.place.toLowerCase()}`, text: row.place } : { key: '', name: 'car-place-none' };
  const { kind } = due(row, now);
  return { key: kind, name: `due-group-${kind}` };
}

/** The earlier promise first, those without one last. */
function byPromise(a: JobRow, b: JobRow): number {
  const key = (row: JobRow) => `${row.promised ?? '9999'} ${row.promised_time ?? '24'}`;
  return key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0;
}

/** A moment as a `datetime-local` field shows it, in this device's time. */
export function toField(moment: string): string {
  const date = new Date(moment);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}T${two(date.getHours())}:${two(date.getMinutes())}`;
}

/** A `datetime-local` field as a moment; `null` where it is none. */
export function fromField(text: string): string | null {
  const date = new Date(text);
  return text === '' || Number.isNaN(date.getTime()) ? null : date.toISOString();
}

/** Seconds as a clock shows them: 4:05, 1:04:05. */
export function ticking(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  const two = (value: number) => String(value).padStart(2, '0');
  const [h, m, s] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  return h > 0 ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`;
}

/** A day of the calendar, in this device's time, as a `date` field shows it. */
export function toDay(date: Date): string {
  return toField(date.toISOString()).slice(0, 10);
}

/** First and last day of a moment's month. */
export function monthOf(date: Date): { from: string; until: string } {
  const [year, month] = [date.getFullYear(), date.getMonth()];
  return { from: toDay(new Date(year, month, 1, 12)), until: toDay(new Date(year, month + 1, 0, 12)) };
}
