// Runs a program and waits for it; signals that we get are its to answer.
import { spawn, spawnSync } from 'node:child_process';
import { constants } from 'node:os';
import { fileURLToPath } from 'node:url';

/** The project's folder, with a slash at its end. */
export const root = fileURLToPath(new URL('..', import.meta.url));

export const say = (line) => process.stderr.write(`${line}\n`);

/** npm started us for this very script. */
const byNpm = process.env.npm_lifecycle_event === process.argv[2];

/** Where the person stood who called: npm runs scripts in the project's folder whatever that was. */
const callersFolder = () => (byNpm ? process.env.INIT_CWD : undefined) ?? process.cwd();

/** npm's own shell dies of a signal without passing it on; then we are nobody's child any more, and end as told. */
function whenOrphaned(end) {
  const parent = process.ppid;
  const looking = setInterval(() => {
    if (process.ppid === parent) return;
    clearInterval(looking);
    end('SIGTERM');
  }, 200);
  looking.unref();
}

/** Runs Node with these arguments; gives its exit code. */
export function runNode(args, { from = 'project' } = {}) {
  const child = spawn(process.execPath, args, { cwd: from === 'caller' ? callersFolder() : root, stdio: 'inherit' });
  const pass = (signal) => child.kill(signal);
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, pass);
  if (byNpm) whenOrphaned(pass);
  return new Promise((ended, failed) => {
    child.on('error', failed);
    child.on('exit', (code, signal) => ended(code ?? 128 + (constants.signals[signal] ?? 0)));
  });
}

/** Runs one of the project's TypeScript files. */
export function runTypeScript(file, args, options) {
  return runNode(['--import', import.meta.resolve('tsx'), root + file, ...args], options);
}

/** Runs Node to its end with its output on our standard error; throws with what went wrong. */
export function mustRun(what, args, env = process.env) {
  const { status, signal } = spawnSync(process.execPath, args, { cwd: root, env, stdio: ['ignore', 2, 2] });
  if (status !== 0) throw new Error(`${what} failed (${signal ?? `code ${status}`})`);
}
