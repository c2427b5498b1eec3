import type { Edit, Job, NewJob } from '../../api/types';

/** What can be edited of a job's head, the stage left out. */
export type Fields = Pick<Job, 'customer' | 'car' | 'promised' | 'promised_time' | 'place' | 'notes'>;
export const fieldsOf = ({ customer, car, promised, promised_time, place, notes }: Job): Fields => ({ customer, car, promised, promised_time, place, notes });

/** What makes one state of a job's head into another, field by field, each with the value that was last known. */
export function editsBetween(was: Fields, now: NewJob): Edit[] {
  const before = flat({ ...was });
  const after = flat({ ...now });
  return [...new Set([...before.keys(), ...after.keys()])]
    .filter((field) => field !== '/id')
    .map((field) => ({ field, base: before.get(field) ?? null, to: after.get(field) ?? null }))
    .filter((edit) => edit.base !== edit.to) as Edit[];
}

/** Every field below, by its JSON pointer (RFC 6901). */
function flat(value: unknown, under = ''): Map<string, unknown> {
  if (value === null || typeof value !== 'object') return new Map([[under, value]]);
  return new Map(Object.entries(value).flatMap(([name, field]) => [...flat(field, `${under}/${name}`)]));
}
