// An hour without a network: what is done is kept with its time, the page opens all the same, everything is sent once
// afterwards, and what cannot be written any more comes back as a question.
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, visit } from './browser.ts';
import { findings, isTooWide, tooSmall } from './looked-at.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';
import { stockShelf, type Shelf } from './shelf.ts';
import { wireTo, type Wire } from './wire.ts';

/** A busy machine takes its time. */
const soon = { timeout: 30_000 };

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

interface Happened {
  type: string;
  at: string;
  recordedAt: string;
  counts: boolean;
}
interface Now {
  isOpen: boolean;
  asReceivedGrams: number;
  timeline: { nodes: Happened[] };
}
async function nowOf(label: string): Promise<Now> {
  const fields = 'isOpen asReceivedGrams timeline(first: 30) { nodes { type at recordedAt counts } }';
  const query = `query ($label: String!) { container(label: $label) { ${fields} } }`;
  return (await served.ask(query, { label }))['container'] as Now;
}
const ofType = async (label: string, type: string): Promise<Happened[]> =>
  (await nowOf(label)).timeline.nodes.filter((event) => event.type === type);

/** Waits until the worker has the page and this machine has the stock. */
async function isReady(page: Page): Promise<void> {
  await page.evaluate(() => navigator.serviceWorker.ready);
  await expect
    .poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null), { timeout: 30_000 })
    .toBe(true);
  const kept = () =>
    page.evaluate(
      () =>
        new Promise<number>((done) => {
          const opening = indexedDB.open('drumkeep');
          opening.onsuccess = () => {
            const reading = opening.result.transaction('kept').objectStore('kept').get('stock');
            reading.onsuccess = () => done((reading.result as unknown[] | undefined)?.length ?? 0);
            reading.onerror = () => done(0);
          };
        }),
    );
  await expect.poll(kept, { timeout: 30_000 }).toBeGreaterThanOrEqual(3);
}

async function whole(page: Page): Promise<void> {
  expect(await findings(page)).toEqual([]);
  expect(await tooSmall(page)).toEqual([]);
  expect(await isTooWide(page)).toBe(false);
}

describe('an hour offline', () => {
  let page: Page;
  let context: BrowserContext;
  let complaints: string[];
  let wentAt = 0;
  let wire: Wire;

  beforeAll(async () => {
    wire = await wireTo(served.address);
    ({ page, context, complaints } = await visit(browser, wire.address, {
      width: 360,
      height: 780,
      colorScheme: 'dark',
      worker: true,
    }));
  });
  afterAll(async () => {
    await context?.close();
    await wire?.stop();
  });

  const line = (label: string) => page.locator(`[data-label="${label}"]`);

  it('acts go on, each with the time at which it happened, and the lines show them at once', async () => {
    await page.goto('/?show=all');
    await line(shelf.drum).waitFor();
    await isReady(page);
    wentAt = Date.now();
    await context.setOffline(true);
    wire.cut();
    await line(shelf.drum).getByRole('button', { name: 'Open', exact: true }).click();
    await line(shelf.drum)
      .getByText(/opened \d\d:\d\d: not sent yet/)
      .waitFor();
    await line(shelf.drum).getByRole('button', { name: 'Close', exact: true }).waitFor();
    await line(shelf.forgotten).getByRole('button', { name: 'Close', exact: true }).click();
    await line(shelf.forgotten)
      .getByText(/not sent yet/)
      .waitFor();
    await page.getByRole('link', { name: '2 wait to be sent' }).waitFor();
    // Which of the two drums is meant is typed with a sign that people mistake.
    await page.keyboard.press('/');
    await page.keyboard.type(shelf.drum.toLowerCase());
    await page.keyboard.press('Enter');
    await page.waitForURL(`**/c/${shelf.drum}`);
    await page.getByText(/^As of/).waitFor();
    await page.getByRole('button', { name: 'Put these away' }).click();
    await page.getByRole('button', { name: 'Take', exact: true }).click();
    await page.getByLabel('How much, as the balance shows it').fill('50');
    await page.getByRole('button', { name: 'Take it' }).click();
    await page.getByRole('link', { name: '3 wait to be sent' }).waitFor();
    await whole(page);
  });

  it('what was a slip is taken out before it was ever sent', async () => {
    await page.getByRole('button', { name: 'Move', exact: true }).click();
    await page.getByLabel('To', { exact: true }).selectOption('cold store');
    await page.getByRole('button', { name: 'Move it' }).click();
    await page.getByRole('link', { name: '4 wait to be sent' }).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('link', { name: '3 wait to be sent' }).waitFor();
  });

  it('a reload shows the stock as it was last seen, with what waits', async () => {
    await page.goto('/?show=all');
    await page.getByText(/^As of \d\d:\d\d, not answered since/).waitFor();
    await line(shelf.drum)
      .getByText(/not sent yet/)
      .waitFor();
    await line(shelf.drum).getByRole('button', { name: 'Close', exact: true }).waitFor();
    await whole(page);
    const waits = page.locator('.waits a');
    await expect.poll(() => waits.allTextContents(), soon).toEqual(['3 wait to be sent']);
    await waits.click();
    await page.getByRole('heading', { name: 'Waits to be sent' }).waitFor();
    expect(await page.locator('[data-waiting]').count()).toBe(3);
    await page.getByRole('button', { name: /another time.*closed/ }).click();
    await whole(page);
    const closed = page.getByRole('form', { name: `When it happened, ${shelf.forgotten}` });
    await closed.getByRole('button', { name: /\d/ }).first().click();
    await closed.getByRole('button', { name: 'Put it there' }).click();
  });

  it('with the network back all of it is written once, with its times; what cannot be any more is a question', async () => {
    // Meanwhile somebody else took nearly everything.
    await served.tell('takePortion', { label: shelf.drum, grams: 970 });
    wire.mend();
    await context.setOffline(false);
    await page.getByRole('link', { name: /1 question to answer/ }).waitFor({ timeout: 90_000 });
    await expect.poll(() => page.locator('[data-waiting]').count(), soon).toBe(1);
    const [opened, ...others] = await ofType(shelf.drum, 'OPENED');
    expect(others).toEqual([]);
    expect(Math.abs(Date.parse(opened?.at ?? '') - wentAt)).toBeLessThan(60_000);
    const closings = await ofType(shelf.forgotten, 'CLOSED');
    expect(closings).toHaveLength(1);
    expect(Date.parse(closings[0]?.at ?? '')).toBeLessThan(wentAt - 50 * 60_000);
    expect(await ofType(shelf.drum, 'MOVED')).toEqual([]);
    await whole(page);
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.emulateMedia({ colorScheme: 'light' });
    await whole(page);
  });

  it('the question says what was meant and what the book says now, and another figure settles it', async () => {
    const asked = page.getByRole('group', { name: `A question about ${shelf.drum}` });
    await page.getByText('50 g taken').first().waitFor();
    await asked.getByText('The book says now').waitFor();
    await asked.getByRole('button', { name: 'Correct the amount' }).click();
    await asked.getByLabel('How much').fill('20');
    await asked.getByRole('button', { name: 'Record that' }).click();
    await page.getByText('Nothing waits').waitFor();
    const taken = await ofType(shelf.drum, 'PORTION_TAKEN');
    const mine = taken.filter(({ at, recordedAt }) => Date.parse(recordedAt) - Date.parse(at) > 2_000);
    expect(mine).toHaveLength(1);
    expect(complaints).toEqual([]);
  });
});

describe('an answer that gets lost', () => {
  it('does not write the act twice', async () => {
    const { page, context } = await visit(browser, served.address);
    await page.goto(`/c/${shelf.forgotten}`);
    await page.getByRole('button', { name: 'Open', exact: true }).waitFor();
    const before = (await ofType(shelf.forgotten, 'OPENED')).length;
    let dropped = 0;
    await page.route('**/graphql', async (route) => {
      if (!route.request().postData()?.includes('mutation')) return route.continue();
      dropped += 1;
      await route.fetch();
      // The page may have been left meanwhile.
      await route.abort().catch(() => {});
    });
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page.getByRole('link', { name: '1 waits to be sent' }).waitFor();
    expect((await ofType(shelf.forgotten, 'OPENED')).length).toBe(before + 1);
    await page.reload();
    await expect.poll(() => dropped, { timeout: 30_000 }).toBeGreaterThan(1);
    await page.unroute('**/graphql');
    await page.getByRole('link', { name: '1 waits to be sent' }).waitFor({ state: 'detached', timeout: 60_000 });
    const after = await ofType(shelf.forgotten, 'OPENED');
    expect(after.length).toBe(before + 1);
    await context.close();
  });

  it('undo of what may have arrived takes it back once that is known', async () => {
    const { page, context } = await visit(browser, served.address);
    await page.goto(`/c/${shelf.forgotten}`);
    await page.getByRole('button', { name: 'Close', exact: true }).waitFor();
    await page.route('**/graphql', async (route) => {
      if (!route.request().postData()?.includes('mutation')) return route.continue();
      await route.fetch();
      // The page may have been left meanwhile.
      await route.abort().catch(() => {});
    });
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await page.getByText('Kept on this machine').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.unroute('**/graphql');
    await page.getByRole('link', { name: '1 waits to be sent' }).waitFor({ state: 'detached', timeout: 60_000 });
    expect((await nowOf(shelf.forgotten)).isOpen).toBe(true);
    await context.close();
  });
});

describe('a server that cannot', () => {
  it('is told apart from a network that is gone: it is said, and tried again', async () => {
    const { page, context } = await visit(browser, served.address);
    await page.goto(`/c/${shelf.forgotten}`);
    await page.getByRole('button', { name: 'Close', exact: true }).waitFor();
    const errors = [{ message: 'something went wrong here; it is logged as 7' }];
    await page.route('**/graphql', (route) =>
      route.request().postData()?.includes('mutation')
        ? route.fulfill({ json: { errors, data: null } })
        : route.continue(),
    );
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await page.getByRole('link', { name: '1 waits to be sent' }).click();
    await page.getByText(/Drumkeep answered: something went wrong here/).waitFor();
    await page.unroute('**/graphql');
    await page.getByText('Nothing waits').waitFor({ timeout: 60_000 });
    expect((await nowOf(shelf.forgotten)).isOpen).toBe(false);
    await context.close();
  });
});
