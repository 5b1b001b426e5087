// Over HTTPS from another machine: certificate and key that belong together, names it may be called by, and a pass phrase.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { generate } from 'selfsigned';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { doorOf, passwordIn } from '../api/door.ts';
import { serverOf } from '../api/http.ts';
import { labOf } from '../api/lab.ts';
import { readSettings } from '../api/settings.ts';
import { engineOfSuite } from './support/engines.ts';

const folder = mkdtempSync(join(tmpdir(), 'drumkeep-https-'));
const file = (name: string): string => join(folder, name);
const phrase = 'schön trocken hält';
const secured = {
  DRUMKEEP_TLS_CERT: file('cert.pem'),
  DRUMKEEP_TLS_KEY: file('key.pem'),
  DRUMKEEP_PASS_PHRASE: phrase,
};
let ca = '';

beforeAll(async () => {
  const name = [{ name: 'commonName', value: 'drumkeep.lab.example' }];
  const extensions = [
    { name: 'subjectAltName' as const, altNames: [{ type: 2 as const, value: 'drumkeep.lab.example' }] },
  ];
  const [pair, other] = await Promise.all([generate(name, { extensions }), generate(name)]);
  ca = pair.cert;
  writeFileSync(file('cert.pem'), pair.cert);
  writeFileSync(file('key.pem'), pair.private);
  writeFileSync(file('other-key.pem'), other.private);
  writeFileSync(file('index.html'), '<!doctype html><title>Drumkeep</title>');
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('certificate and key', () => {
  it('go together, from files that can be read and belong to each other', () => {
    const settings = readSettings({ ...secured, HOST: '192.0.2.7' });
    expect(settings.tls?.cert).toBe(ca);
    expect(settings.hostNames).toContain('192.0.2.7');
  });
  it.each([
    ['one without the other', { DRUMKEEP_TLS_KEY: '' }, 'invalid DRUMKEEP_TLS_KEY: (nothing), should be a PEM file'],
    ['a certificate that is not there', { DRUMKEEP_TLS_CERT: '/none/cert.pem' }, 'that can be read (ENOENT)'],
    ['a key that is no key', { DRUMKEEP_TLS_KEY: file('cert.pem') }, 'should be a private key in a PEM file'],
    ['a certificate that is none', { DRUMKEEP_TLS_CERT: file('key.pem') }, 'should be a certificate in a PEM file'],
    ['a key of another certificate', { DRUMKEEP_TLS_KEY: file('other-key.pem') }, 'the key that belongs to'],
    ['every address without a name', { HOST: '0.0.0.0' }, 'invalid DRUMKEEP_HOSTS: (nothing)'],
    ['no pass phrase', { HOST: '0.0.0.0', DRUMKEEP_PASS_PHRASE: '' }, 'invalid HOST: 0.0.0.0'],
  ])('%s is refused, and the setting named', (_, change, words) => {
    expect(() => readSettings({ ...secured, ...change })).toThrow(words);
  });
});

describe('a server that others can reach', () => {
  const sqlite = engineOfSuite('sqlite');
  let server: ReturnType<typeof serverOf>;
  let port = 0;
  beforeAll(async () => {
    const settings = readSettings({ ...secured, DRUMKEEP_HOSTS: 'drumkeep.lab.example', DRUMKEEP_DEMO: 'no' });
    const database = await sqlite.fresh();
    const now = () => new Date();
    server = serverOf({ settings, database, now, lab: await labOf(database, settings, now()) }, folder);
    await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
    port = (server.address() as AddressInfo).port;
  });
  afterAll(() => new Promise((closed) => server.close(closed)));

  interface Answer {
    status: number;
    headers: Record<string, string | string[] | undefined>;
    text: string;
  }
  const basic = (password: string, user = 'anybody'): string =>
    `Basic ${Buffer.from(`${user}:${password}`, 'utf8').toString('base64')}`;

  /** As a phone calls: by the name, with a certificate that it trusts. */
  function call(path: string, headers: Record<string, string> = {}, body?: string): Promise<Answer> {
    const to = { host: '127.0.0.1', servername: 'drumkeep.lab.example', port, ca, agent: false };
    const method = body === undefined ? 'GET' : 'POST';
    return new Promise((resolve, reject) => {
      const asked = request(
        { ...to, method, path, headers: { host: `drumkeep.lab.example:${port}`, ...headers } },
        (response) => {
          let text = '';
          response.setEncoding('utf8').on('data', (part: string) => (text += part));
          response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text }));
        },
      );
      asked.on('error', reject);
      asked.end(body);
    });
  }

  it.each(['/', '/c/4M7-2XK', '/graphql', '/files', '/nothing'])(
    'shows %s to nobody without the pass phrase',
    async (path) => {
      const { status, headers, text } = await call(path);
      expect(status).toBe(401);
      expect(headers['www-authenticate']).toBe('Basic realm="Drumkeep", charset="UTF-8"');
      expect(text).not.toContain(phrase);
    },
  );

  it('lets in whoever knows it, under any user name', async () => {
    for (const user of ['', 'night shift'])
      expect((await call('/', { authorization: basic(phrase, user) })).status).toBe(200);
  });

  it.each([
    ['another phrase', basic('schön trocken')],
    ['nothing', basic('')],
    ['another scheme', `Bearer ${phrase}`],
    ['broken words', 'Basic ???'],
  ])('does not let in %s', async (_, authorization) => {
    expect((await call('/', { authorization })).status).toBe(401);
  });

  it('tells its health to whoever watches over it', async () => {
    expect(JSON.parse((await call('/health')).text)).toMatchObject({ ok: true });
  });

  it('lets its own pages write, and no others', async () => {
    const body = JSON.stringify({ query: '{ lab { name } }' });
    const write = (origin: string) =>
      call('/graphql', { authorization: basic(phrase), 'content-type': 'application/json', origin }, body);
    expect((await write(`https://drumkeep.lab.example:${port}`)).status).toBe(200);
    for (const origin of [`http://drumkeep.lab.example:${port}`, 'https://elsewhere.example', 'null'])
      expect((await write(origin)).status).toBe(403);
  });

  it('is called by its names only', async () => {
    expect((await call('/health', { host: `elsewhere.example:${port}` })).status).toBe(403);
    expect((await call('/health', { host: `localhost:${port}` })).status).toBe(200);
  });

  it('gives its pages the camera, and nothing else of the machine', async () => {
    const { headers } = await call('/', { authorization: basic(phrase) });
    expect(headers['permissions-policy']).toContain('camera=(self)');
    expect(headers['permissions-policy']).toContain('microphone=()');
  });
});

describe('the door', () => {
  const waits: number[] = [];
  beforeEach(() => waits.splice(0));
  const slow = async (ms: number) => waits.push(ms);
  const asks = (authorization?: string, remoteAddress = '192.0.2.1') =>
    ({ headers: { authorization }, socket: { remoteAddress } }) as never;
  const with_ = (password: string): string => `Basic ${Buffer.from(`x:${password}`).toString('base64')}`;

  it('makes wrong tries from one address wait longer each time, up to two seconds', async () => {
    const door = doorOf(phrase, { slow });
    for (let time = 0; time < 12; time += 1) expect(await door(asks(with_('wrong')))).toBe(false);
    expect(waits.slice(0, 3)).toEqual([200, 400, 600]);
    expect(Math.max(...waits)).toBe(2_000);
    await door(asks(with_('wrong'), '192.0.2.2'));
    expect(waits.at(-1)).toBe(200);
  });
  it('does not make wait whoever knows the phrase, or asks for the first time', async () => {
    const door = doorOf(phrase, { slow });
    await door(asks(with_('wrong')));
    expect(await door(asks(with_(phrase)))).toBe(true);
    expect(await door(asks())).toBe(false);
    expect(waits).toEqual([200]);
  });
  it('stands open where there is no phrase', async () => {
    expect(await doorOf(null)(asks())).toBe(true);
  });
  it('reads the password of RFC 7617’s own examples', () => {
    // RFC 7617, sections 2 and 2.1.
    expect(passwordIn('Basic QWxhZGRpbjpvcGVuIHNlc2FtZQ==')).toBe('open sesame');
    expect(passwordIn('Basic dGVzdDoxMjPCow==')).toBe('123£');
    expect(passwordIn(undefined)).toBeNull();
  });
});
