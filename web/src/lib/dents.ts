import type { Dent, DentEntry } from '../api/types';

/** Whether two dents are alike in all but their number, so that they share a line. */
export function alike(one: Dent, other: Dent): boolean {
  return (['kind', 'length_mm', 'width_mm', 'depth_mm', 'metal', 'access', 'place'] as const).every((name) => one[name] === other[name]);
}

/** One step of a tally, and the step that takes it back. */
export type Step = { add: Dent } | { change: string; to: Dent; from: Dent } | { remove: string; was: Dent };

/** What counting one more such dent means for the list: one more on its line, or a new line. */
export function countOne(entries: DentEntry[], dent: Dent): Step {
  const same = entries.find((entry) => entry.source === 'hand' && alike(entry.dent, dent));
  return same ? { change: same.id, from: same.dent, to: { ...same.dent, count: same.dent.count + 1 } } : { add: { ...dent, count: 1 } };
}

/** The step that takes a done step back; `id` is the line that an added dent got. */
export function takeBack(step: Step, id: string): Step {
  if ('add' in step) return { remove: id, was: step.add };
  if ('change' in step) return { change: step.change, to: step.from, from: step.to };
  return { add: step.was };
}
