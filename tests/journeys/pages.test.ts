// Every page, wide and narrow, light and dark: nothing an accessibility check finds, nothing asked of a foreign host, nothing that jumps.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, visit, type Visit } from './browser.ts';
import { findings } from './looked-at.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';
import { stockShelf, type Shelf } from './shelf.ts';

let served: Served;
let browser: Browser;
let shelf: Shelf;

beforeAll(async () => {
  [served, browser] = await Promise.all([serve(), openBrowser()]);
  shelf = await stockShelf(served);
  await served.tell('requestDrying', { label: shelf.forgotten, why: 'for Friday' });
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

/** Opens everything that can be opened on the page, so that it is checked too. */
async function unfold(page: Page): Promise<void> {
  await page.locator('details').evaluateAll((all) => {
    for (const details of all) (details as HTMLDetailsElement).open = true;
  });
}

const pages: { name: string; path: () => string; ready: string | RegExp; act?: (page: Page) => Promise<void> }[] = [
  {
    name: 'open now, with a form open',
    path: () => '/',
    ready: '1 to redry first',
    act: async (page) => {
      await page.locator('main').getByRole('button', { name: /^More/ }).first().click();
      await page.getByRole('button', { name: 'Weigh' }).first().click();
      await page.getByRole('button', { name: 'At another time …' }).last().click();
    },
  },
  { name: 'all stock, with a container beside it', path: () => `/?show=all&c=${shelf.drum}`, ready: 'Good to use' },
  {
    name: 'a container, with something recorded and something else to choose',
    path: () => `/c/${shelf.forgotten}`,
    ready: 'What happened',
    act: async (page) => {
      await page.getByRole('button', { name: 'Something else …' }).click();
      await page.getByRole('button', { name: 'Mixed or rolled' }).click();
      await page.getByRole('button', { name: 'Record it' }).click();
      await page.getByRole('button', { name: 'It was earlier' }).click();
      await page
        .getByRole('button', { name: /^Correct/ })
        .first()
        .click();
    },
  },
  {
    name: 'a container’s water as a table',
    path: () => `/c/${shelf.drum}`,
    ready: 'What happened',
    act: (page) => page.getByRole('button', { name: 'as a table' }).click(),
  },
  {
    name: 'rooms and air, with a file understood',
    path: () => '/air',
    ready: 'wet bench',
    act: async (page) => {
      const buffer = Buffer.from('time,temperature C,humidity %\n03/04/2026 10:00,21,40\n03/04/2026 10:05,21,41\n');
      await page.locator('input[type=file]').setInputFiles({ name: 'north.csv', mimeType: 'text/csv', buffer });
      await page.getByRole('heading', { name: 'north.csv' }).waitFor();
    },
  },
  { name: 'came in', path: () => '/came-in', ready: 'Lot number, as printed' },
  {
    name: 'to dry',
    path: () => '/to-dry',
    ready: 'for Friday',
    act: (page) => page.getByRole('button', { name: 'Dried' }).click(),
  },
  { name: 'sorbents', path: () => '/sorbents', ready: 'Silica 40 to 63 µm' },
  {
    name: 'the list of keys',
    path: () => '/',
    ready: '1 to redry first',
    act: (page) => page.getByRole('button', { name: 'Keys' }).click(),
  },
  { name: 'a label nobody has', path: () => '/c/ZZZ-ZZZ', ready: /Nothing here is called|invalid label/ },
  { name: 'an address that leads nowhere', path: () => '/attic', ready: 'There is no page at /attic' },
];
const looks = [
  { width: 360, height: 780, colorScheme: 'dark' },
  { width: 1280, height: 900, colorScheme: 'light' },
] as const;

describe.each(looks)('$width px wide, $colorScheme', (look) => {
  it.each(pages)('$name is whole', async ({ path, ready, act }) => {
    const { page, context, foreign, complaints } = await visit(browser, served.address, look);
    await page.goto(path());
    await page.getByText(ready).filter({ visible: true }).first().waitFor();
    await unfold(page);
    await act?.(page);
    await page.waitForTimeout(300);
    expect(await findings(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    expect(foreign).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});

describe('hands and eyes', () => {
  const open = (width = 360): Promise<Visit> => visit(browser, served.address, { width, height: 780 });

  it('everything one taps is at least 44 px high on a phone', async () => {
    const { page, context } = await open();
    await page.goto('/');
    await page.getByText('1 to redry first').waitFor();
    const small = await page
      .locator('main button, main select, main summary, main input')
      .evaluateAll((controls) =>
        controls
          .map((control) => ({ text: control.textContent?.trim(), height: control.getBoundingClientRect().height }))
          .filter(({ height }) => height > 0 && height < 44),
      );
    expect(small).toEqual([]);
    await context.close();
  });

  it('the page does not jump while it fills', async () => {
    for (const width of [360, 1280]) {
      const { page, context } = await open(width);
      await page.addInitScript(() => {
        const shifts: number[] = [];
        Object.assign(globalThis, { shifts });
        new PerformanceObserver((list) => {
          for (const entry of list.getEntries()) shifts.push((entry as PerformanceEntry & { value: number }).value);
        }).observe({ type: 'layout-shift', buffered: true });
      });
      await page.goto('/');
      await page.getByText('1 to redry first').waitFor();
      await page.waitForTimeout(500);
      const shifts = await page.evaluate(() => (globalThis as unknown as { shifts: number[] }).shifts);
      expect(shifts.reduce((sum, shift) => sum + shift, 0)).toBeLessThan(0.02);
      await context.close();
    }
  });

  it('a scanner’s code opens its container from any page', async () => {
    const { page, context } = await open(1280);
    await page.goto('/sorbents');
    await page.getByRole('heading', { name: 'Sorbents' }).waitFor();
    // In one go, as a scanner types: keys sent one by one from here may come too slowly on a busy machine.
    await page.evaluate(
      (keys) => {
        for (const key of keys) document.body.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
      },
      [...shelf.drum, 'Enter'],
    );
    await page.waitForURL(`**/c/${shelf.drum}`);
    await context.close();
  });

  it('the list can be walked and worked with keys alone', async () => {
    const { page, context } = await open(1280);
    await page.goto('/?show=all');
    await page.getByRole('heading', { name: /Good to use/ }).waitFor();
    await page.keyboard.press('j');
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.closest('[data-label]')?.getAttribute('data-label')))
      .toBe(shelf.forgotten);
    await page.keyboard.press('w');
    await page.getByLabel('Water found').waitFor();
    await page.keyboard.press('Escape');
    await page.getByLabel('Water found').waitFor({ state: 'detached' });
    await context.close();
  });

  it('when the server is gone the page says so, keeps what it shows, and comes back by itself', async () => {
    const { page, context } = await open(1280);
    await page.goto('/');
    await page.getByText('1 to redry first').waitFor();
    await page.route('**/graphql', (route) => route.abort());
    await page.getByRole('button', { name: 'Close', exact: true }).first().click();
    await page.getByText('Kept on this machine').waitFor();
    expect(await page.locator('[data-label]').count()).toBeGreaterThan(0);
    await page.unroute('**/graphql');
    await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
    await page.getByText('1 to redry first').waitFor();
    await context.close();
  });

  it('on paper there are no buttons, and the answers stay', async () => {
    const { page, context } = await open(1280);
    await page.goto('/');
    await page.getByText('1 to redry first').waitFor();
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('button').count()).toBe(0);
    expect(
      await page
        .getByText(/^Redry first/)
        .first()
        .isVisible(),
    ).toBe(true);
    expect((await page.pdf({ format: 'A4' })).length).toBeGreaterThan(5_000);
    await context.close();
  });
});
