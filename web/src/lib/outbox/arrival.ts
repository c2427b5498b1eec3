import type { OldDamage, Shot, TakenIn } from '../../api/types';
import type { Item } from './item';

/** What was recorded at the car, without what the server works out of it. */
export type Arrival = Pick<TakenIn, 'old' | 'paint' | 'photos' | 'signed'> & { waiting: Shot[] };

/** What was recorded at a car, as it will be when everything that waits here has been sent. */
export function layArrival(job: string, told: TakenIn | null, items: Item[]): Arrival {
  const start: Arrival = { old: told?.old ?? [], paint: told?.paint ?? [], photos: told?.photos ?? [], signed: told?.signed ?? null, waiting: [] };
  const base = `/api/jobs/${job}/`;
  return items.filter((item) => item.job === job && !item.trouble).reduce((at, item) => one(at, item, base), start);
}

function one(at: Arrival, item: Item, base: string): Arrival {
  if (item.kind === 'file' && item.path.startsWith(`${base}photos/`)) return { ...at, waiting: [...at.waiting, item.path.slice(base.length + 7) as Shot] };
  if (item.kind !== 'call' || !item.path.startsWith(base)) return at;
  const [what, id] = item.path.slice(base.length).split('/');
  if (what === 'old-damages') return { ...at, old: put(at.old, id, item.body as OldDamage | undefined) };
  if (what === 'paint') return { ...at, paint: put(at.paint, id, item.body as TakenIn['paint'][number] | undefined) };
  if (what === 'signed') return { ...at, signed: signedOf(item.body as ToSign) };
  return at;
}

/** With the entry put in or, where an id was named, taken out. */
function put<T extends { id: string }>(all: T[], id: string | undefined, entry: T | undefined): T[] {
  const own = id ?? entry?.id;
  const rest = all.filter((one) => one.id !== own);
  return id === undefined && entry ? [...rest, entry] : rest;
}

/** What is signed at the car, as it is sent. */
export interface ToSign {
  id: string;
  signature: { name: string; at: string; strokes: [number, number][][] };
  consent: string[];
  old: OldDamage[];
}
const signedOf = (body: ToSign): TakenIn['signed'] => ({ name: body.signature.name, at: body.signature.at, old: body.old, consent: body.consent });
