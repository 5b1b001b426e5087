// The week of the ovens: a batch dragged with the mouse, a planning that is cancelled, a run that was interrupted, care and hours by form.
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, visit } from './browser.ts';
import { findings, isTooWide, tooSmall } from './looked-at.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';
import { hoursAgo, stockShelf, type Shelf } from './shelf.ts';

let served: Served;
let browser: Browser;
let shelf: Shelf;

const day = (at: string): string =>
  new Intl.DateTimeFormat('sv-SE', { timeZone: 'Europe/Helsinki' }).format(new Date(at));

beforeAll(async () => {
  [served, browser] = await Promise.all([serve(), openBrowser()]);
  shelf = await stockShelf(served);
  await served.tell('addOven', {
    ...{ name: 'vacuum oven', kind: 'VACUUM', room: 'wet bench', shelves: 2, shelfAreaCm2: 900, shelfHeightMm: 120 },
    ...{ lowestC: 30, highestC: 200, hours: [{ days: [1, 2, 3, 4, 5, 6, 7], from: '00:00', to: '23:59' }] },
  });
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

interface SeenRun {
  id: string;
  state: string;
  isPinned: boolean;
  plannedStart: string;
  loads: { container: { label: string } }[];
}
async function runOf(label: string): Promise<SeenRun> {
  const query = '{ dryingRuns { id state isPinned plannedStart loads { container { label } } } }';
  const { dryingRuns } = (await served.ask(query)) as { dryingRuns: SeenRun[] };
  const found = dryingRuns.findLast(({ loads }) => loads.some(({ container }) => container.label === label));
  if (!found) throw new Error(`nothing is planned for ${label}`);
  return found;
}

describe('the week of the ovens', () => {
  it('a batch is dragged with the mouse and fixed where it is let go', async () => {
    const tomorrow = new Date(Date.now() + 30 * 3_600_000).toISOString();
    const readyAt = `${day(tomorrow)}T09:00:00+02:00`;
    await served.tell('requestDrying', { label: shelf.drum, dryGrams: 300, why: 'for Friday', readyAt });
    await served.tell('planOvens', {});
    const before = await runOf(shelf.drum);
    const { page, context, complaints } = await visit(browser, served.address);
    await page.goto(`/ovens?day=${day(before.plannedStart)}`);
    const batch = page.locator(`[data-batch="${before.id}"]`);
    const drag = async (byPx: number, end: () => Promise<void>): Promise<void> => {
      await batch.scrollIntoViewIfNeeded();
      const box = await batch.boundingBox();
      if (!box) throw new Error('the batch is not to be seen');
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x + byPx, y, { steps: 8 });
      await end();
      await page.mouse.up();
    };
    await drag(150, () => page.keyboard.press('Escape'));
    expect((await runOf(shelf.drum)).isPinned).toBe(false);
    await drag(150, () => Promise.resolve());
    await page.getByText(/Fixed in its place/).waitFor();
    const after = await runOf(shelf.drum);
    expect(after.isPinned).toBe(true);
    expect(Date.parse(after.plannedStart)).toBeGreaterThan(Date.parse(before.plannedStart));
    expect(Date.parse(after.plannedStart) % 900_000).toBe(0);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => (await runOf(shelf.drum)).isPinned).toBe(false);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('is looked after by form: pump oil, out of order and in order again, hours in several spans', async () => {
    const { page, context, complaints } = await visit(browser, served.address, {
      width: 360,
      height: 780,
      colorScheme: 'dark',
    });
    await page.goto('/ovens');
    const oven = page.locator('section.all li').filter({ has: page.getByRole('heading', { name: 'vacuum oven' }) });
    await oven.getByRole('button', { name: /^Note something/ }).click();
    await oven.getByLabel('What was looked after').selectOption('pump oil changed');
    await oven.getByLabel(/^Note, can stay empty/).fill('was brown');
    expect(await findings(page)).toEqual([]);
    expect(await isTooWide(page)).toBe(false);
    expect(await tooSmall(page)).toEqual([]);
    await oven.getByRole('button', { name: 'Note it' }).click();
    await oven.getByText(/^Looked after/).click();
    await oven.getByText('The oil of its pump was changed. was brown').waitFor();

    await oven.getByRole('button', { name: /^Note something/ }).click();
    await oven.getByLabel('What was looked after').selectOption('out of order');
    await oven.getByLabel('Why').fill('its door does not shut');
    await oven.getByRole('button', { name: 'Note it' }).click();
    await oven.getByText(/Out of order since .*: its door does not shut\. Nothing goes in\./).waitFor();
    await oven.getByRole('button', { name: 'It works again' }).click();
    await oven.getByText(/Nothing goes in/).waitFor({ state: 'detached' });

    await oven.getByRole('button', { name: /^Change/ }).click();
    await oven.getByLabel('Somebody can load it').selectOption('in several spans');
    await oven.getByLabel('When', { exact: true }).fill('Mon to Sun 0 to 12; sometimes');
    await oven.getByRole('button', { name: 'Keep it' }).click();
    await oven.getByText('“sometimes”: days such as Mon to Fri, or Mon, Wed').waitFor();
    await oven.getByLabel('When', { exact: true }).fill('Every day 0:00 to 12:00, 12:01 to 23:59');
    await oven.getByRole('button', { name: 'Keep it' }).click();
    await oven.getByText('Somebody can load it Mon to Sun 00:00 to 12:00, 12:01 to 23:59').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await oven.getByText('Somebody can load it Mon to Sun 00:00 to 23:59').waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('a run that was interrupted leaves what it had reached, and waits again', async () => {
    const run = await runOf(shelf.drum);
    await served.tell('startRun', { run: run.id, at: hoursAgo(0.3) });
    const { page, context, complaints } = await visit(browser, served.address, { width: 360, height: 780 });
    await page.goto('/ovens');
    await page.getByRole('button', { name: 'Interrupted …' }).click();
    const form = page.getByRole('form', { name: 'Interrupted, vacuum oven' });
    await form.getByLabel('Why').fill('a fuse blew');
    expect(await findings(page)).toEqual([]);
    expect(await isTooWide(page)).toBe(false);
    await form.getByRole('button', { name: 'It was interrupted' }).click();
    await expect
      .poll(async () => {
        const { dryingRuns } = (await served.ask('{ dryingRuns { id state } }')) as { dryingRuns: SeenRun[] };
        return dryingRuns.find(({ id }) => id === run.id)?.state;
      })
      .toBe('INTERRUPTED');
    const { dryingRequests } = (await served.ask('{ dryingRequests(first: 20) { nodes { why stage } } }')) as {
      dryingRequests: { nodes: { why: string; stage: string }[] };
    };
    expect(dryingRequests.nodes.map(({ why }) => why)).toContain('for Friday');
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('a planning of many loads says how far it is, and is cancelled with everything as before', async () => {
    const { containers } = (await served.tell('receiveLot', {
      sorbent: 'Silica 40 to 63 µm',
      lotNumber: 'F-119',
      receivedAt: hoursAgo(20),
      containers: [
        {
          kind: 'DRUM',
          room: 'wet bench',
          count: 90,
          grams: 700,
          innerDiameterMm: 110,
          heightMm: 250,
          closure: 'TIGHT',
        },
      ],
    })) as { containers: { label: string }[] };
    for (const [i, { label }] of containers.entries()) {
      const wantedBy = new Date(Date.now() + (6 + i) * 3_600_000).toISOString();
      await served.tell('requestDrying', { label, why: 'a long week', wantedBy, priority: [1, 2, 4, 8][i % 4] });
    }
    const planOf = async () => ((await served.ask('{ ovenPlan { id } }')) as { ovenPlan: { id: string } }).ovenPlan.id;
    const before = await planOf();
    const { page, context, complaints } = await visit(browser, served.address, { width: 768, height: 900 });
    await page.goto('/ovens');
    await page.getByRole('button', { name: 'Plan again' }).click();
    await page.getByText(/^Placing \d+ loads/).waitFor();
    await page.getByRole('button', { name: 'Cancel', exact: true }).click();
    await page.getByText('Planning cancelled; the ovens stand as before').waitFor();
    expect(await planOf()).toBe(before);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
