// Builds the admin from admin/ into .data/admin, with a compressed twin beside each text file so that the server only hands bytes over.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig, type Plugin } from 'vite';

const root = fileURLToPath(new URL('../admin', import.meta.url));
const outDir = fileURLToPath(new URL('../.data/admin', import.meta.url));

/** Writes `x.gz` beside every text file of the build. */
function compressedTwins(): Plugin {
  return {
    name: 'compressed-twins',
    apply: 'build',
    writeBundle({ dir }) {
      if (!dir) return;
      for (const name of readdirSync(dir, { recursive: true, encoding: 'utf8' })) {
        if (/\.(js|css|html|svg)$/.test(name))
          writeFileSync(`${dir}/${name}.gz`, gzipSync(readFileSync(`${dir}/${name}`), { level: 9 }));
      }
    },
  };
}

export default defineConfig({
  root,
  base: '/',
  cacheDir: fileURLToPath(new URL('../node_modules/.vite', import.meta.url)),
  plugins: [svelte({ configFile: false, compilerOptions: { runes: true } }), compressedTwins()],
  build: {
    outDir,
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
  },
  logLevel: 'warn',
});
