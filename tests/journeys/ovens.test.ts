// From "redry" on the open list to dried, weighed and good, on a phone by the oven; and a batch moved by the keys.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, visit } from './browser.ts';
import { findings, isTooWide, tooSmall } from './looked-at.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';
import { stockShelf, type Shelf } from './shelf.ts';

let served: Served;
let browser: Browser;
let shelf: Shelf;

beforeAll(async () => {
  [served, browser] = await Promise.all([serve(), openBrowser()]);
  shelf = await stockShelf(served);
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

interface SeenRun {
  id: string;
  state: string;
  isPinned: boolean;
  plannedStart: string;
  loads: { container: { label: string; dryGrams: number } }[];
}
const runOf = async (label: string): Promise<SeenRun | undefined> => {
  const query = '{ dryingRuns { id state isPinned plannedStart loads { container { label dryGrams } } } }';
  const { dryingRuns } = (await served.ask(query)) as { dryingRuns: SeenRun[] };
  return dryingRuns.find(({ loads }) => loads.some(({ container }) => container.label === label));
};
const isWhole = async (page: Page): Promise<void> => {
  expect(await findings(page)).toEqual([]);
  expect(await isTooWide(page)).toBe(false);
  expect(await tooSmall(page)).toEqual([]);
};
const day = (at: string): string =>
  new Intl.DateTimeFormat('sv-SE', { timeZone: 'Europe/Helsinki' }).format(new Date(at));

describe('the ovens', () => {
  it('a lab without an oven is asked for its first, on a phone', async () => {
    const { page, context } = await visit(browser, served.address, { width: 360, height: 780 });
    await page.goto('/ovens');
    await page.getByText('No oven yet.').waitFor();
    await page.getByLabel('Name', { exact: true }).fill('vacuum oven');
    await page.getByLabel('Shelves').fill('2');
    await page.getByLabel('One shelf').fill('900');
    await page.getByLabel('Free above a shelf').fill('twelve');
    await page.getByLabel('Somebody can load it').selectOption('in hours of its own');
    await page.getByLabel('On', { exact: true }).selectOption('every day');
    await page.getByLabel('From', { exact: true }).fill('00:00');
    await page.getByLabel('To', { exact: true }).fill('23:59');
    await page.getByRole('button', { name: 'Add it' }).click();
    // Refused, and nothing that was typed is lost.
    await page.getByText('a number such as 50').waitFor();
    await page.getByLabel('Free above a shelf').fill('120');
    await page.getByRole('button', { name: 'Add it' }).click();
    await page.getByRole('heading', { name: 'vacuum oven' }).first().waitFor();
    await page.getByText('Mon to Sun 00:00 to 23:59').waitFor();
    await isWhole(page);
    await context.close();
  });

  it('what is to redry is asked for, planned, put in, taken out, cooled, weighed, and can be used', async () => {
    const { page, context, complaints } = await visit(browser, served.address, {
      width: 360,
      height: 780,
      colorScheme: 'dark',
    });
    page.setDefaultTimeout(20_000);
    await page.goto('/');
    const line = page.locator(`[data-label="${shelf.forgotten}"]`);
    await line
      .getByRole('button', { name: /To dry|Dry/ })
      .first()
      .click();
    await page.getByLabel('What for').fill('for Friday');
    await page.getByLabel('How soon').selectOption('soon');
    await page.getByRole('button', { name: 'Put on the list' }).click();
    await page
      .getByRole('status')
      .getByText(/to be dried/i)
      .waitFor();

    await page.goto('/to-dry');
    await page.getByText('Waiting', { exact: true }).waitFor();
    await page.getByText(/no hurry given, soon/).waitFor();
    await page.getByRole('button', { name: 'Plan the ovens' }).click();
    await page.getByRole('heading', { name: /proven/ }).waitFor();
    await page.getByText(/^Planned .*, vacuum oven/).waitFor();
    await isWhole(page);
    await page.getByRole('link', { name: /^Planned/ }).click();

    // By the oven: heat gloves on, one click each. It went in an hour ago, and nobody wrote it down.
    await page.getByText(/Shield the glass/).waitFor();
    await page.getByRole('button', { name: 'It was earlier …' }).click();
    await page.getByRole('group', { name: 'Times at hand' }).getByRole('button').first().click();
    await page.getByRole('button', { name: 'Started: door closed' }).click();
    await page.getByText(/Heat gloves/).waitFor();
    await page.getByRole('button', { name: 'Out of the oven' }).click();
    await page.getByRole('button', { name: 'Cooled', exact: true }).waitFor();
    // Taken back, and done again.
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Out of the oven' }).click();
    await page.getByRole('button', { name: 'Cooled', exact: true }).click();
    await page.getByRole('button', { name: 'Finish …' }).click();
    const dry = (await runOf(shelf.forgotten))?.loads[0]?.container.dryGrams ?? 0;
    expect(dry).toBeGreaterThan(50);
    await page.getByLabel(/^Water, known/).selectOption('weighed after cooling');
    await page.getByLabel(/^Without the tray/).fill((dry * 0.5).toFixed(2));
    await page.getByRole('button', { name: 'It is dry' }).click();
    await page.getByText(/of dry sorbent that are in it/).waitFor();
    await isWhole(page);
    await page.getByLabel(/^Without the tray/).fill((dry * 1.006).toFixed(2));
    await page.getByRole('button', { name: 'It is dry' }).click();
    await page
      .getByRole('status')
      .getByText(/Dried: .* to 0\.\d+\s% water/)
      .waitFor();
    expect((await runOf(shelf.forgotten))?.state).toBe('FINISHED');

    await page.goto(`/c/${shelf.forgotten}`);
    await page
      .getByText(/Good to use|Use (soon|by|within)/)
      .first()
      .waitFor();
    await page.goto('/to-dry');
    await page.getByRole('heading', { name: 'Dried since yesterday' }).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('a batch is moved by the keys and fixed, and let go again', async () => {
    const tomorrow = new Date(Date.now() + 30 * 3_600_000).toISOString();
    const nine = `${day(tomorrow)}T09:00:00+02:00`;
    await served.tell('requestDrying', { label: shelf.drum, dryGrams: 300, why: 'for Friday', readyAt: nine });
    await served.tell('planOvens', {});
    const before = await runOf(shelf.drum);
    if (!before) throw new Error('nothing was planned');
    const { page, context, complaints } = await visit(browser, served.address);
    await page.goto(`/ovens?day=${day(before.plannedStart)}`);
    const batch = page.locator(`[data-batch="${before.id}"]`);
    await batch.focus();
    // Away and back: Escape leaves it where it was.
    await page.keyboard.press('ArrowRight');
    await page.getByText(/Enter fixes it there, Escape leaves it/).waitFor({ state: 'attached' });
    await page.keyboard.press('Escape');
    expect((await runOf(shelf.drum))?.plannedStart).toBe(before.plannedStart);
    for (const key of ['ArrowRight', 'Shift+ArrowRight', 'Enter']) await page.keyboard.press(key);
    await page
      .getByRole('status')
      .getByText(/Fixed in its place/)
      .waitFor();
    const after = await runOf(shelf.drum);
    expect(after?.isPinned).toBe(true);
    expect(Date.parse(after?.plannedStart ?? '') % 900_000).toBe(0);
    expect(Date.parse(after?.plannedStart ?? '')).toBeGreaterThanOrEqual(Date.parse(before.plannedStart) + 3_600_000);

    // The same by the plain form, beside why it stands there.
    await batch.press('Enter');
    const opened = page.getByRole('article', { name: 'Batch in vacuum oven' });
    await opened.getByText(/Why here and then/).waitFor();
    expect(await findings(page)).toEqual([]);
    await opened.getByRole('button', { name: 'Let it go' }).click();
    await expect.poll(async () => (await runOf(shelf.drum))?.isPinned).toBe(false);
    await opened.getByRole('button', { name: 'Fix it at a time …' }).click();
    await opened.getByLabel('Goes in').fill(`${day(before.plannedStart)}T14:30`);
    await opened.getByRole('button', { name: 'Fix it there' }).click();
    await expect.poll(async () => (await runOf(shelf.drum))?.isPinned).toBe(true);
    await page.getByRole('button', { name: 'as a list' }).click();
    await page
      .getByText(/planned, fixed/)
      .first()
      .waitFor();
    await page.getByRole('button', { name: 'Week', exact: true }).click();
    await page.getByRole('heading', { name: /tomorrow/i }).waitFor();
    expect(await findings(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
