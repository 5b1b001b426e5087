// From a need for Friday's plates to tonight's sheet and tomorrow's ticks; and a need that cannot be met, moved to where it can.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { labClock } from '../../admin/say/time.ts';
import { hoursFromNow, onDay, plateName, setBench, zone } from './bench.ts';
import { openBrowser, visit } from './browser.ts';
import { findings, isTooWide, tooSmall } from './looked-at.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';

let served: Served;
let browser: Browser;
let box: string;

beforeAll(async () => {
  [served, browser] = await Promise.all([serve(), openBrowser()]);
  box = await setBench(served, 20);
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

interface SeenStep {
  kind: string;
  startAt: string;
  endAt: string;
  doneAt: string | null;
}
/** The steps of the need that is for somebody. */
async function stepsFor(whom: string): Promise<SeenStep[]> {
  const { needs } = (await served.ask('{ needs { forWhom steps { kind startAt endAt doneAt } } }')) as {
    needs: { forWhom: string; steps: SeenStep[] }[];
  };
  return needs.find(({ forWhom }) => forWhom === whom)?.steps ?? [];
}
const dayOf = (instant: string): string => labClock(new Date(instant), zone).slice(0, 10);

async function openForm(page: Page, plates: string, at: string, whom: string): Promise<void> {
  await page.getByRole('button', { name: 'Something is needed' }).click();
  await page.getByLabel('How many').fill(plates);
  await page.getByLabel('Ready at').fill(at);
  await page.getByLabel('For whom, or for what').fill(whom);
}

describe('plates for the day after tomorrow', () => {
  it('are asked for on the phone, washed tonight, kept from the oven while wet, ticked and handed over', async () => {
    const { page, context, complaints, foreign } = await visit(browser, served.address, { width: 360 });
    await page.goto('/needs');
    await page.getByText('Nothing is needed').waitFor();
    await openForm(page, '5', onDay(2, '14:00'), 'fractions');
    await page.getByText('It will be ready').waitFor();

    // What was typed survives a reload.
    await page.reload();
    await page.getByText('It will be ready').waitFor();
    expect(await page.getByLabel('How many').inputValue()).toBe('5');
    await page.getByRole('button', { name: 'Need it', exact: true }).click();
    const need = page.locator('[data-need]');
    await need.getByText('Will be ready').waitFor();
    await need.getByRole('link', { name: box }).waitFor();
    await page.getByText(/^Needed .* 14:00/).waitFor();

    // The evening's sheet: what to wash, in how much of what, and where the waste goes.
    await need.getByRole('link', { name: /^pre-wash/ }).click();
    const wash = page.locator('[data-step="PRE_WASH"]');
    await wash.getByText(/5 plates, full length in 200.mL/).waitFor();
    await wash.getByText(/100.mL methanol, 100.mL chloroform; leaves 200.mL halogenated waste/).waitFor();
    await wash.getByText(/Follow your lab’s rules and the safety data sheet\.$/).waitFor();

    // It was done thirty hours ago; a tick can be taken back.
    const washedThen = async (): Promise<void> => {
      await wash.getByRole('button', { name: /^Otherwise/ }).click();
      await wash.getByLabel('When it was done').fill(hoursFromNow(-30));
      await wash.getByRole('button', { name: 'Record it so' }).click();
      await page.getByText(/^Ticked: pre-wash, fractions/).waitFor();
    };
    await washedThen();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('Taken back').waitFor();
    await wash.getByRole('checkbox', { checked: false }).waitFor();
    const { container } = (await served.ask(
      'query ($label: String!) { container(label: $label) { ... on PlateBox { plates } } }',
      {
        label: box,
      },
    )) as { container: { plates: number } };
    expect(container.plates).toBe(20);
    await washedThen();

    // Wet plates keep the oven closed, and say why.
    const on = async (kind: string, end = false): Promise<void> => {
      const step = (await stepsFor('fractions')).find((one) => one.kind === kind);
      await page.goto(`/sheet?on=${dayOf((end ? step?.endAt : step?.startAt) ?? '')}`);
      await page.locator(`[data-step="${kind}"]`).first().waitFor();
    };
    const oven = page.locator('[data-step="OVEN"]');
    await on('OVEN');
    await oven.getByText(/is wet with solvent: the air-drying is not recorded as finished/).waitFor();
    await oven.getByRole('checkbox').click({ force: true });
    expect((await stepsFor('fractions')).find(({ kind }) => kind === 'OVEN')?.doneAt).toBeNull();

    await on('AIR_DRY', true);
    await page.getByRole('checkbox', { name: /^Out of the hood/ }).click();
    await page.getByText(/^Ticked: air-dry/).waitFor();
    await on('OVEN');
    await oven.getByRole('checkbox', { checked: false }).click();
    await page.getByText(/^Ticked: oven/).waitFor();

    // Without a network a tick is kept on the phone, and sent when there is one.
    await on('HAND_OVER');
    await context.setOffline(true);
    const last = page.locator('[data-step="HAND_OVER"]');
    await last.getByRole('checkbox', { checked: false }).click();
    await last.getByText('Ticked here, not sent yet.').waitFor();
    await context.setOffline(false);
    await last.getByText(/^Done /).waitFor({ timeout: 40_000 });
    await page.goto('/needs');
    await page.getByText('Handed over.').waitFor();
    expect(complaints).toEqual([]);
    expect(foreign).toEqual([]);
    await context.close();
  }, 120_000);
});

describe('a need that cannot be met', () => {
  it('says what stands in the way before it is told, is moved to the first time it could be, and back', async () => {
    const { page, context, complaints } = await visit(browser, served.address);
    await page.goto('/needs');
    const { container } = (await served.ask(
      'query ($label: String!) { container(label: $label) { ... on PlateBox { plates } } }',
      { label: box },
    )) as { container: { plates: number } };
    await openForm(page, '900', onDay(3, '10:00'), 'summer school');
    await page.getByText(`Not by then: 900 plates are needed, ${container.plates} plates`).waitFor();
    await page.getByRole('button', { name: 'Cancel' }).click();

    await openForm(page, '4', hoursFromNow(2), 'night shift');
    await page.getByText(/^Not by then: there is no time left/).waitFor();
    await page.getByRole('button', { name: /^Take .*, the first it could be$/ }).waitFor();
    await page.getByRole('button', { name: 'Need it all the same' }).click();
    const need = page.locator('[data-need]').filter({ hasText: 'night shift' });
    await need.getByText('Not by then').waitFor();
    await need.getByRole('button', { name: /^Move it there/ }).click();
    await need.getByText('Will be ready').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await need.getByText('Not by then').waitFor();
    await need.getByRole('button', { name: /^Drop/ }).click();
    await page.getByText(/^Dropped: 4 plates for night shift/).waitFor();
    await expect.poll(() => need.count()).toBe(0);
    await page.getByRole('button', { name: 'Undo' }).click();
    await need.getByText('Not by then').waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  }, 90_000);

  it('of a file is told with its line, and nothing of the file is added', async () => {
    const { page, context } = await visit(browser, served.address);
    await page.goto('/needs');
    await page.getByText('Needs from a file').click();
    const at = onDay(4, '09:00').replace('T', ' ');
    const lines = (plates: string) =>
      `kind,sorbent,plates,at,forWhom\nPLATES,${plateName},2,${at},first\nPLATES,${plateName},${plates},${at},second`;
    const text = page.getByLabel('Paste it, or drop the file here');
    await text.fill(lines('many'));
    await page.getByRole('button', { name: 'Add them all' }).click();
    await page.getByText(/^Line 3: invalid plates: many/).waitFor();
    expect(await page.getByText('for first').count()).toBe(0);
    await text.fill(lines('3'));
    await page.getByRole('button', { name: 'Add them all' }).click();
    await page.getByText(/^2 needs added/).waitFor();
    await page.locator('[data-need]').filter({ hasText: 'for second' }).waitFor();
    await context.close();
  }, 60_000);
});

describe.each([
  { width: 360, height: 780, colorScheme: 'dark' },
  { width: 1280, height: 900, colorScheme: 'light' },
] as const)('$width px wide, $colorScheme', (look) => {
  it('needs are whole: nothing axe finds, nothing too wide or too small', async () => {
    const { page, context } = await visit(browser, served.address, look);
    await page.goto('/needs');
    await page.locator('[data-need]').first().waitFor();
    await page.getByRole('button', { name: 'Something is needed' }).click();
    await page.getByLabel('How often').selectOption({ label: 'again on weekdays …' });
    await page.getByText('A column', { exact: true }).click();
    expect(await findings(page)).toEqual([]);
    expect(await isTooWide(page)).toBe(false);
    expect(await tooSmall(page)).toEqual([]);
    await context.close();
  }, 60_000);
});
