import type { Clash, Dent, Edit, NewJob, PanelCode, Trouble } from '../../api/types';

/** Something that was entered here and that the shop's server shall know. Whatever is sent twice must count once. */
export type Item = About & Sort;

interface About {
  /** Order of entry; given when it is on the disk. */
  n?: number;
  id: string;
  /** The job that it is about; empty for the shop. */
  job: string;
  /** When, ms since 1970. */
  at: number;
  /** Why the server did not take it; it stays here until somebody looks at it. */
  trouble?: Trouble;
}

export type Sort =
  | { kind: 'new'; body: NewJob & { id: string } }
  | { kind: 'damage'; damage: string; panel: PanelCode; x: number; y: number }
  | { kind: 'tap'; damage: string; panel: PanelCode; dent: Dent; by: number }
  | { kind: 'edit'; edits: Edit[] }
  /** Anything else that the API takes; `what` names a text. */
  | { kind: 'call'; what: string; method: 'POST' | 'PUT' | 'PATCH' | 'DELETE'; path: string; body?: unknown }
  | { kind: 'file'; what: string; path: string; name: string; file: Blob };

/** Two values for one field, for a person to choose. */
export interface Choice extends Clash {
  /** Job and field. */
  id: string;
  job: string;
}

/** A new id (UUID, version 7: it sorts by time). Pages without encryption have no `randomUUID`. */
export function newId(now = Date.now()): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  for (let k = 0; k < 6; k++) bytes[k] = Math.floor(now / 2 ** (8 * (5 - k))) % 256;
  bytes[6] = (bytes[6]! & 0x0f) | 0x70;
  bytes[8] = (bytes[8]! & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}

/**
 * The damage that hail of a panel is counted under. Every device makes the same one (UUID, version 8), so that two of
 * them that count at one car without network add up.
 */
export function hailDamage(job: string, panel: string, panels: readonly string[]): string {
  const place = panels.indexOf(panel).toString(16).padStart(2, '0');
  return `${job.slice(0, 14)}8${job.slice(15, 34)}${place}`;
}

/** The items that go together in the next call, from the first that waits. */
export function nextCall(items: Item[], most = 500): Item[] {
  const waiting = items.filter((item) => !item.trouble && item.n !== undefined);
  const first = waiting[0];
  if (!first || (first.kind !== 'tap' && first.kind !== 'edit')) return waiting.slice(0, 1);
  const end = waiting.findIndex((item) => item.kind !== first.kind || item.job !== first.job);
  return waiting.slice(0, Math.min(end < 0 ? waiting.length : end, most));
}
