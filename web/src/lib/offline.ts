/**
 * Keeps the app itself on this device, so that it opens without network. Browsers allow that on this machine and under
 * an address with a certificate that they trust; elsewhere the app works as long as its page is open.
 */
export function keepApp(): void {
  if (!('serviceWorker' in navigator) || import.meta.env.DEV) return;
  addEventListener('load', () => void navigator.serviceWorker.register('./sw.js').catch(() => {}));
}
