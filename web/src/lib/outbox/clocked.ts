import type { NewTime, TimeEntry } from '../../api/types';
import type { Item } from './item';

/** The clock's entries of a job as they will be when everything that waits here has been sent. */
export function layTimes(job: string, told: TimeEntry[], items: Item[]): TimeEntry[] {
  return items.filter((item) => item.job === job && !item.trouble).reduce(one, told);
}

function one(entries: TimeEntry[], item: Item): TimeEntry[] {
  if (item.kind !== 'call') return entries;
  if (item.method === 'POST' && item.path === `/api/jobs/${item.job}/times`) return begun(entries, item.body as NewTime);
  const [, id, stop] = item.path.match(/^\/api\/times\/([^/]+)(\/stop)?$/) ?? [];
  if (!id) return entries;
  if (item.method === 'DELETE') return entries.filter((entry) => entry.id !== id);
  const stopped = (item.body as { at?: string } | undefined)?.at ?? null;
  return entries.map((entry) => (entry.id !== id ? entry : stop ? { ...entry, stopped: entry.stopped ?? stopped } : { ...entry, stopped: null }));
}

/** A clock that begins stops what the same person had running. */
function begun(entries: TimeEntry[], body: NewTime): TimeEntry[] {
  if (!body.id || !body.started || entries.some((entry) => entry.id === body.id)) return entries;
  const technician = body.technician ?? entries.find((entry) => entry.stopped === null)?.technician ?? '';
  const ended = entries.map((entry) => (entry.stopped === null && entry.technician === technician ? { ...entry, stopped: body.started! } : entry));
  const entry: TimeEntry = { id: body.id, technician, kind: body.kind, started: body.started, stopped: null, state: 'running', seconds: 0, confirmed: false };
  return [...ended, entry];
}
