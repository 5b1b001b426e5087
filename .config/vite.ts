// Builds the admin: plain files without an address of anybody else in them, served by the API's own process.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig, type Plugin } from 'vite';
import { workerWithBuild } from './worker.ts';

const folder = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Writes `x.br` and `x.gz` beside every file that shrinks, so that the server only hands bytes over. */
function compressedTwins(): Plugin {
  let built = '';
  return {
    name: 'compressed-twins',
    apply: 'build',
    configResolved({ build: { outDir } }) {
      built = `${outDir}/`;
    },
    closeBundle() {
      for (const name of readdirSync(built, { recursive: true, encoding: 'utf8' })) {
        if (!/\.(js|css|html|svg|wasm)$/.test(name)) continue;
        const body = readFileSync(built + name);
        writeFileSync(`${built}${name}.br`, brotliCompressSync(body));
        writeFileSync(`${built}${name}.gz`, gzipSync(body, { level: 9 }));
      }
    },
  };
}

export default defineConfig({
  root: folder('../admin'),
  base: '/',
  cacheDir: folder('../node_modules/.vite'),
  plugins: [svelte({ configFile: false, compilerOptions: { runes: true } }), workerWithBuild(), compressedTwins()],
  build: {
    outDir: folder('../.data/admin'),
    emptyOutDir: true,
    target: 'es2022',
    // A font or picture inside a style sheet would break the page's own rule that nothing is inline.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
    // On a busy machine the bundler finds its plugins slow and says so at length.
    rolldownOptions: {
      checks: { pluginTimings: false },
      input: { main: folder('../admin/index.html'), worker: folder('../admin/later/worker.ts') },
      output: { entryFileNames: ({ name }) => (name === 'worker' ? 'worker.js' : 'assets/[name]-[hash].js') },
    },
  },
  // While working on the admin: `vite -c .config/vite.ts` beside a running server.
  server: {
    port: 4601,
    strictPort: true,
    proxy: { '/graphql': 'http://127.0.0.1:4600', '/files': 'http://127.0.0.1:4600' },
  },
});
