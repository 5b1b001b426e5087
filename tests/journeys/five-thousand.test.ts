// A lab with five thousand containers: it opens, one is found by its code, the list is scrolled to its end, narrowed, worked on;
// and what somebody is about to tap stays where it is.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, visit } from './browser.ts';
import { findings, isTooWide } from './looked-at.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';

/** A busy machine takes its time. */
const soon = { timeout: 30_000 };

let served: Served;
let browser: Browser;

beforeAll(async () => {
  [served, browser] = await Promise.all([serve({ large: 5_000 }), openBrowser()]);
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

const lines = (page: Page) => page.locator('[data-label]');
const labelAt = (page: Page, place: number) =>
  page.locator(`[data-label][aria-posinset="${place}"]`).getAttribute('data-label');
const shift = (page: Page) => page.evaluate(() => (globalThis as unknown as { shift: number }).shift);

/** Sums what moves by itself, from the first paint on. */
async function watched(page: Page): Promise<void> {
  await page.addInitScript(() => {
    Object.assign(globalThis, { shift: 0 });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as (PerformanceEntry & { value: number })[])
        (globalThis as unknown as { shift: number }).shift += entry.value;
    }).observe({ type: 'layout-shift', buffered: true });
  });
}

const looks = [
  { width: 360, height: 780, colorScheme: 'dark' },
  { width: 1280, height: 900, colorScheme: 'light' },
] as const;

describe.each(looks)('five thousand containers, $width px, $colorScheme', (look) => {
  it('open without a jump, hold few elements, and scroll to the end', async () => {
    const { page, context, complaints } = await visit(browser, served.address, look);
    await watched(page);
    await page.goto('/?show=all');
    await lines(page).first().waitFor();
    await page.waitForTimeout(700);
    expect(await shift(page)).toBeLessThan(0.02);
    const groups = await page.locator('h2 .muted').allTextContents();
    expect(groups.reduce((sum, size) => sum + Number(size), 0)).toBe(5_000);
    expect(await lines(page).first().getAttribute('aria-setsize')).toBe('5000');

    // Down by screens, as a hand does; then to the very end, as a key does.
    for (let screen = 0; screen < 25; screen += 1) {
      await page.mouse.wheel(0, look.height);
      await page.waitForTimeout(40);
    }
    await expect.poll(() => page.locator('.awaited').count(), soon).toBe(0);
    await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
    const last = page.locator('[data-label][aria-posinset="5000"]');
    await expect
      .poll(
        async () => {
          await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
          return last.isVisible();
        },
        { timeout: 30_000 },
      )
      .toBe(true);
    expect(await page.evaluate(() => document.querySelectorAll('*').length)).toBeLessThan(4_000);
    expect(await isTooWide(page)).toBe(false);
    expect(await findings(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  }, 180_000);
});

describe('among five thousand', () => {
  it('one is found by its code, the view is narrowed in the address, and a line is worked on', async () => {
    const { page, context } = await visit(browser, served.address);
    await page.goto('/?show=all');
    await lines(page).first().waitFor();
    const { containers } = (await served.ask(
      '{ containers(last: 1, orderBy: LABEL, filter: { inUse: true }) { nodes { label } } }',
    )) as { containers: { nodes: { label: string }[] } };
    const wanted = containers.nodes[0]?.label ?? '';
    await page.keyboard.press('/');
    await page.keyboard.type(wanted.replace('-', '').toLowerCase());
    await page.keyboard.press('Enter');
    await page.waitForURL(`**/c/${wanted}`);
    await page.goBack();
    await page.getByText('Narrow', { exact: true }).click();
    await page.getByLabel('Room').selectOption('cold store');
    await page.waitForURL(/room=cold/);
    await expect.poll(() => page.getByText('· cold store').count(), soon).toBeGreaterThan(3);
    expect(await page.getByText('· wet bench').count()).toBe(0);
    await page.goto(`${page.url()}&show=lid-off`.replace('show=all&', ''));
    const open = lines(page).first();
    await open.waitFor();
    const label = await open.getAttribute('data-label');
    await open.getByRole('button', { name: 'Close', exact: true }).click();
    await page
      .getByRole('status')
      .getByText(/^Closed/)
      .waitFor();
    const after = (await served.ask(`{ container(label: "${label}") { isOpen } }`))['container'];
    expect(after).toEqual({ isOpen: false });
    await context.close();
  }, 180_000);

  it('the keys walk on past what was on the screen', async () => {
    const { page, context } = await visit(browser, served.address);
    await page.goto('/?show=all');
    await lines(page).first().waitFor();
    for (let step = 0; step < 30; step += 1) {
      await page.keyboard.press('j');
      await page.waitForTimeout(70);
    }
    const at = () =>
      page.evaluate(() => Number(document.activeElement?.closest('[data-label]')?.getAttribute('aria-posinset')));
    await expect.poll(at, soon).toBeGreaterThanOrEqual(25);
    await context.close();
  }, 180_000);

  it.each(['a key', 'a finger'])(
    'news does not move what %s is at, and is put in order when asked',
    async (by) => {
      const { page, context } = await visit(browser, served.address);
      await page.goto('/?show=all');
      await lines(page).first().waitFor();
      const [first, second, third] = [await labelAt(page, 1), await labelAt(page, 2), await labelAt(page, 3)];
      if (by === 'a key') await page.locator(`[data-label="${second}"] [data-line]`).focus();
      else await page.locator(`[data-label="${second}"]`).dispatchEvent('touchmove');
      const top = () => page.locator(`[data-label="${second}"]`).evaluate((line) => line.getBoundingClientRect().top);
      const before = await top();
      await served.tell('finishContainer', { label: first });
      await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
      await page.getByRole('button', { name: /changed? places?: put in order/ }).waitFor();
      expect(await top()).toBe(before);
      expect(await labelAt(page, 3)).toBe(third);
      await page.getByRole('button', { name: /put in order/ }).click();
      await expect.poll(() => labelAt(page, 1), soon).toBe(second);
      await context.close();
    },
    180_000,
  );
});
