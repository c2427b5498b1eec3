import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';
import { mock } from './dev/mock.ts';

/** Where a running `dentwright serve` is, when developing against the real thing. */
const server = process.env.DENTWRIGHT;

export default defineConfig(({ command }) => ({
  base: './',
  plugins: [svelte(), ...(command === 'serve' && !server && !process.env.VITEST ? [mock()] : [])],
  build: { target: 'es2022', chunkSizeWarningLimit: 400 },
  server: server ? { proxy: { '/api': server } } : {},
  test: { include: ['tests/**/*.test.ts'], environment: 'node' },
}));
