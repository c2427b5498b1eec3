import type { Reading } from '../api/types';
import { has, t } from './index.svelte';

/** What could not be read, or what to do about it: in the shop's language where it has the code, else as the server says. */
export function unreadWords(part: 'what' | 'next', one: Reading['unread'][number] | undefined): string {
  if (!one) return '';
  const name = `unread-${one.code}-${part}`;
  return has(name) ? t(name) : part === 'what' ? one.text : one.next;
}
