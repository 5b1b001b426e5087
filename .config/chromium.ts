// The browser of the journeys: Debian's Chromium without its windows, which opens a page in half the time, or one that is
// there already. Run as a program, it installs it.
import { spawnSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const elsewhere = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

function runnable(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** The same engine and the same pages; `npm run long` takes the one with windows. */
const windowless = 'chromium-headless-shell';
const windowed = ['chromium', 'chromium-browser', 'google-chrome'];

const isLong = process.env['DRUMKEEP_LONG'] === 'yes';

/** The first of these programs that is on the path. */
function onPath(names: readonly string[]): string | undefined {
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  return names.flatMap((name) => folders.map((folder) => join(folder, name))).find(runnable);
}

function found(): string | undefined {
  const named = process.env['DRUMKEEP_CHROMIUM'] ?? '';
  if (named !== '' && runnable(named)) return named;
  const names = isLong ? [...windowed, windowless] : [windowless, ...windowed];
  return onPath(names) ?? elsewhere.find(runnable);
}

/** Where the browser is. Throws when there is none: a journey that cannot run has failed. */
export function chromiumPath(): string {
  const file = found();
  if (file === undefined)
    throw new Error(`missing Chromium: install the package ${windowless}, or name a browser in DRUMKEEP_CHROMIUM`);
  return file;
}

/** Where it may and can; a distribution may have only the one with windows. */
function install(name: string): void {
  if (process.platform !== 'linux' || process.getuid?.() !== 0) return;
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  for (const command of [
    ['update', '-qq'],
    ['install', '-y', '-qq', name],
  ]) {
    console.error(`apt-get ${command.join(' ')} …`);
    spawnSync('apt-get', command, { stdio: ['ignore', 2, 2], env: environment });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const isNamed = (process.env['DRUMKEEP_CHROMIUM'] ?? '') !== '';
  if (!isNamed && !isLong && onPath([windowless]) === undefined) install(windowless);
  if (found() === undefined) install('chromium');
  try {
    chromiumPath();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}
