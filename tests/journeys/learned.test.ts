// What the balance taught: a round of weighings pasted on the phone, one that contradicts all else and is confirmed, and what it changed.
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, visit } from './browser.ts';
import { findings, isTooWide, tooSmall } from './looked-at.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';
import { hoursFromNow } from './bench.ts';
import { hoursAgo, stockShelf } from './shelf.ts';

let served: Served;
let browser: Browser;
let jar: string;
/** Dry grams in it. */
let dryGrams: number;
/** As estimated, kg/kg dry. */
let water: number;
const tareGrams = 210;

beforeAll(async () => {
  [served, browser] = await Promise.all([serve(), openBrowser()]);
  const { drum } = await stockShelf(served);
  const vessel = { innerDiameterMm: 90, heightMm: 120, tareGrams, closure: 'LOOSELY_COVERED' };
  const { made } = (await served.tell('takePortion', {
    label: drum,
    grams: 200,
    basis: 'DRY',
    at: hoursAgo(72),
    ...vessel,
  })) as { made: { label: string } };
  jar = made.label;
  const { container } = (await served.ask(
    'query ($label: String!) { container(label: $label) { dryGrams exposure { meanWaterFraction } } }',
    { label: jar },
  )) as { container: { dryGrams: number; exposure: { meanWaterFraction: number } } };
  ({ dryGrams } = container);
  water = container.exposure.meanWaterFraction;
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

const weighings = async (): Promise<{ counts: string; container: { label: string } }[]> =>
  (await served.ask('{ weighings(last: 50) { counts container { label } } }'))['weighings'] as {
    counts: string;
    container: { label: string };
  }[];
const gross = (of: number): string => (tareGrams + dryGrams * (1 + of)).toFixed(2);
/** As one types it. */
const before = (hours: number): string => hoursFromNow(-hours).replace('T', ' ');

describe('what we learned', () => {
  it('from a round with the balance; what contradicts all else waits until somebody says that it is right', async () => {
    const { page, context, complaints } = await visit(browser, served.address, {
      width: 360,
      height: 780,
      colorScheme: 'dark',
    });
    page.setDefaultTimeout(30_000);
    await page.goto('/learned');
    await page.getByText('Nothing yet.').waitFor();
    await page.getByText('A round with the balance').click();
    const box = page.getByLabel(/^One line each/);
    await box.fill(`${jar} ${gross(0.02)} soon`);
    await page.getByRole('button', { name: 'Record' }).click();
    await page.getByText('Line 1: “soon”: a time such as 14:00').waitFor();
    // What the server refuses stands by its line as well, and nothing that was typed is lost.
    await box.fill(`label gross when\n${jar} ${gross(0.015)}\nZZZ-ZZZ 400`);
    await page.getByRole('button', { name: 'Record 2 weighings' }).click();
    await page.getByText(/^Line 3: /).waitFor();
    expect(await findings(page)).toEqual([]);
    expect(await isTooWide(page)).toBe(false);
    expect(await tooSmall(page)).toEqual([]);
    await page.reload();
    // Filled with what the drum held, and three days later: what it drew meanwhile teaches about its lid.
    await box.fill(`${jar} ${gross(0.0102)} ${before(70)}\n${jar} ${gross(water)}`);
    await page.getByRole('button', { name: 'Record 2 weighings' }).click();
    await page.getByText(/2 weighings recorded; they are learned from/).waitFor();
    await expect
      .poll(async () => (await weighings()).map(({ counts }) => counts), { timeout: 30_000 })
      .toContain('USED');
    await page.reload();
    await page
      .getByText(/Before and after|Little learned yet/)
      .first()
      .waitFor();

    // Half as much again as the jar could have drawn.
    await page.getByText('A round with the balance').click();
    await box.fill(`${jar}\t${gross(0.28)}`);
    await page.getByRole('button', { name: 'Record 1 weighing' }).click();
    await expect
      .poll(async () => (await weighings()).some(({ counts }) => counts === 'LEFT_OUT'), { timeout: 30_000 })
      .toBe(true);
    await page.reload();
    await page.getByRole('heading', { name: 'Left out until you say' }).waitFor();
    await page.getByRole('button', { name: `${jar}: it is right, count it` }).click();
    await page.getByText('It counts from now on').waitFor();
    await page.getByText('Said to be right: it counts').waitFor();
    expect((await weighings()).some(({ counts }) => counts === 'CONFIRMED')).toBe(true);
    await page.getByRole('heading', { name: 'Before and after' }).waitFor();
    expect(await findings(page)).toEqual([]);
    expect(await isTooWide(page)).toBe(false);
    expect(complaints).toEqual([]);
    await context.close();
  }, 60_000);
});
