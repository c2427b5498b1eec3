import type { Dent, PanelCode } from '../api/types';
import { add } from './outbox/box.svelte';

interface Tap {
  damage: string;
  panel: PanelCode;
  dent: Dent;
  by: number;
}

/** Dents counted by touch: each tap is kept on this device at once, and sent when that can be. */
export class Counter {
  #done = $state.raw<Tap[]>([]);
  readonly job: string;
  constructor(job: string) {
    this.job = job;
  }

  get canUndo(): boolean {
    return this.#done.length > 0;
  }
  count(tap: Tap): void {
    this.#done = [...this.#done, tap];
    this.#add(tap);
  }
  /** Takes the last tap back, as another tap. */
  undo(): void {
    const last = this.#done.at(-1);
    if (!last) return;
    this.#done = this.#done.slice(0, -1);
    this.#add({ ...last, by: -last.by });
  }
  #add(tap: Tap) {
    // A glove feels what it does not see.
    void add(this.job, { kind: 'tap', ...tap }).then((kept) => kept && navigator.vibrate?.(12));
  }
}
