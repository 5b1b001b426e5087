// One container in a real browser: may I use it, a beaker forgotten overnight, what if it is closed, the list to dry by keyboard.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, visit } from './browser.ts';
import { findings } from './looked-at.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';
import { hoursAgo, stockShelf, type Shelf } from './shelf.ts';

let served: Served;
let browser: Browser;
let shelf: Shelf;

beforeAll(async () => {
  [served, browser] = await Promise.all([serve(), openBrowser()]);
  shelf = await stockShelf(served);
  await served.tell('addVessel', { name: 'tray', innerDiameterMm: 300, heightMm: 40 });
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

/** The machine may be busy. */
const patient = { timeout: 20_000 };

const looks = [
  { width: 360, height: 780, colorScheme: 'dark' },
  { width: 1280, height: 900, colorScheme: 'light' },
] as const;

async function isWhole(page: Page): Promise<void> {
  expect(await findings(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  const small = await page.locator('main button, main select, main summary, main input').evaluateAll((all) =>
    all
      .filter((one) => !(one instanceof HTMLInputElement && one.type === 'checkbox'))
      .map((one) => ({ text: one.textContent?.trim(), height: one.getBoundingClientRect().height }))
      .filter(({ height }) => height > 0 && height < 43.9),
  );
  expect(small).toEqual([]);
}

async function scoopOf(label: string): Promise<number> {
  const query = 'query ($label: String!) { container(label: $label) { exposure { scoopWaterFraction } } }';
  const { container } = (await served.ask(query, { label })) as {
    container: { exposure: { scoopWaterFraction: number } };
  };
  return container.exposure.scoopWaterFraction;
}

describe('a container', () => {
  it('morning, “what may I use?”: the page answers before any figure and does not jump while it fills', async () => {
    const { page, context } = await visit(browser, served.address, { width: 360, height: 780 });
    await page.addInitScript(() => {
      const shifts: number[] = [];
      Object.assign(globalThis, { shifts });
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) shifts.push((entry as PerformanceEntry & { value: number }).value);
      }).observe({ type: 'layout-shift', buffered: true });
    });
    await page.goto(`/c/${shelf.drum}`);
    await page
      .locator('.answer')
      .getByText(/Good to use/)
      .waitFor();
    await page.getByRole('application', { name: /^Water over time/ }).waitFor();
    await page.waitForTimeout(300);
    const shifts = await page.evaluate(() => (globalThis as unknown as { shifts: number[] }).shifts);
    expect(shifts.reduce((sum, shift) => sum + shift, 0)).toBeLessThan(0.02);
    await context.close();
  });

  it('a beaker opened at 16:00 is written down the day after: the estimate follows and the plot tells it', async () => {
    const { page, context } = await visit(browser, served.address);
    const before = await scoopOf(shelf.drum);
    await page.goto(`/c/${shelf.drum}`);
    await page.getByRole('button', { name: 'At another time …' }).first().click();
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    const day = new Intl.DateTimeFormat('sv-SE', { timeZone: 'Europe/Helsinki', dateStyle: 'short' });
    await page.getByLabel('When it happened').fill(`${day.format(new Date(Date.now() - 86_400_000))}T16:00`);
    await page.getByRole('button', { name: 'Open it' }).click();
    await page
      .getByText(/written down .* later/)
      .first()
      .waitFor();
    await expect.poll(() => scoopOf(shelf.drum), patient).toBeGreaterThan(before + 0.0005);
    const plot = page.getByRole('application', { name: /^Water over time/ });
    // Drawn anew after each act: the key is pressed until the plot is there to hear it.
    const stopped = async () => {
      await plot.press('Shift+ArrowLeft');
      return page.locator('figure .at').first().textContent();
    };
    await expect.poll(stopped, patient).toMatch(/yesterday 16:00 opened/i);
    await context.close();
  });

  it('habit and scooping are asked once, answered by one tap, and can be changed', async () => {
    const { page, context } = await visit(browser, served.address, looks[0]);
    await page.goto(`/c/${shelf.drum}`);
    await page.getByRole('button', { name: 'from the side' }).click();
    await page.getByText('Scooped from the side.').waitFor();
    await page.getByRole('button', { name: 'not every day' }).click();
    await page.getByText('Scooped from the side; not opened every day.').waitFor();
    expect(await page.getByRole('button', { name: 'off the top' }).count()).toBe(0);
    await page.getByRole('button', { name: /^Change/ }).click();
    await page.getByRole('button', { name: 'off the top' }).waitFor();
    await context.close();
  });

  it.each(looks)('“what if it is closed?” is answered by keys at $width px, drawn, and closes it', async (look) => {
    const { page, context, complaints } = await visit(browser, served.address, look);
    await page.goto(`/c/${shelf.forgotten}`);
    await page.getByRole('button', { name: 'it is closed' }).click();
    const slider = page.getByRole('slider', { name: /^Close at/ });
    await slider.focus();
    for (let i = 0; i < 8; i++) await page.keyboard.press('ArrowRight');
    await page.getByLabel('and mixed or rolled').check();
    await page
      .locator('[data-would]')
      .getByText(/^If it is closed .*\d\d:\d\d and mixed: next scoop about/)
      .waitFor();
    await isWhole(page);
    if (look.width < 500) {
      await page.getByRole('button', { name: 'it is dried' }).click();
      await page
        .locator('[data-would]')
        .getByText(/^If it is dried now at 130\s°C under vacuum for 60\smin, 10\smm deep, and closed: next scoop about/)
        .waitFor();
      await page.getByRole('button', { name: 'Leave it' }).click();
    } else {
      await page.getByRole('button', { name: 'Close it now' }).click();
      await page
        .getByRole('status')
        .getByText(/closed/i)
        .first()
        .waitFor();
      await page.getByRole('button', { name: 'Undo' }).click();
    }
    expect(complaints).toEqual([]);
    await context.close();
  });

  it.each(looks)(
    'forms to correct and to weigh are whole at $width px: typed masses become water, with their arithmetic',
    async (look) => {
      const { page, context } = await visit(browser, served.address, look);
      await page.goto(`/c/${shelf.forgotten}`);
      await page
        .getByRole('button', { name: /^Correct/ })
        .first()
        .click();
      await page.getByRole('button', { name: 'Weigh', exact: true }).click();
      await page.locator('summary').filter({ hasText: 'From the weighings' }).click();
      await page.getByLabel('Empty bottle').fill('20');
      await page.getByLabel('With sample, before').fill('22');
      await page.getByLabel('After drying').fill('21.96');
      await page.getByText(/2\.04\s% dry basis, 2\.00\s% as received/).waitFor();
      expect(await page.getByLabel('Water found').inputValue()).toBe('2.041');
      await isWhole(page);
      await context.close();
    },
  );

  it.each(looks)(
    'emptied into another and everything unfolded it is whole at $width px; the lineage leads back',
    async (look) => {
      const { page, context } = await visit(browser, served.address, look);
      await page.goto(`/c/${shelf.forgotten}`);
      await page.getByRole('button', { name: 'Something else …' }).click();
      await page.getByRole('button', { name: 'Emptied into another' }).click();
      await page.getByLabel('Into, its code').waitFor();
      await page.locator('details').evaluateAll((all) => {
        for (const one of all) (one as HTMLDetailsElement).open = true;
      });
      await isWhole(page);
      await page.getByRole('region', { name: 'Where it comes from' }).getByRole('link').first().click();
      await page.waitForURL(/\/c\//);
      await page.getByText('this one').waitFor();
      await context.close();
    },
  );

  it('grams are kept for somebody, said, and let go', async () => {
    const { page, context } = await visit(browser, served.address);
    await page.goto(`/c/${shelf.drum}`);
    await page.locator('summary').filter({ hasText: 'Keep some for somebody' }).click();
    await page.getByLabel('How much, dry').fill('50');
    await page.getByLabel('For whom or what').fill('the course');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText(/50\sg \(dry\) kept for the course/).waitFor();
    await page.getByRole('button', { name: /^Let go/ }).click();
    await page.getByText(/50\sg \(dry\) kept for the course/).waitFor({ state: 'detached' });
    await context.close();
  });
});

describe('the list to dry', () => {
  it('is put in order by keyboard, and one is dried in place, measured by weighing', async () => {
    const { page, context } = await visit(browser, served.address);
    await served.tell('closeContainer', { label: shelf.drum, at: hoursAgo(0.01) });
    await served.tell('requestDrying', { label: shelf.drum, why: 'for Friday', dryGrams: 200, wantedBy: hoursAgo(1) });
    await served.tell('requestDrying', { label: shelf.forgotten, why: 'for use' });
    await page.goto('/to-dry');
    const lines = page.locator('li[data-label]');
    const labels = () => lines.evaluateAll((all) => all.map((line) => line.getAttribute('data-label')));
    await page.getByText('late: was wanted by').waitFor();
    expect(await labels()).toEqual([shelf.drum, shelf.forgotten]);
    await page.getByRole('button', { name: `${shelf.forgotten}: drag, or Alt with an arrow` }).focus();
    await page.keyboard.press('Alt+ArrowUp');
    await page.getByRole('status').getByText(`${shelf.forgotten} is 1 of 2 now`).waitFor();
    expect(await labels()).toEqual([shelf.forgotten, shelf.drum]);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(labels, patient).toEqual([shelf.drum, shelf.forgotten]);

    // By the pointer, as a finger or a mouse does.
    const handle = page.getByRole('button', { name: `${shelf.drum}: drag, or Alt with an arrow` });
    const from = await handle.boundingBox();
    const to = await lines.last().boundingBox();
    if (!from || !to) throw new Error('nothing to drag');
    await page.mouse.move(from.x + 10, from.y + 10);
    await page.mouse.down();
    await page.mouse.move(from.x + 10, to.y + to.height - 5, { steps: 4 });
    await page.mouse.up();
    await expect.poll(labels, patient).toEqual([shelf.forgotten, shelf.drum]);

    const line = lines.filter({ hasText: shelf.drum });
    await line.getByRole('button', { name: /^Dried/ }).click();
    await line.getByLabel('How dry it is, known').selectOption('measured');
    await line.getByLabel('Dried in').selectOption('tray');
    await line.locator('summary').filter({ hasText: 'From the weighings' }).click();
    await line.getByLabel('Empty bottle').fill('20');
    await line.getByLabel('With sample, before').fill('22');
    await line.getByLabel('After drying').fill('21.99');
    await expect.poll(() => line.getByLabel('Water found, dry basis').inputValue(), patient).toBe('0.503');
    await isWhole(page);
    await line.getByRole('button', { name: 'It is dry' }).click();
    await expect.poll(labels, patient).toEqual([shelf.forgotten]);
    const { container } = (await served.ask(
      'query ($label: String!) { container(label: $label) { portions { label dryGrams exposure { meanWaterFraction } } } }',
      { label: shelf.drum },
    )) as { container: { portions: { dryGrams: number; exposure: { meanWaterFraction: number } }[] } };
    expect(container.portions.at(-1)?.dryGrams).toBeCloseTo(200, 3);
    expect(container.portions.at(-1)?.exposure.meanWaterFraction).toBeCloseTo(0.005, 3);
    await context.close();
  });

  it('what is taken off the list comes back by undo, and at 360 px the page is whole', async () => {
    const { page, context } = await visit(browser, served.address, looks[0]);
    await page.goto('/to-dry');
    await page.getByRole('button', { name: /^Off the list/ }).click();
    await page.getByText('Nothing waits for the oven.').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.locator(`li[data-label="${shelf.forgotten}"]`).waitFor();
    await page.getByRole('button', { name: /^Dried/ }).click();
    await isWhole(page);
    await context.close();
  });
});
