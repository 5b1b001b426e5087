// The sheet when the day is over: all done as printed but for one, what was handed over, an empty sheet, and one without a network.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { instantOf } from '../../admin/say/time.ts';
import { onDay, plateName, setBench, zone } from './bench.ts';
import { openBrowser, visit } from './browser.ts';
import { findings, isTooWide, tooSmall } from './looked-at.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';

let served: Served;
let browser: Browser;
const at = (days: number, clock: string): string => instantOf(onDay(days, clock), zone)?.toISOString() ?? '';
const day = (days: number): string => onDay(days, '00:00').slice(0, 10);

beforeAll(async () => {
  [served, browser] = await Promise.all([serve(), openBrowser()]);
  await setBench(served, 25);
  const plates = { kind: 'PLATES', sorbent: plateName, plates: 4, isPreWashed: false };
  await served.tell('addNeed', { ...plates, at: at(2, '11:00'), forWhom: 'alkaloid screen' });
  await served.tell('addNeed', { ...plates, at: at(2, '12:00'), forWhom: 'night shift' });
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

interface SeenNeed {
  forWhom: string;
  state: string;
  steps: { kind: string; doneAt: string | null }[];
}
const needFor = async (whom: string): Promise<SeenNeed | undefined> => {
  const { needs } = (await served.ask('{ needs { forWhom state steps { kind doneAt } } }')) as { needs: SeenNeed[] };
  return needs.find(({ forWhom }) => forWhom === whom);
};

/** The page hears something else than what the server says. */
async function hears(page: Page, change: (body: string) => string): Promise<void> {
  await page.route('**/graphql', async (route) => {
    // What is under way when the page is left answers nobody.
    const answer = await route.fetch().catch(() => null);
    if (answer) await route.fulfill({ response: answer, body: change(await answer.text()) });
  });
}
const isWhole = async (page: Page): Promise<void> => {
  expect(await findings(page)).toEqual([]);
  expect(await isTooWide(page)).toBe(false);
  expect(await tooSmall(page)).toEqual([]);
};

describe('a sheet when its day is over', () => {
  it('an empty one leads to the next on which something is to be done', async () => {
    const { page, context } = await visit(browser, served.address, { width: 360, height: 780 });
    await page.goto(`/sheet?on=${day(1)}&part=morning`);
    await page.getByText('Nothing is to be done').waitFor();
    await page.getByRole('link', { name: /, morning$/ }).click();
    await page.locator('[data-step="OVEN"]').first().waitFor();
    await context.close();
  });

  it('opens without a network, as it was fetched before anybody asked for it', async () => {
    const { page, context } = await visit(browser, served.address, { width: 360, height: 780 });
    const asked = page.waitForResponse((response) => response.request().postData()?.includes('Sheet(') ?? false);
    await page.goto('/');
    await asked;
    await page.waitForTimeout(1_500);
    await context.setOffline(true);
    await page
      .getByRole('link', { name: /prep|sheet/i })
      .first()
      .click();
    await page.getByText(/^As of .*, not answered since/).waitFor();
    await context.close();
  });

  it('is ticked in one go but for what was not done, which is planned anew', async () => {
    const { page, context, complaints } = await visit(browser, served.address, { width: 360, colorScheme: 'dark' });
    await hears(page, (body) => body.replace(/"now":"[^"]+"/, `"now":"${at(2, '13:00')}"`));
    await page.goto(`/sheet?on=${day(2)}&part=morning`);
    await page.getByRole('button', { name: 'All done as printed, except …' }).click();
    const form = page.getByRole('form', { name: 'All done as printed, except' });
    for (const not of await form.getByRole('checkbox', { name: /night shift/ }).all()) await not.click();
    await form.getByText('The 2 without a tick were not done and are planned anew.').waitFor();
    await isWhole(page);
    await form.getByRole('button', { name: 'Tick 2 steps' }).click();
    await page.getByText('Ticked: 2 steps, done as printed; 2 not done, planned anew').waitFor();
    expect((await needFor('alkaloid screen'))?.state).toBe('MET');
    expect((await needFor('night shift'))?.steps.filter(({ doneAt }) => doneAt)).toEqual([]);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => (await needFor('alkaloid screen'))?.state).toBe('PLANNED');
    expect(complaints).toEqual([]);
    await page.unrouteAll({ behavior: 'ignoreErrors' });
    await context.close();
  });

  it('asks whether it was handed over: yes and no in one tap each', async () => {
    const sorbent = { kind: 'SORBENT', sorbent: 'Silica 40 to 63 µm', dryGrams: 50, limitWaterFraction: 0.2 };
    for (const forWhom of ['column of Tuesday', 'nobody came'])
      await served.tell('addNeed', { ...sorbent, at: at(3, '10:00'), forWhom });
    const { page, context, complaints } = await visit(browser, served.address, { width: 360 });
    // Their time is over, by what the page hears; plates stay as they are.
    await hears(page, (body) => body.replaceAll(/("kind":"SORBENT","state":)"PLANNED"/g, '$1"OVERDUE"'));
    await page.goto('/sheet');
    await page.getByRole('heading', { name: 'Was it handed over?' }).waitFor();
    await isWhole(page);
    await page.getByRole('button', { name: /^Yes.*column of Tuesday/ }).click();
    await expect.poll(async () => (await needFor('column of Tuesday'))?.state).toBe('MET');
    await page.getByRole('button', { name: /^No.*nobody came/ }).click();
    await expect.poll(async () => await needFor('nobody came')).toBeUndefined();
    await page.getByRole('heading', { name: 'Was it handed over?' }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => (await needFor('nobody came'))?.state).toBe('PLANNED');
    expect(complaints).toEqual([]);
    await page.unrouteAll({ behavior: 'ignoreErrors' });
    await context.close();
  });
});
