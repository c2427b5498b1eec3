import { t } from '../lang/index.svelte';
import { tell, tellProblem } from './toast.svelte';

/** How long one can take a removal back, ms: as long as its message stands. */
const WAIT_MS = 12_000;

/** What is removed on the screen but not yet on the server, by id. */
export const leaving = $state<Record<string, () => Promise<unknown>>>({});

/**
 * Removes something with a way back: it goes from the screen now and from the record when the
 * message has gone, so that taking it back brings everything back, readings and photos included.
 */
export function removeLater(id: string, text: string, send: () => Promise<unknown>, done?: () => void): void {
  leaving[id] = send;
  const timer = setTimeout(() => finish(id).then(done), WAIT_MS);
  const undo = () => {
    clearTimeout(timer);
    delete leaving[id];
  };
  tell({ text, action: { label: t('undo'), run: undo } });
}

async function finish(id: string): Promise<void> {
  const send = leaving[id];
  if (!send) return;
  try {
    await send();
  } catch (problem) {
    tellProblem(problem);
  }
  delete leaving[id];
}

/** Sends what is still waiting when the page goes away. */
export function finishOnLeave(): void {
  addEventListener('pagehide', () => Object.keys(leaving).forEach((id) => void finish(id)));
}
