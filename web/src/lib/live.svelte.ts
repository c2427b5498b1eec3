import { api, Problem } from '../api/client';
import type { LiveState } from '../api/types';
import { speak } from '../lang/index.svelte';

const LOST_MS = 1000;
const MOST_LOST = 60;

/** A live session as the server last told it. */
export interface Follow {
  readonly state: LiveState | null;
  readonly problem: unknown;
  /** Takes an answer that came by another way. */
  take: (state: LiveState) => void;
  leave: () => void;
}

/** Follows a session: asks, waits for news, asks again. A lost connection is tried again for a minute. */
export function follow(code: string, onState: (state: LiveState) => void = () => {}): Follow {
  let state = $state.raw<LiveState | null>(null);
  let problem = $state.raw<unknown>(null);
  let left = false;
  const take = (answer: LiveState) => {
    if (left || (state && answer.version < state.version)) return;
    speak(answer.language);
    state = answer;
    problem = null;
    onState(answer);
  };
  void (async () => {
    for (let lost = 0; !left; ) {
      try {
        take(await api.live(code, state?.version ?? 0));
        lost = 0;
      } catch (caught) {
        if (left) return;
        problem = caught;
        if (!(caught instanceof Problem && caught.code === 'offline') || ++lost > MOST_LOST) return;
        await new Promise((resolve) => setTimeout(resolve, LOST_MS));
      }
    }
  })();
  return {
    get state() {
      return state;
    },
    get problem() {
      return problem;
    },
    take,
    leave: () => (left = true),
  };
}
