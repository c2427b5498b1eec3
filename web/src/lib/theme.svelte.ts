export type Theme = 'dark' | 'light';

const KEY = 'dentwright.theme';

/** Dark beside the panel, since a bright screen is mirrored in it; light outdoors, against glare. */
export const theme = $state<{ value: Theme }>({ value: kept() });

export function turn(): void {
  theme.value = theme.value === 'dark' ? 'light' : 'dark';
  try {
    localStorage.setItem(KEY, theme.value);
  } catch {
    /* it stays for as long as the page is open */
  }
  show();
}

export function show(): void {
  document.documentElement.dataset.theme = theme.value;
  document.querySelector('meta[name=theme-color]')?.setAttribute('content', theme.value === 'dark' ? '#101512' : '#f3f2ea');
}

function kept(): Theme {
  try {
    return localStorage.getItem(KEY) === 'light' ? 'light' : 'dark';
  } catch {
    return 'dark';
  }
}
