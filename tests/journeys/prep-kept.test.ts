// What the prep is planned with, set on the phone and taken back; and the needs of a day booked again a week later in one tap.
import type { Browser } from 'playwright-core';
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

beforeAll(async () => {
  [served, browser] = await Promise.all([serve(), openBrowser()]);
  await setBench(served, 25);
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

describe('the prep', () => {
  it('is set on the phone, a refused figure keeps the rest, and one tap takes it back', async () => {
    const { page, context, complaints } = await visit(browser, served.address, {
      width: 360,
      height: 780,
      colorScheme: 'dark',
    });
    await page.goto('/lab');
    await page.getByRole('button', { name: 'Change pre-wash' }).click();
    const form = page.getByRole('form', { name: 'Pre-wash' });
    await form.getByLabel('Washed in').fill('methanol:ethyl acetate 1:1');
    await form.getByLabel('Plates in a load').fill('0');
    await form.getByRole('button', { name: 'Keep it' }).click();
    await form.getByText('1 or more').waitFor();
    expect(await form.getByLabel('Washed in').inputValue()).toBe('methanol:ethyl acetate 1:1');
    expect(await findings(page)).toEqual([]);
    expect(await isTooWide(page)).toBe(false);
    expect(await tooSmall(page)).toEqual([]);
    await form.getByLabel('Plates in a load').fill('8');
    await form.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText(/full length in methanol:ethyl acetate 1:1: 8 plates/).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText(/full length in methanol and chloroform, 1:1 v\/v: 5 plates/).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('what was needed a week before is needed again in one tap, and not with another', async () => {
    const plates = { kind: 'PLATES', sorbent: plateName, plates: 4, isPreWashed: false };
    await served.tell('addNeed', { ...plates, at: at(1, '11:00'), forWhom: 'alkaloid screen' });
    await served.tell('addNeed', { ...plates, at: at(1, '12:00'), forWhom: 'night shift' });
    const { page, context, complaints } = await visit(browser, served.address, { width: 360, height: 780 });
    // Six days on, by what the page hears.
    await page.route('**/graphql', async (route) => {
      const answer = await route.fetch().catch(() => null);
      if (!answer) return;
      const body = (await answer.text()).replace(/"now":"[^"]+"/, `"now":"${at(7, '09:00')}"`);
      await route.fulfill({ response: answer, body });
    });
    await page.goto('/needs');
    await page.getByRole('button', { name: /: same as .* \(2\)$/ }).click();
    await page.getByText(/^Needed 2 times from/).waitFor();
    const days = async (): Promise<string[]> => {
      const { needs } = (await served.ask('{ needs { day } }')) as { needs: { day: string }[] };
      return needs.map((need) => need.day);
    };
    const again = onDay(8, '00:00').slice(0, 10);
    expect((await days()).filter((day) => day === again)).toHaveLength(2);
    await page.getByRole('button', { name: /: same as .* \(2\)$/ }).waitFor({ state: 'detached' });
    expect(await findings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => (await days()).filter((day) => day === again)).toEqual([]);
    expect(complaints).toEqual([]);
    await page.unrouteAll({ behavior: 'ignoreErrors' });
    await context.close();
  });
});
