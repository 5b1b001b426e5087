// The prep sheet on paper and on the screen: printed on A4 and Letter and read back, its symbols too; what changed since is said.
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { instantOf } from '../../admin/say/time.ts';
import { onDay, plateName, setBench, zone } from './bench.ts';
import { openBrowser, visit, type Look } from './browser.ts';
import { findings, isTooWide, tooSmall } from './looked-at.ts';
import { pagesOf } from './printed.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';
import { readAll } from './symbols.ts';

let served: Served;
let browser: Browser;
let box: string;
/** The day on whose evening the plates are washed. */
const evening = onDay(1, '00:00').slice(0, 10);
const at = (days: number, clock: string): string => instantOf(onDay(days, clock), zone)?.toISOString() ?? '';

beforeAll(async () => {
  [served, browser] = await Promise.all([serve(), openBrowser()]);
  box = await setBench(served, 25);
  const need = { kind: 'PLATES', sorbent: plateName, room: 'wet bench' };
  await served.tell('addNeed', { ...need, plates: 8, at: at(2, '11:00'), forWhom: 'alkaloid screen' });
  const mobilePhase = 'diethyl ether:methanol 9:1';
  const extraction = { isForExtraction: true, mobilePhase, forWhom: 'extraction of the reference dyes' };
  await served.tell('addNeed', { ...need, plates: 4, at: at(2, '12:00'), ...extraction });
  await served.tell('noteSolventBatch', {
    solvent: 'diethyl ether',
    batch: 'E-2041',
    openedOn: onDay(-20, '00:00').slice(0, 10),
    peroxideTestedOn: onDay(-3, '00:00').slice(0, 10),
  });
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

async function open(look: Look = {}) {
  const visited = await visit(browser, served.address, look);
  await visited.page.goto(`/sheet?on=${evening}&part=evening`);
  await visited.page.locator('[data-step="PRE_WASH"]').first().waitFor();
  return visited;
}

describe('the sheet of an evening', () => {
  it.each([
    ['A4', 210],
    ['Letter', 215.9],
  ] as const)(
    'is one page of %s in letters of 10 pt and more, with its symbols',
    async (format, widthMm) => {
      const { page, context, complaints } = await open();
      await page.locator('li[data-step] img').first().waitFor();
      const pages = await pagesOf(await page.pdf({ format }));
      const [paper] = pages;
      expect(pages).toHaveLength(1);
      expect(paper?.widthMm).toBeCloseTo(widthMm, 0);
      // The browser writes them in steps of 1/400 pt.
      expect(paper?.smallestPt).toBeGreaterThan(9.99);
      const words = (paper?.text ?? '').replaceAll(/\s+/g, ' ');
      for (const one of [
        'evening',
        'Pre-wash, load 1 of 2 : 5 plates',
        'methanol and chloroform',
        'halogenated waste, apart',
        'diethyl ether 180 mL (batch E-2041, opened',
        'peroxides tested',
        'Follow your lab’s rules and the safety data sheet.',
        'All done as printed, except',
      ])
        expect(words.replaceAll(' :', ':')).toContain(one.replaceAll(' :', ':'));
      expect(words).not.toMatch(/Otherwise|Undo|Keys|Recorded by/);
      const symbols = paper ? await readAll(paper.picture) : [];
      expect([...new Set(symbols.map(({ text }) => text))]).toEqual([box.replace('-', '')]);
      expect(complaints).toEqual([]);
      await context.close();
    },
    60_000,
  );

  it('says what changed since it was printed', async () => {
    const { page, context } = await open();
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    await page.getByRole('button', { name: 'Yes, mark what changes' }).click();
    await page.getByText(/^Printed .*; nothing changed since/).waitFor();
    const more = { kind: 'PLATES', sorbent: plateName, plates: 3, at: at(2, '13:00'), forWhom: 'a late wish' };
    await served.tell('addNeed', more);
    await page.reload();
    await page.getByText(/since then \d+ lines? changed/).waitFor();
    const late = page.locator('[data-step="PRE_WASH"]').filter({ hasText: 'a late wish' });
    await late.getByText('New since the sheet was printed.').waitFor();
    await context.close();
  }, 60_000);

  it('stands in a calendar under an address that nobody can guess', async () => {
    const { page, context } = await open();
    await page.getByText('In your calendar').click();
    await page.getByRole('button', { name: 'Give it an address' }).click();
    const address = await page.getByLabel('Address of the calendar').inputValue();
    const calendar = await fetch(address);
    expect(calendar.headers.get('content-type')).toMatch(/^text\/calendar/);
    expect(await calendar.text()).toMatch(/^BEGIN:VCALENDAR[^]*alkaloid screen/);
    await context.close();
  }, 60_000);
});

describe.each([
  { width: 360, height: 780, colorScheme: 'dark' },
  { width: 1280, height: 900, colorScheme: 'light' },
] as const)('$width px wide, $colorScheme', (look) => {
  it('the sheet is whole: nothing axe finds, nothing too wide or too small', async () => {
    const { page, context } = await open(look);
    await page
      .getByRole('button', { name: /^Otherwise/ })
      .first()
      .click();
    expect(await findings(page)).toEqual([]);
    expect(await isTooWide(page)).toBe(false);
    expect(await tooSmall(page)).toEqual([]);
    await context.close();
  }, 60_000);
});
