// `npm run pictures`: the README's pictures, taken of the demo lab as it is now. With `-- --all FOLDER [--size N]`: every page
// at three widths, light and dark, of a lab of so many containers, to be looked at one by one.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { Browser, Page } from 'playwright-core';
import { labClock } from '../../admin/say/time.ts';
import { openBrowser, visit } from '../journeys/browser.ts';
import type { Served } from '../support/asked.ts';
import { labOfSize, sizes, type Size } from './labs.ts';
import { pictured } from './pages.ts';

const shelf = fileURLToPath(new URL('../../fixtures/pictures', import.meta.url));

/** Waits until nothing is being fetched or drawn any more. */
async function settle(page: Page): Promise<void> {
  await page.waitForLoadState('networkidle');
  await page.getByText('Looking …').first().waitFor({ state: 'detached', timeout: 60_000 });
  await page.evaluate(() => document.fonts.ready);
  await page.waitForTimeout(400);
}

async function readmePictures(browser: Browser, { address, ask }: Served): Promise<void> {
  const { containers } = (await ask(
    '{ containers(first: 1, orderBy: MOST_URGENT, filter: { isOpen: true, sorbent: "silica 63", kind: PORTION }) { nodes { label } } }',
  )) as { containers: { nodes: { label: string }[] } };
  const label = containers.nodes[0]?.label;
  if (label === undefined) throw new Error('the demo lab has no open portion to show');
  const { needs, lab } = (await ask('{ lab { timeZone } needs { steps { kind startAt } } }')) as {
    lab: { timeZone: string };
    needs: { steps: { kind: string; startAt: string }[] }[];
  };
  const wash = needs.flatMap(({ steps }) => steps).find(({ kind }) => kind === 'PRE_WASH');
  if (wash === undefined) throw new Error('the demo lab has no plates to wash');
  const washed = labClock(new Date(wash.startAt), lab.timeZone).slice(0, 10);
  const shots = [
    { name: 'open-now', path: `/?show=lid-off&c=${label}`, width: 1280, height: 940, colorScheme: 'light' },
    { name: 'container', path: `/c/${label}`, width: 1280, height: 1180, colorScheme: 'light' },
    { name: 'sheet', path: `/sheet?on=${washed}&part=evening`, width: 1000, height: 900, colorScheme: 'light' },
    { name: 'ovens', path: '/ovens', width: 1100, height: 1240, colorScheme: 'light' },
    { name: 'plan', path: '/orders?show=plan', width: 1100, height: 900, colorScheme: 'light' },
    { name: 'check', path: '/checks', width: 1060, height: 760, colorScheme: 'light' },
    { name: 'phone', path: '/?show=lid-off', width: 360, height: 780, colorScheme: 'dark' },
  ] as const;
  for (const { name, path, ...look } of shots) {
    const { page, context } = await visit(browser, address, look);
    await page.goto(path);
    await settle(page);
    if (name === 'container') {
      await page.getByRole('button', { name: 'it is closed' }).click();
      await settle(page);
    }
    if (name === 'plan') {
      await page.getByRole('button', { name: 'Plan what to buy' }).click();
      await page.getByRole('button', { name: 'Plan again' }).waitFor({ timeout: 120_000 });
      await page.getByRole('button', { name: 'Put this message away' }).click();
      await settle(page);
    }
    if (name === 'check') {
      await page
        .getByRole('link', { name: / against / })
        .last()
        .click();
      await settle(page);
    }
    if (name === 'ovens') {
      await page.getByRole('button', { name: 'Week', exact: true }).click();
      await settle(page);
    }
    await page.screenshot({ path: join(shelf, `${name}.png`) });
    await context.close();
  }
}

async function allPictures(browser: Browser, { address, ask }: Served, size: Size, folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const { containers } = (await ask('{ containers(first: 1, orderBy: MOST_URGENT) { nodes { label } } }')) as {
    containers: { nodes: { label: string }[] };
  };
  const label = containers.nodes[0]?.label;
  for (const width of [360, 768, 1280]) {
    for (const colorScheme of ['light', 'dark'] as const) {
      const { page, context } = await visit(browser, address, { width, height: width < 500 ? 780 : 900, colorScheme });
      for (const { name, path, act } of pictured) {
        const to = path(label);
        if (to === null) continue;
        await page.goto(to);
        await settle(page);
        await act?.(page);
        await page.waitForTimeout(200);
        const fullPage = size !== '5000';
        await page.screenshot({ path: join(folder, `${name}-${size}-${width}-${colorScheme}.png`), fullPage });
      }
      await context.close();
    }
  }
}

const { values } = parseArgs({ options: { all: { type: 'string' }, size: { type: 'string' } } });
const wanted = values.size === undefined ? sizes : sizes.filter((size) => size === values.size);
if (wanted.length === 0) throw new Error(`unknown --size: ${values.size}, one of ${sizes.join(', ')}`);
const browser = await openBrowser();
try {
  for (const size of values.all === undefined ? (['80'] as const) : wanted) {
    const lab = await labOfSize(size);
    try {
      if (values.all === undefined) await readmePictures(browser, lab);
      else await allPictures(browser, lab, size, values.all);
    } finally {
      await lab.stop();
    }
  }
} finally {
  await browser.close();
}
