/** The page that the address names, as its parts: `#/jobs/12/quote` is `['jobs', '12', 'quote']`. */
export const route = $state<{ parts: string[]; pairing: string | null }>(read(location.hash));

/** Splits an address's hash; `#pair=CODE` is the one that is not a page. */
export function read(hash: string): { parts: string[]; pairing: string | null } {
  if (hash.startsWith('#pair=')) return { parts: ['pair'], pairing: decodeURIComponent(hash.slice(6)) };
  const parts = hash.replace(/^#\/?/, '').split('/').filter(Boolean).map(decodeURIComponent);
  return { parts, pairing: null };
}

/** The hash of a page, for links. */
export function to(...parts: string[]): string {
  return '#/' + parts.map(encodeURIComponent).join('/');
}

/** Opens a page. */
export function go(...parts: string[]): void {
  location.hash = to(...parts);
}

/** Follows the address. After a change the heading takes the focus, so a screen reader starts there. */
export function follow(): void {
  addEventListener('hashchange', () => {
    Object.assign(route, read(location.hash));
    scrollTo(0, 0);
    requestAnimationFrame(() => document.querySelector<HTMLElement>('main h1')?.focus());
  });
}
