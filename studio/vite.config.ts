import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  plugins: [svelte()],
  // Served from the root of the loopback address only.
  base: '/',
  build: { target: 'es2023', sourcemap: false, assetsInlineLimit: 0, chunkSizeWarningLimit: 900 },
  server: {
    host: '127.0.0.1',
    // dev/ shows what lies in the repository's examples.
    fs: { allow: ['.', '../examples'] },
  },
  ...(process.env.VITEST ? { resolve: { conditions: ['browser'] } } : {}),
  test: { environment: 'jsdom', include: ['src/**/*.test.ts'], pool: 'threads', maxWorkers: 2 },
});
