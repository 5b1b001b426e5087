// Builds the admin: plain files without an address of anybody else in them, served by the API's own process.
import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';

const folder = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: folder('../admin'),
  base: '/',
  cacheDir: folder('../node_modules/.vite'),
  plugins: [svelte({ configFile: false })],
  build: {
    outDir: folder('../.data/admin'),
    emptyOutDir: true,
    target: 'es2022',
    // A font or picture inside a style sheet would break the page's own rule that nothing is inline.
    assetsInlineLimit: 0,
    reportCompressedSize: false,
  },
  // While working on the admin: `vite -c .config/vite.ts` beside a running server.
  server: {
    port: 4601,
    strictPort: true,
    proxy: { '/graphql': 'http://127.0.0.1:4600', '/files': 'http://127.0.0.1:4600' },
  },
});
