/** The time clock of the job that is open, and who holds this device. */
import { api, Problem } from '../api/client';
import type { Technician, TimeEntry, Times, WorkKind } from '../api/types';
import { t } from '../lang/index.svelte';
import { dropDraft, keepDraft, loadDraft } from './draft';
import { add, box } from './outbox/box.svelte';
import { layTimes } from './outbox/clocked';
import { newId, type Item } from './outbox/item';
import { kept } from './outbox/seen.svelte';
import { attempt, dismiss, tell } from './toast.svelte';

const ME = 'me';

/** The open job's times, the crew, who holds this device, and the server's time as it goes on, ms. */
export const clock = $state<{ job: string; times: Times | null; crew: Technician[]; me: string; now: number }>({ job: '', times: null, crew: [], me: '', now: 0 });

/** Of a job that the server was never asked about. */
const NOTHING: Times = { entries: [], by_kind: [], on_dents_s: 0, in_doubt: 0, shop_by_kind: [], now: '' };

/** What was noted here since the server last told: sent or not, it shows until the answer holds it. */
let noted = $state.raw<Item[]>([]);

/** How often the server was asked: an answer that comes in behind a later one is old. */
let asked = 0;

/** Loads a job's clock; where the server is out of reach, as it was told last. */
export async function openClock(job: string): Promise<void> {
  const [turn, before] = [++asked, noted];
  if (clock.job !== job) Object.assign(clock, { job, times: null });
  const told = async () => {
    const times = await api.times(job);
    ahead = Date.parse(times.now) - Date.now();
    return times;
  };
  const offline = (caught: unknown) => caught instanceof Problem && caught.code === 'offline';
  const [times, crew] = await Promise.all([
    kept(`times/${job}`, told).catch((caught) => (offline(caught) ? NOTHING : Promise.reject(caught))),
    kept('crew', api.crew).catch((caught) => (offline(caught) ? [] : Promise.reject(caught))),
  ]);
  if (turn !== asked) return;
  const here = crew.filter((one) => !one.gone);
  const known = loadDraft(ME, { id: '' }).id;
  noted = noted.filter((one) => !before.includes(one));
  Object.assign(clock, { times, crew, me: here.some((one) => one.id === known) ? known : (here[0]?.id ?? '') });
  tick();
}

/** Entries of the open job, with what waits on this device and what was sent from it just now. */
export function entries(): TimeEntry[] {
  return layTimes(clock.job, clock.times?.entries ?? [], [...noted, ...box.items]);
}

/** How far the server's clock is ahead of this device's, ms. */
let ahead = 0;

/** Goes on with the time; called every second while a clock is shown. */
export function tick(): void {
  clock.now = Date.now() + ahead;
}

/** Says who holds this device. */
export function holds(technician: string): void {
  clock.me = technician;
  if (technician) keepDraft(ME, { id: technician });
  else dropDraft(ME);
}

/** The clock of who holds this device, where it runs on the open job. */
export function mine(): TimeEntry | undefined {
  return clock.times ? entries().find((entry) => entry.stopped === null && (clock.me === '' || entry.technician === '' || entry.technician === clock.me)) : undefined;
}

/** Seconds that a clock has run. */
export const runFor = (entry: TimeEntry): number => (clock.now - Date.parse(entry.started)) / 1000;

/** The last message of the clock: what came before it cannot be taken back one by one. */
let said = 0;
function offer(text: string, undo: () => Promise<void>): void {
  dismiss(said);
  said = tell({ text, action: { label: t('undo'), run: undo } });
}

/** The server's time as this device knows it. */
const now = () => new Date(Date.now() + ahead).toISOString();

/** Sends something of the clock as soon as that can be. */
async function note(job: string, method: 'POST' | 'DELETE' | 'PATCH', path: string, body?: unknown): Promise<void> {
  const [call, id] = [{ kind: 'call', what: 'clock', method, path, body } as const, newId()];
  noted = [...noted, { ...call, id, job, at: Date.now() }];
  await add(job, call, id);
  if (clock.job === job && !box.away) await openClock(job);
}

/** Starts a kind of work; what ran on this job stops. */
export async function startClock(kind: WorkKind): Promise<void> {
  const [job, id, before] = [clock.job, newId(), mine()];
  await attempt(() => {
    const sending = note(job, 'POST', `/api/jobs/${job}/times`, { id, kind, technician: clock.me || null, started: now() });
    offer(t('clock-started', { kind: t(`work-${kind}`) }), async () => {
      const gone = note(job, 'DELETE', `/api/times/${id}`);
      if (before) await note(job, 'PATCH', `/api/times/${before.id}`, { stopped: null });
      await gone;
    });
    return sending;
  });
}

/** Stops a clock. */
export async function stopClock(entry: TimeEntry): Promise<void> {
  const job = clock.job;
  await attempt(() => {
    const sending = note(job, 'POST', `/api/times/${entry.id}/stop`, { at: now() });
    offer(t('clock-stopped', { kind: t(`work-${entry.kind}`) }), () => note(job, 'PATCH', `/api/times/${entry.id}`, { stopped: null }));
    return sending;
  });
}

/** Changes an entry, with a way back to what it was. */
export async function changeEntry(entry: TimeEntry, to: Parameters<typeof api.changeTime>[1]): Promise<unknown> {
  const job = clock.job;
  const { technician, kind, started, stopped, confirmed } = entry;
  await api.changeTime(entry.id, to);
  offer(t('saved'), () => changed(job, () => api.changeTime(entry.id, { technician, kind, started, stopped, confirmed })));
  return openClock(job);
}

/** Does something and shows the clock as it is then. */
async function changed(job: string, work: () => Promise<unknown>): Promise<void> {
  await attempt(work);
  if (clock.job === job) await attempt(() => openClock(job));
}
