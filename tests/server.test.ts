// The server as a process: first start, second start, its end, and what it refuses to start with.
import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'drumkeep-server-'));
const running = new Set<ChildProcess>();

afterAll(() => {
  for (const child of running) child.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
});

interface Started {
  child: ChildProcess;
  /** Everything it printed so far. */
  words: () => string;
  /** Where it serves. */
  address: string;
  ended: Promise<number | null>;
}

function launched(env: Record<string, string>) {
  const child = spawn(process.execPath, ['--import', 'tsx', 'api/server.ts'], {
    cwd: root,
    env: { ...process.env, PORT: '0', DRUMKEEP_DATA: folder, DRUMKEEP_DEMO: 'no', ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  running.add(child);
  let text = '';
  child.stdout.setEncoding('utf8').on('data', (part: string) => (text += part));
  child.stderr.setEncoding('utf8').on('data', (part: string) => (text += part));
  const ended = new Promise<number | null>((resolve) =>
    child.on('close', (code) => {
      running.delete(child);
      resolve(code);
    }),
  );
  return { child, ended, words: () => text };
}

async function started(env: Record<string, string> = {}): Promise<Started> {
  const { child, ended, words } = launched(env);
  for (;;) {
    const address = /http:\/\/127\.0\.0\.1:\d+/.exec(words())?.[0];
    if (address && words().includes('The book lies in')) return { child, ended, words, address };
    const code = await Promise.race([ended, new Promise<'running'>((wait) => setTimeout(wait, 50, 'running'))]);
    if (code !== 'running') throw new Error(`the server ended with ${code}:\n${words()}`);
  }
}

async function ask(address: string, query: string): Promise<unknown> {
  const response = await fetch(`${address}/graphql`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ query }),
  });
  return response.json();
}

describe('the server', () => {
  it('starts an empty lab, ends cleanly when told to, and keeps what it knew', async () => {
    const first = await started();
    await ask(first.address, 'mutation { addRoom(input: { name: "wet bench" }) { __typename } }');
    first.child.kill('SIGTERM');
    expect(await first.ended).toBe(0);

    const second = await started();
    expect(await ask(second.address, '{ lab { isDemo } rooms(first: 5) { nodes { name } } }')).toEqual({
      data: { lab: { isDemo: false }, rooms: { nodes: [{ name: 'wet bench' }] } },
    });
    second.child.kill('SIGTERM');
    expect(await second.ended).toBe(0);
  });

  it('never fills the demo over what is there', async () => {
    const third = await started({ DRUMKEEP_DEMO: 'yes' });
    expect(await ask(third.address, '{ lab { isDemo } containers(first: 1) { totalCount } }')).toEqual({
      data: { lab: { isDemo: false }, containers: { totalCount: 0 } },
    });
    third.child.kill('SIGTERM');
    expect(await third.ended).toBe(0);
  });

  it('refuses an address that others can reach, in a sentence', async () => {
    const { ended, words } = launched({ HOST: '0.0.0.0' });
    expect(await ended).toBe(1);
    expect(words()).toContain('invalid HOST: 0.0.0.0');
    expect(words().trim().split('\n')).toHaveLength(1);
  });
});
