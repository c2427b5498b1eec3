import type { Job } from '../api/types';
import { t } from '../lang/index.svelte';
import { say } from './shop.svelte';

/** Fields whose word in the forms is not their own name. */
const WORDS: Record<string, string> = {
  name: 'customer-name', odometer_km: 'odometer', high_voltage: 'high-voltage', note: 'note', notes: 'notes',
};

/** What a field of a job is called, by its JSON pointer. */
export function fieldName(field: string, job: Job | null): string {
  const names = field.split('/').slice(1);
  const last = names.at(-1)!;
  if (names[1] === 'metals') return `${t('metal')}: ${t('panel-' + last)}`;
  const panel = names[0] === 'damages' && job?.damages.find((damage) => damage.id === names[1])?.panel;
  const word = t(WORDS[last] ?? last);
  return panel ? `${word}: ${t('panel-' + panel)}` : word;
}

/** A value of a field as one reads it. */
export function fieldValue(field: string, value: unknown): string {
  if (value === null || value === '') return t('nothing');
  if (field === '/stage') return t(`stage-${String(value)}`);
  if (field === '/promised') return say.date(String(value));
  if (field === '/car/high_voltage') return t(value ? 'yes' : 'no');
  if (field.startsWith('/car/metals/')) return t(`metal-${String(value)}`);
  return String(value);
}
