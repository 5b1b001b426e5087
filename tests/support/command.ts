// Runs one of the project's commands as a person would: in a process of its own, by its words and exit code.
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Ended {
  code: number | null;
  stdout: string;
  stderr: string;
}

/** `npm run --silent NAME -- ARGUMENTS`, with these variables on top of the environment. */
export function command(name: string, args: readonly string[] = [], env: Record<string, string> = {}): Promise<Ended> {
  const child = spawn(process.execPath, [`${root}.config/ready.mjs`, name, ...args], {
    cwd: root,
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended: Ended = { code: null, stdout: '', stderr: '' };
  child.stdout.setEncoding('utf8').on('data', (text: string) => (ended.stdout += text));
  child.stderr.setEncoding('utf8').on('data', (text: string) => (ended.stderr += text));
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => resolve({ ...ended, code }));
  });
}
