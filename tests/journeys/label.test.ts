// A label is printed and read back: on sheets and rolls, in both symbologies, from the middle of a sheet, page size and all.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, visit, type Look } from './browser.ts';
import { findings } from './looked-at.ts';
import { pagesOf, type Printed } from './printed.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';
import { stockShelf, type Shelf } from './shelf.ts';
import { readAll } from './symbols.ts';

let served: Served;
let browser: Browser;
let shelf: Shelf;
/** Six more drums of a sorbent with a name of 60 signs. */
let labels: string[];
const longName = 'Neutral aluminium oxide 50 to 200 µm for columns, second cut';

beforeAll(async () => {
  [served, browser] = await Promise.all([serve(), openBrowser()]);
  shelf = await stockShelf(served);
  await served.tell('addSorbent', { name: longName, sorbentClass: 'alumina' });
  const drums = { kind: 'DRUM', room: 'wet bench', count: 6, grams: 500, innerDiameterMm: 110, heightMm: 250 };
  const { containers } = (await served.tell('receiveLot', {
    sorbent: longName,
    lotNumber: 'A-2026-000417',
    containers: [drums],
  })) as { containers: { label: string }[] };
  labels = containers.map(({ label }) => label);
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

async function open(path: string, look: Look = {}) {
  const visited = await visit(browser, served.address, look);
  await visited.page.goto(path);
  await visited.page.getByRole('heading', { name: 'Labels' }).waitFor();
  return visited;
}
/** As the browser's own print makes it, by the page's own size. */
const print = async (page: Page): Promise<Printed[]> => {
  await page.locator('.paper img').first().waitFor();
  return pagesOf(await page.pdf({ preferCSSPageSize: true, printBackground: true }));
};
const signs = (label: string): string => label.replace('-', '');

describe('a label is printed and read back', () => {
  it('from the middle of a sheet: each symbol says its code, in its place, and the page is A4', async () => {
    expect(longName).toHaveLength(60);
    const { page, context, complaints } = await open(`/labels?c=${labels.join(',')}`);
    await page.getByRole('heading', { name: '6 containers' }).waitFor();
    // The eighth of 3 × 8: second column, third row. Two more places than labels are left in the row.
    await page.getByRole('button', { name: 'Begin at label 8', exact: true }).click();
    expect(await page.getByLabel('Begin at label', { exact: true }).inputValue()).toBe('8');
    const [sheet, ...more] = await print(page);
    expect(more).toEqual([]);
    expect(sheet?.widthMm).toBeCloseTo(210, 0);
    expect(sheet?.heightMm).toBeCloseTo(297, 0);
    const read = sheet ? await readAll(sheet.picture) : [];
    const byText = new Map(read.map((each) => [each.text, each]));
    expect([...byText.keys()].sort()).toEqual(labels.map(signs).sort());
    labels.forEach((label, i) => {
      const symbol = byText.get(signs(label));
      const place = 7 + i;
      expect(symbol?.format).toBe('DataMatrix');
      // Labels of 70 × 36 mm, 4.5 mm from the top.
      expect(Math.floor(((symbol?.across ?? 0) * 210) / 70)).toBe(place % 3);
      expect(Math.floor(((symbol?.down ?? 0) * 297 - 4.5) / 36)).toBe(Math.floor(place / 3));
    });
    // Nothing else is on the paper, and what one must know is.
    expect(sheet?.text).not.toMatch(/Drumkeep|Print|Recorded by/);
    for (const words of [...labels, 'A-2026-000417', 'opened', 'water', 'concentrates peroxides'])
      expect(sheet?.text).toContain(words);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('as QR on small labels of 38 × 21 mm, two copies each, the name of 60 signs with them', async () => {
    const { page, context } = await open(`/labels?c=${labels.slice(0, 3).join(',')}`);
    await page.getByRole('heading', { name: '3 containers' }).waitFor();
    await page.getByLabel('Sheet or roll').selectOption({ label: 'A4, 5 × 13 of 38.1 × 21.2 mm' });
    await page.getByLabel('Symbol').selectOption('QR');
    await page.getByLabel('Copies of each').fill('2');
    await page.getByLabel('Begin at label', { exact: true }).fill('63');
    await expect.poll(() => page.locator('.paper').count()).toBe(2);
    const sheets = await print(page);
    expect(sheets).toHaveLength(2);
    const read = await Promise.all(sheets.map(({ picture }) => readAll(picture)));
    const texts = read.map((each) => each.map(({ text }) => text).sort());
    const [a = '', b = '', c = ''] = labels.map(signs);
    // Places 63 to 65 of the first sheet, then the first three of the second.
    expect(texts).toEqual([[a, a, b].sort(), [b, c, c].sort()]);
    expect(read.flat().every(({ format }) => format.startsWith('QRCode'))).toBe(true);
    await context.close();
  });

  it('on a roll, a label a page of its own size; measures of the lab’s own are remembered', async () => {
    const { page, context } = await open(`/labels?c=${labels.slice(0, 2).join(',')}`);
    await page.getByLabel('Sheet or roll').selectOption('other measures …');
    await page.getByLabel('Page', { exact: true }).selectOption('roll, a label at a time');
    await page.getByLabel('Label, width').fill('51');
    await page.getByLabel('Label, height').fill('25,5');
    await page.reload();
    await page.getByRole('heading', { name: '2 containers' }).waitFor();
    expect(await page.getByLabel('Label, height').inputValue()).toBe('25,5');
    const pages = await print(page);
    expect(pages).toHaveLength(2);
    for (const [i, { widthMm, heightMm, picture }] of pages.entries()) {
      expect(widthMm).toBeCloseTo(51, 0);
      expect(heightMm).toBeCloseTo(25.5, 0);
      expect((await readAll(picture)).map(({ text }) => text)).toEqual([signs(labels[i] ?? '')]);
    }
    await page.getByLabel('Label, width').fill('5');
    await page.getByText('from 15 to 300 mm').waitFor();
    expect(await page.getByRole('button', { name: 'Print' }).isDisabled()).toBe(true);
    await context.close();
  });

  it('is reached from a lot, and from a container’s page', async () => {
    const { page, context } = await open('/labels?lot=F-118');
    await page.getByRole('heading', { name: '3 containers' }).waitFor();
    await page.goto(`/c/${shelf.drum}`);
    await page.getByRole('link', { name: 'Print its Label' }).click();
    await page.getByRole('heading', { name: '1 container' }).waitFor();
    await expect.poll(() => page.locator('.paper .big').allTextContents()).toEqual([shelf.drum]);
    await context.close();
  });
});

const looks = [
  { width: 360, height: 780, colorScheme: 'dark' },
  { width: 1280, height: 900, colorScheme: 'light' },
] as const;

describe.each(looks)('$width px wide, $colorScheme', (look) => {
  it('the labels are whole: nothing axe finds, nothing scrolls sideways, nothing too small for a thumb', async () => {
    const { page, context, foreign } = await open(`/labels?c=${labels.join(',')}`, look);
    await page.locator('.paper img').first().waitFor();
    await page.getByLabel('Sheet or roll').selectOption('other measures …');
    expect(await findings(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    const small = await page.locator('#main button, #main select, #main input').evaluateAll((all) =>
      all
        .map((one) => (one.matches('[type=checkbox]') ? (one.closest('label') ?? one) : one))
        .filter((one) => one.getBoundingClientRect().height < 43.5)
        .map((one) => one.outerHTML),
    );
    expect(small).toEqual([]);
    expect(foreign).toEqual([]);
    await context.close();
  });
});
