// A newer build of the admin is taken up at the next look, with a network and without one; nothing old is kept for ever.
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pagesOf, type Pages } from '../../api/pages.ts';
import { openBrowser, visit } from './browser.ts';

const built = fileURLToPath(new URL('../../.data/admin', import.meta.url));
const folders: string[] = [];

/** The build as it is now, told apart by its page's description, under a version of its own. */
function buildNamed(name: string): Pages {
  const folder = mkdtempSync(join(tmpdir(), 'drumkeep-build-'));
  folders.push(folder);
  cpSync(built, folder, { recursive: true });
  const rewrite = (file: string, from: RegExp, to: string) => {
    const path = join(folder, file);
    writeFileSync(path, readFileSync(path, 'utf8').replace(from, to));
    for (const twin of ['br', 'gz']) rmSync(`${path}.${twin}`, { force: true });
  };
  rewrite('index.html', /<title>/, `<meta name="description" content="${name}" /><title>`);
  rewrite('worker.js', /"version":"[^"]+"/, `"version":"${name}"`);
  return pagesOf(folder);
}

let server: Server;
let browser: Browser;
let pages: Pages;

beforeAll(async () => {
  pages = buildNamed('one');
  server = createServer((request, response) => {
    const path = (request.url ?? '/').split('?')[0] ?? '/';
    if (!pages(request, response, path)) response.writeHead(503).end();
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  server?.closeAllConnections();
  server?.close();
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

describe('a newer build', () => {
  it('is shown at the next look, kept for when there is no network, and its elders go', async () => {
    const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    const { page, context, complaints } = await visit(browser, address, { worker: true });
    const shown = () => page.locator('meta[name=description]').getAttribute('content');
    const caches = () => page.evaluate(() => globalThis.caches.keys());
    const isKept = (name: string) => async () => (await caches()).includes(`drumkeep-${name}`);
    const isActive = () =>
      page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.waiting === null);

    for (const [name, next] of [
      ['one', 'two'],
      ['two', 'three'],
      ['three', ''],
    ] as const) {
      await page.goto('/');
      expect(await shown()).toBe(name);
      // Whatever the page does at leisure, the worker looks for a newer one when it is asked to.
      await page.waitForTimeout(4_000);
      await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
      await expect.poll(isKept(name), { timeout: 30_000 }).toBe(true);
      await expect.poll(isActive).toBe(true);
      await page.waitForTimeout(500);
      await context.setOffline(true);
      await page.goto('/air');
      expect(await shown()).toBe(name);
      await page.getByRole('link', { name: 'Open now' }).waitFor();
      await context.setOffline(false);
      if (next) pages = buildNamed(next);
    }
    expect((await caches()).sort()).toEqual(['drumkeep-three', 'drumkeep-two']);
    const kept = await page.evaluate(async () => {
      const names = await globalThis.caches.keys();
      const all = await Promise.all(names.map(async (name) => (await globalThis.caches.open(name)).keys()));
      return all.flat().map(({ url }) => new URL(url).pathname);
    });
    expect(kept).toContain('/');
    expect(kept.filter((path) => /^\/(graphql|files|health)/.test(path))).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
