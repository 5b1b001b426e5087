// Stock runs low: asked for, bought and on the shelf with its lot; a campaign that does not fit its lot; the ledger opened
// down to the event behind a figure.
import type { Browser, Page } from 'playwright-core';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, visit } from './browser.ts';
import { findings, isTooWide, tooSmall } from './looked-at.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';

let served: Served;
let browser: Browser;
const silica = 'Silica 40–63 µm';
const daysFromNow = (days: number): Date => new Date(Date.now() + days * 86_400_000);

beforeAll(async () => {
  [served, browser] = await Promise.all([serve(), openBrowser()]);
  await served.tell('addRoom', { name: 'wet bench', assumedHumidityPercent: 40, assumedTemperatureC: 21 });
  await served.tell('addSorbent', { name: silica, sorbentClass: 'silica' });
  await served.tell('addSupplier', { name: 'Marlpit Chemicals' });
  await served.tell('addVessel', { name: 'drum 5 L', innerDiameterMm: 160, heightMm: 260 });
  await served.tell('receiveLot', {
    ...{ sorbent: silica, lotNumber: 'F-118', supplier: 'Marlpit Chemicals', receivedAt: daysFromNow(-70) },
    certificateWaterPercent: 2,
    containers: [{ kind: 'DRUM', grams: 1000, room: 'wet bench', vessel: 'drum 5 L' }],
  });
  const { containers } = (await served.ask('{ containers { nodes { label } } }')) as {
    containers: { nodes: { label: string }[] };
  };
  const label = containers.nodes[0]?.label;
  for (const days of [-56, -49, -35, -28, -14])
    await served.tell('takePortion', { label, grams: 150, at: daysFromNow(days) });
  await served.tell('recordLoss', { label, grams: 20, at: daysFromNow(-21), why: 'in drying' });
  await served.tell('setStockItem', { sorbent: silica, weeklyUse: 100 });
  await served.tell('addOffer', {
    ...{ supplier: 'Marlpit Chemicals', sorbent: silica, packGrams: 1000, leadUsualWeeks: 2 },
    prices: [{ from: 1, price: '84.50' }],
  });
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

async function looksRight(page: Page): Promise<void> {
  expect(await findings(page)).toEqual([]);
  expect(await isTooWide(page)).toBe(false);
  expect(await tooSmall(page)).toEqual([]);
}

describe('what runs low', () => {
  it('is asked for, bought and on the shelf by one click each, a damaged pack left out', async () => {
    const { page, context, complaints, foreign } = await visit(browser, served.address, {
      width: 360,
      colorScheme: 'dark',
    });
    await page.goto('/orders');
    await page.getByText('1 thing to order this week').waitFor();
    const due = page.locator('[data-due]');
    expect(await due.textContent()).toContain('reorder point');
    await looksRight(page);
    await due.getByRole('button', { name: /^Asked for/ }).click();
    const line = page.locator('[data-order]');
    await line.getByText('asked for today').waitFor();
    expect(await page.locator('[data-undo]').isVisible()).toBe(true);
    await line.getByRole('button', { name: /^Bought\s*:/ }).click();
    await line.getByText(/expected by/).waitFor();
    const packs = Number(/(\d+) pack/.exec((await line.locator('strong').textContent()) ?? '')?.[1]);

    await line.getByRole('button', { name: /^On the shelf/ }).click();
    await page.getByLabel('Lot, as printed').fill('F-204');
    await page.getByLabel('Damaged packs').fill('1');
    await page.getByLabel('Good packs').fill(String(packs - 1));
    // What was typed survives a reload.
    await page.reload();
    expect(await page.getByLabel('Lot, as printed').inputValue()).toBe('F-204');
    await looksRight(page);
    await line.getByRole('button', { name: 'On the shelf', exact: true }).click();
    if (packs > 1)
      await page
        .getByText(/1 came damaged/)
        .first()
        .waitFor();
    const delivered = async () => {
      const { orders } = (await served.ask('{ orders { deliveries { lotNumber packs damagedPacks } } }')) as {
        orders: { deliveries: object[] }[];
      };
      return orders[0]?.deliveries;
    };
    await expect.poll(delivered).toEqual([{ lotNumber: 'F-204', packs: packs - 1, damagedPacks: 1 }]);
    expect([complaints, foreign]).toEqual([[], []]);
    await context.close();
  });
});

describe('a campaign', () => {
  async function tellOne(page: Page, name: string, amount: string): Promise<void> {
    await page.getByText('Tell a campaign').click();
    await page.getByLabel('What it is').fill(name);
    await page.getByLabel('Each time, dry g or plates').fill(amount);
    await page.getByLabel('First on').fill(daysFromNow(7).toISOString().slice(0, 10));
    await page.getByLabel('How many times').fill('3');
    await page.getByRole('button', { name: 'Tell it' }).click();
    await page.locator(`[data-campaign="${name}"]`).waitFor();
  }

  it('that does not fit its lot says what it would take; one that fits has its lot kept to the end', async () => {
    const { page, context, complaints } = await visit(browser, served.address);
    await page.goto('/orders?show=campaigns');
    await tellOne(page, 'alkaloid screen', '900');
    const long = page.locator('[data-campaign="alkaloid screen"]');
    await long.getByLabel(/Which lot to keep/).selectOption('F-118');
    await long.getByRole('button', { name: /^Keep it\s+for/ }).click();
    await long.getByText(/A lot with .* free; of F-118/).waitFor();
    await looksRight(page);
    await long.getByRole('link', { name: 'Plan what to buy' }).waitFor();

    await tellOne(page, 'resin acids', '20');
    const short = page.locator('[data-campaign="resin acids"]');
    await short.getByLabel(/Which lot to keep/).selectOption('F-118');
    await short.getByRole('button', { name: /^Keep it\s+for/ }).click();
    await short.getByText('Lot F-118 is kept for it, to the end').waitFor();
    await short.getByRole('button', { name: 'Will F-118 last?' }).click();
    await short
      .locator('.answer')
      .getByText(/kept for campaigns/)
      .waitFor();
    await long.getByRole('button', { name: /^Drop/ }).click();
    await long.waitFor({ state: 'detached' });
    expect(complaints).toEqual([]);
    await context.close();
  });
});

describe('a plan', () => {
  const planNow = async (): Promise<unknown> => (await served.ask('{ purchasePlan { id madeAt } }'))['purchasePlan'];

  it('says that it is being made, what to pay and what to order; what is only supposed stands beside it', async () => {
    const { page, context, complaints } = await visit(browser, served.address, { width: 360, height: 780 });
    await page.goto('/orders?show=plan');
    await page.getByText(/There is no plan yet/).waitFor();
    // Held for a moment, as a plan of forty items takes: one can see that it goes on, and stop it.
    await page.route('**/graphql', async (route) => {
      if (route.request().postData()?.includes('planOrders')) await new Promise((go) => setTimeout(go, 1_500));
      await route.continue();
    });
    await page.getByRole('button', { name: 'Plan what to buy' }).click();
    await page.getByRole('progressbar').waitFor();
    await page.getByRole('button', { name: 'Cancel', exact: true }).waitFor();
    await looksRight(page);
    await page.getByText(/^Planned.*to\sbe\spaid/).waitFor();
    await page.unrouteAll({ behavior: 'wait' });
    await looksRight(page);
    const counts = await planNow();
    expect(counts).not.toBeNull();

    await page.getByText('What if …').click();
    await page.getByRole('button', { name: 'Suppose it' }).click();
    await page.getByText(/say what is supposed/i).waitFor();
    await page.getByLabel('Late by').fill('5');
    await page.getByRole('button', { name: 'Suppose it' }).click();
    const supposed = page.getByRole('region', { name: /^What if: .*late/i });
    await supposed.waitFor();
    await looksRight(page);
    await supposed.getByRole('button', { name: 'Put it away' }).click();
    await supposed.waitFor({ state: 'detached' });
    // A plan that is only supposed takes the place of none.
    expect(await planNow()).toEqual(counts);
    expect(complaints).toEqual([]);
    await context.close();
  });
});

describe('the ledger', () => {
  it('opens from a lot to a week to the event behind it, leads to its container, and is there as CSV', async () => {
    const { page, context, complaints } = await visit(browser, served.address);
    await page.goto('/ledger?weeks=52');
    const lot = page.locator('li', { has: page.getByRole('button', { name: 'F-118' }) });
    // By the water it came in with: near to the five times 150 g on the balance, whatever air the drum took up since.
    const words = (await lot.getByText(/\d+\sg used/).textContent()) ?? '';
    const shown = Number(/(\d+)\sg used/.exec(words)?.[1]);
    expect(Math.abs(shown - 750)).toBeLessThan(30);
    expect(await lot.textContent()).toContain('lost (in drying)');
    await lot.getByRole('button', { name: 'F-118' }).press('Enter');
    const week = lot.locator('tbody th button').first();
    await week.click();
    await lot.locator('.events').getByText('150 g taken').waitFor();
    await looksRight(page);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: 'Take it as CSV' }).click(),
    ]);
    const stream = await download.createReadStream();
    let text = '';
    for await (const part of stream) text += String(part);
    const rows = parse<Record<string, string>>(text, { columns: true }).filter(({ lot: of }) => of === 'F-118');
    const used = rows.reduce((sum, row) => sum + Number(row['used']) * Number(row['asReceivedPerDry']), 0);
    expect(Math.abs(used - shown)).toBeLessThan(1);
    // The address holds what is open, so that it can be sent.
    await page.reload();
    await lot.locator('.events').getByText('150 g taken').waitFor();
    await lot.locator('.events a').first().click();
    await page.waitForURL(/\/c\//);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
