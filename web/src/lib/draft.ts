/** What is typed but not yet sent, kept on this device so that a reload loses nothing. */
export interface Shelf {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

const PREFIX = 'dentwright.draft.';

/** The draft of that name, laid over `blank`; `blank` where there is none or it cannot be read. */
export function loadDraft<T extends object>(name: string, blank: T, shelf: Shelf | null = browserShelf()): T {
  try {
    const text = shelf?.getItem(PREFIX + name);
    const kept: unknown = text ? JSON.parse(text) : null;
    return kept && typeof kept === 'object' && !Array.isArray(kept) ? { ...blank, ...kept } : { ...blank };
  } catch {
    return { ...blank };
  }
}

/** Keeps a draft. A full or forbidden shelf is no reason to stop the work. */
export function keepDraft(name: string, value: object, shelf: Shelf | null = browserShelf()): void {
  try {
    shelf?.setItem(PREFIX + name, JSON.stringify(value));
  } catch {
    /* the form itself still holds what was typed */
  }
}

/** Forgets a draft once it has been sent. */
export function dropDraft(name: string, shelf: Shelf | null = browserShelf()): void {
  try {
    shelf?.removeItem(PREFIX + name);
  } catch {
    /* nothing kept, nothing to forget */
  }
}

function browserShelf(): Shelf | null {
  try {
    return globalThis.localStorage ?? null;
  } catch {
    return null;
  }
}
