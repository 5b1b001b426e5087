// Tells the service worker which files make up the build it belongs to.
import { createHash } from 'node:crypto';
import type { Plugin } from 'vite';

/** Larger files (a decoder's WebAssembly) are kept when they were used once. */
const mostBytes = 300_000;

export function workerWithBuild(): Plugin {
  return {
    name: 'worker-with-build',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const worker = bundle['worker.js'];
        if (worker?.type !== 'chunk') throw new Error('there is no worker.js in the build');
        const files = Object.values(bundle).flatMap((file) => {
          const content = file.type === 'chunk' ? file.code : file.source;
          return file === worker || !file.fileName.startsWith('assets/') || content.length > mostBytes
            ? []
            : [`/${file.fileName}`];
        });
        const page = bundle['index.html'];
        const entry = Object.values(bundle).find((file) => file.type === 'chunk' && file.isEntry && file !== worker);
        if (page?.type !== 'asset' || !entry) throw new Error('there is no page in the build');
        const version = createHash('sha256')
          .update(JSON.stringify(files))
          .update(page.source)
          .digest('hex')
          .slice(0, 12);
        const build = JSON.stringify({ version, entry: `/${entry.fileName}`, files: files.sort() });
        if (!worker.code.includes('__BUILD__')) throw new Error('the worker does not ask for its build');
        worker.code = worker.code.replaceAll('__BUILD__', build);
      },
    },
  };
}
