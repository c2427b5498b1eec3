/** The time clock of the job that is open, and who holds this device. */
import { api } from '../api/client';
import type { Technician, TimeEntry, Times, WorkKind } from '../api/types';
import { t } from '../lang/index.svelte';
import { dropDraft, keepDraft, loadDraft } from './draft';
import { attempt, dismiss, tell } from './toast.svelte';

const ME = 'me';

/** The open job's times, the crew, who holds this device, and the server's time as it goes on, ms. */
export const clock = $state<{ job: string; times: Times | null; crew: Technician[]; me: string; now: number }>({ job: '', times: null, crew: [], me: '', now: 0 });

/** Loads a job's clock. */
export async function openClock(job: string): Promise<void> {
  if (clock.job !== job) Object.assign(clock, { job, times: null });
  const [times, crew] = await Promise.all([api.times(job), api.crew()]);
  if (clock.job !== job) return;
  const here = crew.filter((one) => !one.gone);
  const kept = loadDraft(ME, { id: '' }).id;
  Object.assign(clock, { times, crew, me: here.some((one) => one.id === kept) ? kept : (here[0]?.id ?? '') });
  ahead = Date.parse(times.now) - Date.now();
  tick();
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
  return clock.times?.entries.find((entry) => entry.stopped === null && (clock.me === '' || entry.technician === clock.me));
}

/** Seconds that a clock has run. */
export const runFor = (entry: TimeEntry): number => (clock.now - Date.parse(entry.started)) / 1000;

/** The last message of the clock: what came before it cannot be taken back one by one. */
let said = 0;
function offer(text: string, undo: () => Promise<void>): void {
  dismiss(said);
  said = tell({ text, action: { label: t('undo'), run: undo } });
}

/** Starts a kind of work; what ran on this job stops. */
export async function startClock(kind: WorkKind): Promise<void> {
  const job = clock.job;
  await attempt(async () => {
    const made = await api.addTime(job, { kind, technician: clock.me || null });
    offer(t('clock-started', { kind: t(`work-${kind}`) }), () =>
      changed(job, async () => {
        await api.removeTime(made.entry.id);
        if (made.stopped) await api.changeTime(made.stopped, { stopped: null });
      }),
    );
    await openClock(job);
  });
}

/** Stops a clock. */
export async function stopClock(entry: TimeEntry): Promise<void> {
  const job = clock.job;
  await attempt(async () => {
    await api.stopTime(entry.id);
    offer(t('clock-stopped', { kind: t(`work-${entry.kind}`) }), () => changed(job, () => api.changeTime(entry.id, { stopped: null })));
    await openClock(job);
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
