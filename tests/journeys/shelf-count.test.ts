// A shelf count that disagrees: what is scanned is compared with the book, and the book put right in one go.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, visit } from './browser.ts';
import { findings } from './looked-at.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';
import { stockShelf, type Shelf } from './shelf.ts';

let served: Served;
let browser: Browser;
let shelf: Shelf;
/** Two more drums on the wet bench and one that the book has in the cold store. */
let more: string[];
let away: string;

beforeAll(async () => {
  [served, browser] = await Promise.all([serve(), openBrowser()]);
  shelf = await stockShelf(served);
  const drums = { kind: 'DRUM', grams: 1000, innerDiameterMm: 110, heightMm: 250 };
  const lot = { sorbent: 'Silica 40 to 63 µm', lotNumber: 'F-119' };
  const here = { ...drums, room: 'wet bench', count: 2 };
  const { containers } = (await served.tell('receiveLot', {
    ...lot,
    containers: [here, { ...drums, room: 'cold store' }],
  })) as { containers: { label: string }[] };
  const labels = containers.map(({ label }) => label);
  more = labels.slice(0, 2);
  away = labels[2] ?? '';
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

interface Standing {
  room: { name: string };
  asReceivedGrams: number;
  finishedAt: string | null;
}
const standing = async (label: string): Promise<Standing> =>
  (await served.ask(`{ container(label: "${label}") { room { name } asReceivedGrams finishedAt } }`))[
    'container'
  ] as Standing;
const tick = async (page: Page, code: string): Promise<void> => {
  await page.getByLabel('Code on the label').fill(code);
  await page.getByLabel('Code on the label').press('Enter');
};

describe('a shelf count that disagrees', () => {
  it('is put right in one go, nothing before that, and each part can be undone', async () => {
    const { page, context, complaints } = await visit(browser, served.address, {
      width: 360,
      height: 740,
      colorScheme: 'dark',
    });
    await page.goto('/shelf-count');
    await page.getByRole('button', { name: 'wet bench' }).click();
    await tick(page, shelf.drum.toLowerCase().replace('-', ''));
    await page.getByText(`${shelf.drum} ticked`).waitFor();
    await tick(page, away);
    await page.getByText('by the book in cold store').waitFor();
    await tick(page, 'silica');
    await page.getByText(/Nothing here is called silica/).waitFor();
    // Half-way the phone is put down and the page loaded again.
    await page.reload();
    await page.getByRole('heading', { name: /^2 ticked/ }).waitFor();
    await tick(page, shelf.forgotten);
    await page.getByRole('heading', { name: /^3 ticked/ }).waitFor();
    await page.getByLabel(`Grams in ${shelf.drum}, can stay empty`).fill('640');
    expect(await findings(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);

    await page.getByRole('button', { name: 'That is all' }).click();
    await page.getByText('2 as the book says, 1 of another room, 3 not found.').waitFor();
    await page.getByLabel(`What became of ${more[0]}`).selectOption('it is used up');
    await page.getByLabel(`What became of ${more[1]}`).selectOption('mark “not found”');
    await page.getByLabel(`Note on ${more[1]}, can stay empty`).fill('asked the night shift');
    expect(await findings(page)).toEqual([]);
    expect(await standing(away)).toMatchObject({ room: { name: 'cold store' } });

    await page.getByRole('button', { name: 'Put the book right (4)' }).click();
    await page.getByRole('heading', { name: 'The book is put right' }).waitFor();
    expect(await standing(away)).toMatchObject({ room: { name: 'wet bench' } });
    // As received by the water it has now, which is a little other than when it was counted.
    expect(Math.abs((await standing(shelf.drum)).asReceivedGrams - 640)).toBeLessThan(10);
    expect(await standing(more[0] ?? '')).toMatchObject({ finishedAt: expect.any(String) });
    expect(await standing(more[1] ?? '')).toMatchObject({ finishedAt: null });
    await page.getByText('Looked for and not found: asked the night shift').waitFor();
    expect(await findings(page)).toEqual([]);

    await page.getByRole('button', { name: `Undo ${more[0]}` }).click();
    await page.getByText('taken back').first().waitFor();
    expect(await standing(more[0] ?? '')).toMatchObject({ finishedAt: null });
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('of what stands as the book says records nothing', async () => {
    const { page, context } = await visit(browser, served.address);
    await page.goto('/shelf-count?room=cold%20store');
    await page.getByLabel('Code on the label').waitFor();
    expect(await findings(page)).toEqual([]);
    await page.getByRole('button', { name: 'That is all' }).click();
    await page.getByRole('button', { name: 'Done, nothing to write' }).click();
    await page.getByRole('heading', { name: 'The book was right' }).waitFor();
    await context.close();
  });
});
