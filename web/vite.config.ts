import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';
import { worker } from './scripts/worker.ts';

/** Where `dentwright serve` or `dentwright demo` runs while the pages are developed with `npm run dev`. */
const server = process.env.DENTWRIGHT ?? 'http://127.0.0.1:8765';

export default defineConfig({
  base: './',
  plugins: [svelte(), worker()],
  build: { target: 'es2022', chunkSizeWarningLimit: 400 },
  server: { proxy: { '/api': server } },
  test: { include: ['tests/**/*.test.ts'], environment: 'node' },
});
