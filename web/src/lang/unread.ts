import type { Fold, Reading } from '../api/types';
import { say } from '../lib/shop.svelte';
import { has, own, t } from './index.svelte';

/** What could not be read, or what to do about it: in the shop's language where it has the code, else as the server says. */
export function unreadWords(part: 'what' | 'next', one: Reading['unread'][number] | undefined): string {
  if (!one) return '';
  const name = `unread-${one.code}-${part}`;
  return has(name) ? t(name) : part === 'what' ? one.text : one.next;
}

/** How far a hole goes that was too steep to read, as far as its rim tells. */
export function foldWords(fold: Fold): string {
  return fold.kind && fold.at_least_mm != null ? t('at-least-' + fold.kind, { depth: say.height(Math.abs(fold.at_least_mm)) }) : t('low-or-high-not-told');
}

/** A remark of a reading: in the shop's language where it has the code, else as the reading has it. */
export function noteWords(note: Reading['notes'][number]): string {
  return own('note-' + note.code) ?? note.text;
}
