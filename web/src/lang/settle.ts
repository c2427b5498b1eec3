import type { Settle } from '../api/types';
import { say } from '../lib/shop.svelte';
import { t } from './index.svelte';

/** What would settle a "cannot tell". */
export function settleWords(settle: Settle): string {
  return t('settle-' + settle.code, { now: say.height(2 * (settle.sigma_mm ?? 0)), needed: say.height(2 * (settle.needed_sigma_mm ?? 0)) });
}
