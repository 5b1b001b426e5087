// Who may call the server, with what, and what its pages may load.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { auditServer } from 'graphql-http';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serverOf } from '../api/http.ts';
import { labOf } from '../api/lab.ts';
import { readSettings } from '../api/settings.ts';
import { engineOfSuite } from './support/engines.ts';

const sqlite = engineOfSuite('sqlite');
const admin = mkdtempSync(join(tmpdir(), 'drumkeep-admin-'));
let server: ReturnType<typeof serverOf>;
let port = 0;

beforeAll(async () => {
  writeFileSync(join(admin, 'index.html'), '<!doctype html><title>Drumkeep</title>');
  const settings = readSettings({ DRUMKEEP_DEMO: 'no' });
  const database = await sqlite.fresh();
  const now = () => new Date();
  server = serverOf({ settings, database, now, lab: await labOf(database, settings, now()) }, admin);
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  port = (server.address() as AddressInfo).port;
});

afterAll(async () => {
  await new Promise((closed) => server.close(closed));
  rmSync(admin, { recursive: true });
});

interface Answer {
  status: number;
  headers: Record<string, string | string[] | undefined>;
  text: string;
}

/** Past fetch, which sets Host and Origin itself. */
function send(method: string, path: string, headers: Record<string, string>, body = ''): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const call = request({ host: '127.0.0.1', port, method, path, headers, agent: false }, (response) => {
      let text = '';
      response.setEncoding('utf8').on('data', (part: string) => (text += part));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text }));
    });
    call.on('error', reject);
    call.end(body);
  });
}

const json = { 'content-type': 'application/json' };
const addRoom = JSON.stringify({
  query: 'mutation { addRoom(input: { name: "outside" }) { __typename } }',
});
const rooms = async () => {
  const answer = await send(
    'POST',
    '/graphql',
    json,
    JSON.stringify({ query: '{ rooms(first: 5) { nodes { name } } }' }),
  );
  return (JSON.parse(answer.text) as { data: { rooms: { nodes: { name: string }[] } } }).data.rooms.nodes;
};

describe('a foreign page', () => {
  it('cannot write with a script of its own: the origin is refused', async () => {
    const answer = await send('POST', '/graphql', { ...json, origin: 'https://elsewhere.example' }, addRoom);
    expect(answer.status).toBe(403);
    expect(answer.text).toContain('invalid origin: https://elsewhere.example');
    expect(await rooms()).toEqual([]);
  });

  it('cannot write with a form, which may send only these types without asking first', async () => {
    // The three types of a "simple request" (Fetch standard, CORS-safelisted request-header).
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x']) {
      const answer = await send('POST', '/graphql', { 'content-type': type }, addRoom);
      expect(answer.status).toBe(415);
    }
    expect(await rooms()).toEqual([]);
  });

  it('cannot write by a link: a mutation by GET is refused', async () => {
    const query = encodeURIComponent('mutation { addRoom(input: { name: "outside" }) { __typename } }');
    const answer = await send('GET', `/graphql?query=${query}`, { accept: 'application/json' });
    expect(answer.status).toBe(405);
    expect(await rooms()).toEqual([]);
  });

  it('cannot reach the server under a name of its own', async () => {
    const answer = await send('POST', '/graphql', { ...json, host: 'elsewhere.example' }, addRoom);
    expect(answer.status).toBe(403);
    expect(answer.text).toContain('unknown host: elsewhere.example');
  });

  it('is told nothing by CORS headers', async () => {
    const asked = { origin: 'https://elsewhere.example', 'access-control-request-method': 'POST' };
    for (const answer of [await send('OPTIONS', '/graphql', asked), await send('GET', '/health', {})]) {
      expect(Object.keys(answer.headers).filter((name) => name.startsWith('access-control-'))).toEqual([]);
    }
  });
});

describe('the server', () => {
  it('lets its own page write', async () => {
    const origin = `http://127.0.0.1:${port}`;
    const host = `127.0.0.1:${port}`;
    const body = addRoom.replace('outside', 'wet bench');
    const answer = await send('POST', '/graphql', { ...json, origin, host }, body);
    expect(answer.status).toBe(200);
    expect(await rooms()).toEqual([{ name: 'wet bench' }]);
  });

  it('writes nothing under a name that nobody in the lab has', async () => {
    const body = addRoom.replace('outside', 'instrument bay');
    const answer = await send('POST', '/graphql', { ...json, 'drumkeep-person': 'B%C3%A4r' }, body);
    expect(JSON.parse(answer.text)).toEqual({ data: { addRoom: { __typename: 'Refusal' } } });
    expect((await rooms()).map(({ name }) => name)).not.toContain('instrument bay');
  });

  it('says the limit when a body is too large', async () => {
    const answer = await send('POST', '/graphql', { ...json, 'content-length': '4000001' });
    expect(answer.status).toBe(413);
    expect(answer.text).toContain('at most 4000000');
  });

  it('answers health with its version and the age of its estimates', async () => {
    const answer = await send('GET', '/health', {});
    expect(answer.status).toBe(200);
    expect(JSON.parse(answer.text)).toEqual({
      ok: true,
      version: expect.stringMatching(/^\d+\.\d+\.\d+$/),
      estimateAgeSeconds: null,
    });
  });

  it('serves a page to try queries on that loads nothing from elsewhere', async () => {
    const answer = await send('GET', '/graphql', { accept: 'text/html' });
    expect(answer.status).toBe(200);
    const loaded = [...answer.text.matchAll(/<(?:script|link|img)[^>]+(?:src|href)="([^"]+)"/g)].map(
      ([, from]) => from,
    );
    expect(loaded.filter((from) => /^(https?:)?\/\//.test(from ?? ''))).toEqual([]);
  });

  it('forbids its pages inline script and foreign hosts', async () => {
    const answer = await send('GET', '/', {});
    expect(answer.status).toBe(200);
    const policy = String(answer.headers['content-security-policy']);
    expect(policy).toContain("default-src 'self'");
    expect(policy).toMatch(/script-src 'self'(?! 'unsafe-inline')/);
  });

  it('speaks GraphQL over HTTP as the specification asks', async () => {
    // The audit suite of the GraphQL over HTTP specification (npm package graphql-http).
    const results = await auditServer({ url: `http://127.0.0.1:${port}/graphql` });
    const failed = results.filter(({ status }) => status === 'error').map(({ id, name }) => `${id} ${name}`);
    expect(results.length).toBeGreaterThan(50);
    expect(failed).toEqual([]);
  });
});
