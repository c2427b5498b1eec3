import { api } from '../api/client';
import type { Shop } from '../api/types';
import { speak } from '../lang/index.svelte';
import { kept } from './outbox/seen.svelte';
import * as units from './units';

/** The shop's settings as far as the screen needs them everywhere. */
export const shop = $state<{ value: Shop | null }>({ value: null });

/** Loads the settings and speaks the shop's language. */
export async function openShop(): Promise<Shop> {
  return use(await kept('shop', api.shop));
}

export async function saveShop(value: Shop): Promise<Shop> {
  return use(await api.saveShop(value));
}

function use(value: Shop): Shop {
  shop.value = value;
  speak(value.language);
  return value;
}

const unit = () => shop.value?.length_unit ?? 'mm';
const language = () => shop.value?.language ?? 'en';

/** Values in the shop's own units and language. */
export const say = {
  height: (value_mm: number) => units.height(value_mm, unit(), language()),
  length: (value_mm: number) => units.length(value_mm, unit(), language()),
  money: (amount: string | number, currency = shop.value?.currency ?? 'EUR') => units.money(amount, currency, language()),
  number: (value: number, decimals: number) => units.number(value, decimals, language()),
  percent: (part: number) => `${units.number(part * 100, part < 0.1 && part > 0 ? 1 : 0, language())} %`,
  date: (text: string) => new Date(text.length === 10 ? text + 'T12:00' : text).toLocaleDateString(language(), { weekday: 'short', day: 'numeric', month: 'short' }),
  day: (text: string) => new Date(text + 'T12:00').toLocaleDateString(language(), { day: 'numeric', month: 'short', year: 'numeric' }),
  time: (text: string) => new Date(text).toLocaleString(language(), { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' }),
  unit,
};
