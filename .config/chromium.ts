// The browser of the journeys: Debian's Chromium, or one that is there already. Run as a program, it installs it.
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

function found(): string | undefined {
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  const named = ['chromium', 'chromium-browser', 'google-chrome'].flatMap((name) =>
    folders.map((folder) => join(folder, name)),
  );
  return [process.env['DRUMKEEP_CHROMIUM'] ?? '', ...named, ...elsewhere].find((file) => file !== '' && runnable(file));
}

/** Where the browser is. Throws when there is none: a journey that cannot run has failed. */
export function chromiumPath(): string {
  const file = found();
  if (file === undefined)
    throw new Error('missing Chromium: install the package chromium, or name a browser in DRUMKEEP_CHROMIUM');
  return file;
}

function installChromium(): void {
  if (process.platform !== 'linux' || process.getuid?.() !== 0) return;
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  for (const command of [
    ['update', '-qq'],
    ['install', '-y', '-qq', 'chromium'],
  ]) {
    console.error(`apt-get ${command.join(' ')} …`);
    spawnSync('apt-get', command, { stdio: ['ignore', 2, 2], env: environment });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  if (found() === undefined) installChromium();
  try {
    chromiumPath();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}
