// A server of its own for a journey: a free port, a folder that goes afterwards, and the admin as it is now.
import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Served {
  address: string;
  /** Asks the API; throws what it complains of. */
  ask: (query: string, variables?: object) => Promise<Record<string, unknown>>;
  /** Tells an act; throws when it is refused. */
  tell: (mutation: string, input: object) => Promise<Record<string, unknown>>;
  stop: () => Promise<void>;
}

/** Where the server says it is; what it says on standard error is passed on. */
function addressOf(server: ChildProcess): Promise<string> {
  return new Promise((found, failed) => {
    let said = '';
    server.stdout?.setEncoding('utf8').on('data', (text: string) => {
      said += text;
      const address = /http:\/\/\S+/.exec(said)?.[0];
      if (address) found(address);
    });
    server.stderr?.setEncoding('utf8').on('data', (text: string) => {
      said += text;
      process.stderr.write(text);
    });
    server.once('exit', (code) => failed(new Error(`the server ended with ${code}: ${said}`)));
  });
}

/** The file of a lab of so many containers; made once a day, since estimating thousands takes its time. */
function largeLab(count: number): string {
  const folder = join(tmpdir(), `drumkeep-large-${count}-${new Date().toISOString().slice(0, 10)}`);
  const file = join(folder, 'drumkeep.sqlite');
  if (existsSync(file)) return file;
  const making = mkdtempSync(join(tmpdir(), 'drumkeep-large-'));
  const args = ['--import', 'tsx', 'tests/support/large-lab.ts', making, String(count)];
  const made = spawnSync(process.execPath, args, { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] });
  if (made.status !== 0) throw new Error('the large lab was not written');
  rmSync(folder, { recursive: true, force: true });
  renameSync(making, folder);
  return file;
}

/** `large` opens a lab of so many containers. */
export async function serve({ demo = false, large = 0 }: { demo?: boolean; large?: number } = {}): Promise<Served> {
  if (!existsSync(join(root, '.data/admin/index.html'))) throw new Error('the admin is not built: npm run build');
  const folder = mkdtempSync(join(tmpdir(), 'drumkeep-journey-'));
  const settings = {
    PORT: '0',
    DRUMKEEP_DATA: folder,
    DRUMKEEP_DEMO: demo ? 'yes' : 'no',
    DRUMKEEP_TIME_ZONE: 'Europe/Helsinki',
    DRUMKEEP_LOG: 'error',
  };
  if (large > 0) copyFileSync(largeLab(large), join(folder, 'drumkeep.sqlite'));
  const server = spawn(process.execPath, ['--import', 'tsx', 'api/server.ts'], {
    cwd: root,
    env: { ...process.env, ...settings },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const address = await addressOf(server);

  async function ask(query: string, variables: object = {}): Promise<Record<string, unknown>> {
    const response = await fetch(`${address}/graphql`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ query, variables }),
    });
    const reply = (await response.json()) as { data?: Record<string, unknown>; errors?: { message: string }[] };
    if (reply.errors?.[0]) throw new Error(reply.errors[0].message);
    return reply.data ?? {};
  }
  async function tell(name: string, input: object): Promise<Record<string, unknown>> {
    const type = `${name.charAt(0).toUpperCase()}${name.slice(1)}Input`;
    const answers: Record<string, string> = {
      receiveLot: '... on LotReceived { containers { label } }',
      takePortion: '... on Recorded { made { label } }',
      receiveList: '... on ListReceived { containerCount }',
    };
    const query = `mutation ($input: ${type}!) { ${name}(input: $input) { __typename ... on Refusal { message } ${answers[name] ?? ''} } }`;
    const answer = (await ask(query, { input }))[name] as Record<string, unknown>;
    if (answer['__typename'] === 'Refusal') throw new Error(`${name}: ${String(answer['message'])}`);
    return answer;
  }
  const ended = new Promise<void>((gone) => server.once('exit', () => gone()));
  async function stop(): Promise<void> {
    server.kill('SIGTERM');
    await ended;
    rmSync(folder, { recursive: true, force: true });
  }
  return { address, ask, tell, stop };
}
