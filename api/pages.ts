// The admin's pages, read once when the server starts: it goes on serving them whole while a newer build replaces the files.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { extname, join } from 'node:path';

/** No inline script, nothing from elsewhere. */
const policy = [
  "default-src 'self'",
  "img-src 'self' data: blob:",
  "style-src 'self' 'unsafe-inline'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "connect-src 'self'",
  "media-src 'self' blob: mediastream:",
  "object-src 'none'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** The camera reads labels; nothing else of the machine is wanted. */
const permissions = 'camera=(self), microphone=(), geolocation=(), payment=(), usb=(), serial=(), hid=()';

const types: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.wasm': 'application/wasm',
  '.json': 'application/json; charset=utf-8',
};

const policies = {
  'content-security-policy': policy,
  'permissions-policy': permissions,
  'referrer-policy': 'no-referrer',
};

interface Page {
  body: Buffer;
  /** The same, compressed, smallest first; what the build has no twin of is not there. */
  packed: { coding: 'br' | 'gzip'; bytes: Buffer }[];
  etag: string;
  headers: Record<string, string>;
}

function pageOf(folder: string, path: string): Page {
  const body = readFileSync(join(folder, path));
  const twins = [
    { coding: 'br', file: join(folder, `${path}.br`) },
    { coding: 'gzip', file: join(folder, `${path}.gz`) },
  ] as const;
  return {
    body,
    packed: twins
      .filter(({ file }) => existsSync(file))
      .map(({ coding, file }) => ({ coding, bytes: readFileSync(file) })),
    etag: `"${createHash('sha1').update(body).digest('base64url')}"`,
    headers: {
      'content-type': types[extname(path)] ?? 'application/octet-stream',
      'x-content-type-options': 'nosniff',
      // Policies are a page's and a worker's own; with every part of them they would only travel along.
      ...(path.startsWith('assets/') ? {} : policies),
      // A name under assets/ changes with its content.
      'cache-control': path.startsWith('assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
      vary: 'accept-encoding',
    },
  };
}

export type Pages = (request: IncomingMessage, response: ServerResponse, path: string) => boolean;

/** Answers with a page of the folder, or with its index for an address the admin itself reads; false when it is neither. */
export function pagesOf(folder: string): Pages {
  const names = existsSync(folder) ? readdirSync(folder, { recursive: true, encoding: 'utf8' }) : [];
  const files = names
    .map((name) => name.replaceAll('\\', '/'))
    .filter((name) => extname(name) !== '' && !/\.(br|gz)$/.test(name));
  const pages = new Map(files.map((name) => [`/${name}`, pageOf(folder, name)]));
  const index = pages.get('/index.html');

  return (request, response, path) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') return false;
    const page = pages.get(path) ?? (extname(path) === '' ? index : undefined);
    if (!page) return false;
    const { headers, etag } = page;
    if (request.headers['if-none-match'] === etag) {
      response.writeHead(304, { ...headers, etag }).end();
      return true;
    }
    const taken = String(request.headers['accept-encoding'] ?? '');
    const packed = page.packed.find(({ coding }) => new RegExp(`\\b${coding}\\b`).test(taken));
    const body = packed?.bytes ?? page.body;
    const encoding = packed ? { 'content-encoding': packed.coding } : {};
    response.writeHead(200, { ...headers, ...encoding, etag, 'content-length': body.length });
    response.end(request.method === 'HEAD' ? undefined : body);
    return true;
  };
}
