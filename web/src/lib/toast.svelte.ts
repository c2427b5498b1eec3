import { Problem } from '../api/client';
import { own, t } from '../lang/index.svelte';

export interface Toast {
  id: number;
  text: string;
  next?: string;
  bad?: boolean;
  /** What the button says and does. */
  action?: { label: string; run: () => void | Promise<void> };
}

export const toasts = $state<Toast[]>([]);
let last = 0;

/** Shows a message for a while, one with a button longer; its id, by which it can be dismissed before. */
export function tell(toast: Omit<Toast, 'id'>): number {
  const id = ++last;
  toasts.push({ id, ...toast });
  if (toasts.length > 3) toasts.shift();
  setTimeout(() => dismiss(id), toast.action || toast.bad ? 12_000 : 4_000);
  return id;
}

export function dismiss(id: number): void {
  const at = toasts.findIndex((toast) => toast.id === id);
  if (at >= 0) toasts.splice(at, 1);
}

/** Says that something went wrong, and what to do. */
export function tellProblem(problem: unknown): void {
  const { message, next } = wordsOf(problem);
  tell({ text: message, next, bad: true });
}

/** A problem in words, whatever it is. */
export function wordsOf(problem: unknown): { code: string; message: string; next: string; detail?: string } {
  if (problem instanceof Problem && problem.code === 'offline') return { code: 'offline', message: t('offline'), next: t('offline-next') };
  if (problem instanceof Problem) {
    const message = own(`trouble-${problem.code}`);
    const next = own(`trouble-${problem.code}-next`) ?? problem.next;
    return message ? { code: problem.code, message, next, detail: problem.message } : { code: problem.code, message: problem.message, next };
  }
  return { code: 'app', message: problem instanceof Error ? problem.message : String(problem), next: t('app-problem-next') };
}

/** Runs something and tells what went wrong, if anything did. */
export async function attempt<T>(work: () => Promise<T>): Promise<T | undefined> {
  try {
    return await work();
  } catch (problem) {
    tellProblem(problem);
    return undefined;
  }
}
