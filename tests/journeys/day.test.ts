// A day at the bench in a real browser: what is open, a scoop, a weighing, an undo, a lid forgotten, a logger's file.
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, visit } from './browser.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';
import { hoursAgo, stockShelf, type Shelf } from './shelf.ts';

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

interface Now {
  isOpen: boolean;
  asReceivedGrams: number;
  exposure: { state: string; scoopWaterFraction: number };
  timeline: { nodes: { type: string; at: string; counts: boolean }[] };
}
async function nowOf(label: string): Promise<Now> {
  const fields =
    'isOpen asReceivedGrams exposure { state scoopWaterFraction } timeline(first: 20) { nodes { type at counts } }';
  return (await served.ask(`query ($label: String!) { container(label: $label) { ${fields} } }`, { label }))[
    'container'
  ] as Now;
}

describe('a day at the bench', () => {
  it('what was forgotten open stands first, with what to do and why', async () => {
    const { page, context } = await visit(browser, served.address);
    await page.goto('/');
    await page.getByText('1 to redry first').waitFor();
    const line = page.locator(`[data-label="${shelf.forgotten}"]`);
    await line.getByText(/open \d+\sh at 5\d\s%\sRH/i).waitFor();
    await page.getByRole('heading', { name: /Redry first/ }).waitFor();
    expect(await line.getByRole('img', { name: /^Water: next scoop about/ }).count()).toBe(1);
    expect(await page.locator('[data-label]').first().getAttribute('data-label')).toBe(shelf.forgotten);
    await page.getByRole('link', { name: 'Lid off' }).click();
    await expect.poll(() => page.locator('[data-label]').count()).toBe(1);
    await context.close();
  });

  it('a drum is opened by its code, a scoop taken, the rest weighed, the lid closed and that undone', async () => {
    const { page, context } = await visit(browser, served.address);
    const before = await nowOf(shelf.drum);
    // One who came by a code has the three likeliest acts under the thumb as well.
    const main = page.locator('main');
    await page.goto('/');
    await page.keyboard.press('/');
    await page.keyboard.type(shelf.drum.toLowerCase().replace('-', ''));
    await page.keyboard.press('Enter');
    await page.waitForURL(`**/c/${shelf.drum}`);

    await main.getByRole('button', { name: 'Open', exact: true }).click();
    await page.getByRole('status').getByText('Opened').waitFor();
    expect((await nowOf(shelf.drum)).isOpen).toBe(true);

    await main.getByRole('button', { name: 'Take', exact: true }).click();
    await page.getByLabel('How much, as the balance shows it').fill('50');
    await page.getByRole('button', { name: 'Take it' }).click();
    await page
      .getByText(/50\sg taken/)
      .first()
      .waitFor();
    expect((await nowOf(shelf.drum)).asReceivedGrams).toBeCloseTo(before.asReceivedGrams - 50, 0);

    await main.getByRole('button', { name: 'Weigh', exact: true }).click();
    await page.getByLabel('Water found').fill('3,2');
    await page.getByRole('button', { name: 'Record weighing' }).click();
    await page
      .getByText(/scoop weighed: 3\.2\s% water/)
      .first()
      .waitFor();
    const { exposure } = await nowOf(shelf.drum);
    expect(exposure.scoopWaterFraction).toBeGreaterThan(0.028);
    expect(exposure.scoopWaterFraction).toBeLessThan(0.037);

    await main.getByRole('button', { name: 'Close', exact: true }).click();
    await page
      .getByText(/^Closed/)
      .first()
      .waitFor();
    expect((await nowOf(shelf.drum)).isOpen).toBe(false);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('Taken back').waitFor();
    const after = await nowOf(shelf.drum);
    expect(after.isOpen).toBe(true);
    expect(after.timeline.nodes.find(({ type }) => type === 'CLOSED')?.counts).toBe(false);
    await context.close();
  });

  it('a lid that was open since yesterday is put right the day after, and the estimate follows', async () => {
    const { page, context } = await visit(browser, served.address, { width: 360, height: 780 });
    await page.goto(`/c/${shelf.drum}`);
    const before = await nowOf(shelf.drum);
    const opened = page
      .getByRole('listitem')
      .filter({ hasText: /opened/ })
      .first();
    await opened.getByRole('button', { name: /^Correct/ }).click();
    const yesterday = new Date(Date.now() - 26 * 3_600_000);
    const field = new Intl.DateTimeFormat('sv-SE', {
      timeZone: 'Europe/Helsinki',
      dateStyle: 'short',
      timeStyle: 'short',
    })
      .format(yesterday)
      .replace(' ', 'T');
    await opened.getByLabel('When it happened').fill(field);
    await opened.getByRole('button', { name: 'Put it right' }).click();
    await page
      .getByText(/written down/)
      .first()
      .waitFor();
    const after = await nowOf(shelf.drum);
    const corrected = after.timeline.nodes.filter(({ type }) => type === 'OPENED');
    expect(corrected.map(({ counts }) => counts).sort()).toEqual([false, true]);
    expect(Math.abs(Date.parse(corrected.find(({ counts }) => counts)?.at ?? '') - yesterday.getTime())).toBeLessThan(
      60_000,
    );
    // The page hears of the event at once; the estimate is there a moment later.
    await expect
      .poll(async () => (await nowOf(shelf.drum)).exposure.scoopWaterFraction)
      .not.toBe(before.exposure.scoopWaterFraction);
    await context.close();
  });

  it('what happened earlier is recorded at its own time, by two taps', async () => {
    const { page, context } = await visit(browser, served.address, { width: 360, height: 780, colorScheme: 'dark' });
    await page.goto('/');
    const line = page.locator(`[data-label="${shelf.forgotten}"]`);
    await line.getByRole('button', { name: 'Close', exact: true }).click();
    await page.getByRole('button', { name: 'It was earlier' }).click();
    await page.getByRole('button', { name: 'Put it there' }).click();
    await page.getByRole('form', { name: 'It was earlier' }).waitFor({ state: 'detached' });
    // The form goes at once; what it said is told meanwhile.
    const minutesLate = async () => {
      const closed = (await nowOf(shelf.forgotten)).timeline.nodes.find(
        ({ type, counts }) => type === 'CLOSED' && counts,
      );
      return Math.round((Date.now() - Date.parse(closed?.at ?? '')) / 60_000);
    };
    await expect.poll(minutesLate, { timeout: 30_000 }).toBeGreaterThan(55);
    expect(await minutesLate()).toBeLessThan(65);
    await context.close();
  });

  it('a refused form keeps what was typed and says beside the field what would be right; a reload loses nothing', async () => {
    const { page, context } = await visit(browser, served.address);
    await page.goto(`/c/${shelf.drum}`);
    await page.getByRole('button', { name: 'Take', exact: true }).click();
    await page.getByLabel('How much, as the balance shows it').fill('5000');
    await page.getByRole('button', { name: 'Take it' }).click();
    const field = page.getByLabel('How much, as the balance shows it');
    await page.locator('[aria-invalid="true"]').waitFor();
    expect(await field.inputValue()).toBe('5000');
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    await page.reload();
    await page.getByRole('button', { name: 'Take', exact: true }).click();
    expect(await page.getByLabel('How much, as the balance shows it').inputValue()).toBe('5000');
    await context.close();
  });

  it('a logger’s file with an ambiguous date is asked about, brought in, and changes the estimate', async () => {
    const { page, context } = await visit(browser, served.address);
    const before = await nowOf(shelf.forgotten);
    // Wetter air than the other logger's, every half hour; the days of a month that exist both ways round.
    const first = new Date();
    first.setUTCMonth(first.getUTCMonth() - 1, 3);
    const two = (n: number) => String(n).padStart(2, '0');
    const rows = Array.from({ length: 96 }, (_, i) => {
      const at = new Date(first.getTime() + i * 1_800_000);
      return `${two(at.getUTCDate())}/${two(at.getUTCMonth() + 1)}/${at.getUTCFullYear()} ${two(at.getUTCHours())}:${two(at.getUTCMinutes())},21.5,71.0`;
    });
    const buffer = Buffer.from(['Time,Temperature (°C),Humidity (%)', ...rows].join('\n'));
    await page.goto('/air');
    await page.locator('input[type=file]').setInputFiles({ name: 'south-wall.csv', mimeType: 'text/csv', buffer });
    await page.getByRole('heading', { name: 'south-wall.csv' }).waitFor();
    const asked = page.getByRole('group').filter({ hasText: /day first or month first|month first or day first/i });
    expect(await page.getByRole('button', { name: 'Bring it in' }).isDisabled()).toBe(true);
    await asked.getByLabel('day-first').check();
    await page.getByLabel('Whose air it is').selectOption('wet bench');
    await page.getByRole('button', { name: 'Bring it in' }).click();
    await page.getByText(/192 values came into the air of wet bench/).waitFor();

    // The same logger since yesterday: air much drier than what was read until now.
    const dry = Array.from({ length: 288 }, (_, i) => `${hoursAgo(24 - i / 12)},22.0,12.0`);
    const other = Buffer.from(['time,temperature C,humidity %', ...dry].join('\n'));
    for (const name of ['ceiling.csv', 'window.csv']) {
      await page.locator('input[type=file]').setInputFiles({
        name,
        mimeType: 'text/csv',
        buffer: Buffer.concat([other, Buffer.from(`\n${hoursAgo(0.05)},22.0,12.0${name === 'window.csv' ? '1' : ''}`)]),
      });
      await page.getByRole('heading', { name }).waitFor();
      await page.getByLabel('Whose air it is').selectOption('wet bench');
      await page.getByRole('button', { name: 'Bring it in' }).click();
      await page.getByRole('heading', { name }).waitFor({ state: 'detached' });
    }
    await expect
      .poll(async () => (await nowOf(shelf.forgotten)).exposure.scoopWaterFraction, { timeout: 20_000 })
      .toBeLessThan(before.exposure.scoopWaterFraction);
    await context.close();
  });
});
