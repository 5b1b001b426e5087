// A server in a process of its own, as users start it: what is measured must not share it.
import { spawn, type ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { asked, type Served } from './asked.ts';
import { labFolder, type LabWanted } from './lab-folder.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

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

export async function serveApart(wanted: LabWanted = {}): Promise<Served> {
  const { settings, remove } = labFolder(wanted);
  const server = spawn(process.execPath, ['--import', 'tsx', 'api/server.ts'], {
    cwd: root,
    env: { ...process.env, ...settings },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = new Promise<void>((gone) => server.once('exit', () => gone()));
  const address = await addressOf(server);
  async function stop(): Promise<void> {
    server.kill('SIGTERM');
    await ended;
    remove();
  }
  return { address, ...asked(address), stop };
}
