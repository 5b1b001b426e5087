// The admin's pages as the server hands them over: whole, compressed where asked, and still there when a newer build replaces the files.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pagesOf } from '../api/pages.ts';

const script = 'export const drop = 1;\n';
let server: Server;
let address = '';

beforeAll(async () => {
  const folder = mkdtempSync(join(tmpdir(), 'drumkeep-pages-'));
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Drumkeep</title>');
  writeFileSync(join(folder, 'assets/main-1.js'), script);
  writeFileSync(join(folder, 'assets/main-1.js.gz'), gzipSync(script));
  writeFileSync(join(folder, 'assets/main-1.js.br'), brotliCompressSync(script));
  const pages = pagesOf(folder);
  rmSync(folder, { recursive: true });
  server = createServer((request, response) => {
    if (!pages(request, response, request.url ?? '/')) response.writeHead(404).end();
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterAll(() => server.close());

describe('the admin’s pages', () => {
  it('are served although their files are gone, compressed for whom can read it', async () => {
    const plain = await fetch(`${address}/assets/main-1.js`, { headers: { 'accept-encoding': 'identity' } });
    expect(plain.headers.get('content-encoding')).toBeNull();
    expect(await plain.text()).toBe(script);
    for (const [taken, coding] of [
      ['gzip', 'gzip'],
      ['gzip, deflate, br', 'br'],
    ] as const) {
      const packed = await fetch(`${address}/assets/main-1.js`, { headers: { 'accept-encoding': taken } });
      expect(packed.headers.get('content-encoding')).toBe(coding);
      expect(await packed.text()).toBe(script);
    }
  });
  it('answer every address of the admin with its one page, and no file that is not there', async () => {
    expect(await (await fetch(`${address}/c/4M7-2XK`)).text()).toContain('<title>Drumkeep</title>');
    for (const path of ['/assets/main-0.js', '/../package.json', '/assets/main-1.js.gz', '/assets/main-1.js.br']) {
      expect((await fetch(address + path)).status).toBe(404);
    }
    expect((await fetch(`${address}/`, { method: 'POST' })).status).toBe(404);
  });
  it('allow no inline script and nothing from elsewhere, and are asked for again only when they changed', async () => {
    const page = await fetch(`${address}/`);
    expect(page.headers.get('content-security-policy')).toContain("script-src 'self'");
    expect(page.headers.get('cache-control')).toBe('no-cache');
    const again = await fetch(`${address}/`, { headers: { 'if-none-match': page.headers.get('etag') ?? '' } });
    expect(again.status).toBe(304);
  });
});
