// An empty lab begins, and a new lot comes from the lab's own list to a label to a scan, in a real browser.
import type { Browser, Page } from 'playwright-core';
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { openBrowser, visit, type Visit } from './browser.ts';
import { findings } from './looked-at.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';

// Accessibility is checked at every step, twice: more than a minute where the machine is busy with other things.
vi.setConfig({ testTimeout: 180_000 });

let served: Served;
let browser: Browser;
const list = readFileSync(new URL('../../fixtures/lists/one-bad-line.tsv', import.meta.url), 'utf8');

beforeAll(async () => {
  [served, browser] = await Promise.all([serve(), openBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

/** Nothing an accessibility check finds, nothing sideways, nothing too small for a thumb: wide and light, narrow and dark. */
async function sound(page: Page): Promise<void> {
  for (const [width, colorScheme] of [
    [1280, 'light'],
    [360, 'dark'],
  ] as const) {
    await page.setViewportSize({ width, height: 800 });
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    expect(await findings(page)).toEqual([]);
    const found = await page.evaluate(() => {
      const targets = [
        ...document.querySelectorAll<HTMLElement>('main :is(.button, button, select, summary, textarea)'),
      ];
      return {
        sideways: document.documentElement.scrollWidth > window.innerWidth,
        small: targets
          .filter((target) => target.getClientRects().length > 0 && target.getBoundingClientRect().height < 43.5)
          .map(({ outerHTML }) => outerHTML.slice(0, 120)),
      };
    });
    expect(found).toEqual({ sideways: false, small: [] });
  }
}

async function paste(page: Page, text: string): Promise<void> {
  await page.getByLabel(/paste them here/).fill(text);
  await page.getByRole('button', { name: 'Read it' }).click();
  await page.waitForURL(/list=./);
}

const containers = async (): Promise<number> =>
  ((await served.ask('{ lab { counts { containers } } }'))['lab'] as { counts: { containers: number } }).counts
    .containers;

describe('an empty lab', () => {
  it('begins: the first screen leads through rooms, the list and labels, and ticks what is done', async () => {
    const { page, context, complaints }: Visit = await visit(browser, served.address);
    await page.goto('/');
    await page.getByRole('heading', { name: 'Begin' }).waitFor();
    await page.getByRole('link', { name: 'Add a room' }).waitFor();
    await sound(page);
    await served.tell('addRoom', { name: 'wet bench', assumedHumidityPercent: 45, assumedTemperatureC: 22 });
    await served.tell('addSorbent', { name: 'Silica 40–63 µm', sorbentClass: 'silica' });
    await page.reload();
    await page.getByRole('heading', { name: 'Your rooms and their air, done' }).waitFor();
    await page.getByRole('link', { name: 'Bring your list' }).click();
    await page.getByRole('heading', { name: 'Bring the list you have' }).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('says where an address leads that leads nowhere, and how a list is brought', async () => {
    const { page, context } = await visit(browser, served.address);
    await page.goto('/attic');
    await page.getByRole('heading', { name: 'There is no page at /attic' }).waitFor();
    await sound(page);
    await page.goto('/came-in?list');
    await page.getByRole('heading', { name: 'Bring the list you have' }).waitFor();
    await sound(page);
    await context.close();
  });
});

describe('the list that the lab has', () => {
  it('goes from the spreadsheet to labels to a scan: a bad line holds all of it back, mended it comes in whole', async () => {
    const { page, context, complaints, foreign } = await visit(browser, served.address);
    await page.goto('/came-in?list');
    await paste(page, list);
    // Everything that is wrong, by line, and nothing is booked.
    await page.getByText('2 problems in 1 line').waitFor();
    await page.getByText('line 3').first().waitFor();
    await page.getByText('“a box”: should be an amount such as 500 g or 2.5 kg').waitFor();
    await page.getByText('“2026-02-31”: should be a day such as 2026-03-02').waitFor();
    expect(await page.getByRole('button', { name: 'Put it on the book' }).isDisabled()).toBe(true);
    await page.getByLabel(/Which sorbent is “Silica 40 to 63 µm”/).selectOption('is:Silica 40–63 µm');
    await page.getByText('1 answer given').waitFor();
    await sound(page);
    expect(await containers()).toBe(0);

    await page.getByRole('button', { name: 'Bring the mended list' }).click();
    await paste(page, list.replace('a box', '1 kg').replace('2026-02-31', '2026-02-28'));
    // What was answered holds for the mended list.
    await page.getByText('3 containers to put on the book').waitFor();
    await sound(page);
    await page.reload();
    await page.getByRole('button', { name: 'Put 3 containers on the book' }).click();
    await page.getByRole('heading', { name: '3 containers came in' }).waitFor();
    await sound(page);
    expect(await containers()).toBe(3);

    const codes = await page.locator('section a.code').allTextContents();
    expect(codes).toHaveLength(3);
    const [first = ''] = codes;
    const labels = await page.getByRole('link', { name: 'Print their labels' }).getAttribute('href');
    expect(labels).toBe(`/labels?c=${codes.join(',')}`);
    await page.getByRole('link', { name: 'Print their labels' }).click();
    await page.getByText(first).first().waitFor();

    // The code, typed on whatever page one is.
    await page.goto('/?show=all');
    await page.locator(`[data-label="${first}"]`).waitFor();
    await page.keyboard.press('/');
    await page.keyboard.type(first);
    await page.keyboard.press('Enter');
    await page.waitForURL(`**/c/${first}`);
    await page.getByRole('heading', { name: 'Silica 40–63 µm' }).waitFor();

    // The code it had until now finds it too, and a code with a sign misread offers it.
    await page.goto('/c/A-3');
    await page.getByText('until now A-3').waitFor();
    await sound(page);
    expect(foreign).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('is taken back in one tap while nothing happened since', async () => {
    const { page, context } = await visit(browser, served.address);
    await page.goto('/came-in?list');
    await paste(page, list.replace('a box', '1 kg').replace('2026-02-31', '2026-02-28').replaceAll('A-', 'B-'));
    await page.getByRole('button', { name: 'Put 3 containers on the book' }).click();
    await page.getByRole('button', { name: 'Take the list back' }).click();
    await page.getByRole('status').getByText('3 containers taken back').waitFor();
    expect(await containers()).toBe(3);
    await page.getByText('It was taken back, and can come in again.').waitFor();
    await context.close();
  });
});
