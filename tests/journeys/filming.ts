// A browser whose camera sees one symbol: a container's code as its label has it.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { openBrowser } from './browser.ts';
import { picture, writeFilm } from './symbols.ts';

/** The signs of a label as a symbol holds them. */
export const signs = (label: string): string => label.replace('-', '');

/** `close` ends the browser and takes its film away. */
export async function openFilming(label: string): Promise<{ browser: Browser; close: () => Promise<void> }> {
  const folder = mkdtempSync(join(tmpdir(), 'drumkeep-film-'));
  const film = join(folder, 'label.y4m');
  writeFilm(await picture({ bcid: 'datamatrix', text: signs(label) }), film);
  const browser = await openBrowser([
    '--use-fake-device-for-media-stream',
    '--use-fake-ui-for-media-stream',
    `--use-file-for-fake-video-capture=${film}`,
  ]);
  const close = async (): Promise<void> => {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  };
  return { browser, close };
}
