// How hot may it get: a recipe is changed, refused, kept and taken back; what would be left stands beside the fields.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
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
  await served.tell('requestDrying', { label: shelf.forgotten, why: 'for Friday' });
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

const recipe = (page: Page, of: string) => page.getByRole('region', { name: of });

it('a recipe is refused above what it stands, kept within it, and put back', async () => {
  const { page, context, foreign, complaints } = await visit(browser, served.address, {
    width: 360,
    colorScheme: 'dark',
  });
  await page.goto('/to-dry');
  await page.getByRole('link', { name: 'Recipes, and how hot each may get' }).click();
  const silica = recipe(page, 'silica gel');
  await silica
    .getByText(/10.mm of this, 60.min at 130.°C under vacuum: about 0\.1.% left; deepest tray \d+.mm\./)
    .waitFor();
  await silica.getByRole('button', { name: /^Change/ }).click();
  await silica.getByLabel('Temperature to').fill('230');
  await page.keyboard.press('Enter');
  await silica.getByText(/at most 200 °C for silica gel: above that it loses silanols/).waitFor();
  expect(await findings(page)).toEqual([]);
  expect(await tooSmall(page)).toEqual([]);
  expect(await isTooWide(page)).toBe(false);
  // Another upper temperature needs somebody who says so.
  await silica.getByLabel('Temperature to').fill('150');
  await silica.getByLabel('Never above').fill('180');
  await page.keyboard.press('Enter');
  await silica.getByText(/where the upper temperature is said/).waitFor();
  await silica.getByLabel('Which says so').fill('Osier & Tarn, March 2025');
  await page.keyboard.press('Enter');
  await silica.getByText('Never above 180').waitFor();
  await silica.getByText('130 to 150').waitFor();
  expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('Change');
  await page.getByRole('button', { name: 'Undo' }).click();
  await silica.getByText('130 to 160').waitFor();
  await silica.getByText('Never above 200').waitFor();
  expect([foreign, complaints]).toEqual([[], []]);
  await context.close();
});

it('beside a drying stands what it would leave, and what is too hot before anybody presses', async () => {
  const { page, context } = await visit(browser, served.address);
  await page.goto('/to-dry');
  await page.getByRole('button', { name: /^Dried/ }).click();
  const form = page.getByRole('form', { name: /^Dried/ });
  await form.getByText(/of this, 60.min at 130.°C under vacuum/).waitFor();
  await form.getByText(/this silica still keeps about/).waitFor();
  await form.getByLabel('Depth in the tray').fill('40');
  await form.getByText(/^40.mm of this/).waitFor();
  await form.getByLabel('Oven').fill('210');
  await form.getByText(/^At most 200 °C for silica gel/).waitFor();
  expect(await findings(page)).toEqual([]);
  await form.getByLabel('Oven').fill('150');
  await form.getByLabel('Cooled in the open for').fill('5');
  await form.getByRole('button', { name: 'It is dry' }).click();
  await page.getByText(/dried at 150.°C under vacuum for 60.min,? 40.mm deep/i).waitFor();
  await page.getByText('Nothing waits for the oven').waitFor();
  await context.close();
});
