import { Problem } from '../../api/client';
import type { Job, JobRow } from '../../api/types';
import { box } from './box.svelte';
import { all, get, put, remove } from './db';
import { lay } from './lay';

/** Jobs as the server last told them. */
let jobs = $state.raw<Record<string, Job>>({});

/** Opens what this device has seen, on this page or another one of it. */
export async function openSeen(): Promise<void> {
  const kept = (await all<unknown>('seen')).filter((one): one is Job => typeof one === 'object' && one !== null && 'damages' in one);
  jobs = { ...jobs, ...Object.fromEntries(kept.map((job) => [job.id, job])) };
}

/** Keeps a job as the server told it. */
export function hold(job: Job): void {
  jobs = { ...jobs, [job.id]: job };
  void put('seen', $state.snapshot(job), `job/${job.id}`).catch(() => {});
}

/** Forgets a job that is gone. */
export function letGo(id: string): void {
  const { [id]: _, ...rest } = jobs;
  jobs = rest;
  void remove('seen', [`job/${id}`]).catch(() => {});
}

/** A job as this device knows it, with everything that waits to be sent. */
export function seen(id: string): Job | null {
  return lay(jobs[id] ?? null, box.items.filter((item) => item.job === id));
}

/** The list of jobs as this device knows it: those of `rows` first told by the server, with what waits laid over. */
export function seenRows(rows: JobRow[] | null): JobRow[] {
  const told = new Set(rows?.map((row) => row.id));
  const waiting = [...new Set(box.items.map((item) => item.job))].filter((id) => id && !told.has(id) && (!jobs[id] || rows === null));
  const ids = rows === null ? [...new Set([...waiting, ...Object.keys(jobs)])].sort().reverse() : waiting;
  const own = ids.map(seen).filter((job) => job !== null).map(rowOf);
  return [...own, ...(rows ?? [])];
}

function rowOf(job: Job): JobRow {
  const car_title = `${job.car.make} ${job.car.model}`.trim();
  return {
    id: job.id, number: job.number, customer_name: job.customer.name, car_title, plate: job.car.plate ?? '', stage: job.stage,
    promised: job.promised, promised_time: job.promised_time, place: job.place, running: false, damage_count: job.damages.length, gross: null, currency: null,
  };
}

/** A server that has not answered by then is out of reach, ms. */
const PATIENCE_MS = 4_000;

/** Keeps what the server said, for `kept` to fall back on. */
export function remember(name: string, told: unknown): void {
  void put('seen', told, name).catch(() => {});
}

/** What the server says; where it is out of reach, what it said last. */
export async function kept<T>(name: string, ask: () => Promise<T>): Promise<T> {
  const asked = ask().then((told) => {
    remember(name, told);
    return told;
  });
  const late = new Promise<never>((_, reject) => setTimeout(() => reject(new Problem({ code: 'offline', message: '', next: '' })), PATIENCE_MS));
  try {
    return await Promise.race([asked, late]);
  } catch (problem) {
    return (await lastTold<T>(name, problem)) ?? asked;
  }
}

/** What `remember` kept, where the problem is that the server is out of reach. */
export async function lastTold<T>(name: string, problem: unknown): Promise<T | undefined> {
  return problem instanceof Problem && problem.code === 'offline' ? get<T>('seen', name) : undefined;
}
