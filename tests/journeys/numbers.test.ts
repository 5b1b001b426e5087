// What estimates rest on, put right on the screen: a logger's file with an ambiguous date, an isotherm of the lab's own, another band, the lab's settings.
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
const silica = 'Silica 40 to 63 µm';

beforeAll(async () => {
  [served, browser] = await Promise.all([serve(), openBrowser()]);
  shelf = await stockShelf(served);
  await served.tell('addRoom', {
    name: 'jar',
    kind: 'DESICCATOR',
    assumedHumidityPercent: 30,
    assumedTemperatureC: 22,
  });
  await served.tell('addPerson', { role: 'stores', shortName: 'st' });
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

interface Now {
  exposure: { state: string; scoopWaterFraction: number; upperWaterFraction: number };
}
const nowOf = async (label: string): Promise<Now['exposure']> =>
  (
    (
      await served.ask(
        'query ($label: String!) { container(label: $label) { exposure { state scoopWaterFraction upperWaterFraction } } }',
        { label },
      )
    )['container'] as Now
  ).exposure;

/** What an accessibility check finds, and what hangs over the side or is too small to touch. */
async function found(page: Page): Promise<string[]> {
  const sideways = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  const small = await page
    .locator('main button:visible, main summary:visible')
    .evaluateAll((all) =>
      all.flatMap((one) => (one.getBoundingClientRect().height < 43.5 ? [`${one.textContent} is too low`] : [])),
    );
  return [...(await findings(page)), ...small, ...(sideways > 0 ? [`hangs over by ${sideways} px`] : [])];
}

const looks = [
  { width: 360, height: 780, colorScheme: 'dark' as const },
  { width: 1280, height: 900, colorScheme: 'light' as const },
];

describe('what estimates rest on', () => {
  it('a logger’s file with an ambiguous date is previewed, asked about, booked, and seen in the plot', async () => {
    const { page, context, complaints } = await visit(browser, served.address);
    const first = new Date();
    first.setUTCMonth(first.getUTCMonth() - 1, 3);
    const two = (n: number) => String(n).padStart(2, '0');
    const rows = Array.from({ length: 96 }, (_, i) => {
      const at = new Date(first.getTime() + i * 1_800_000);
      return `${two(at.getUTCDate())}/${two(at.getUTCMonth() + 1)}/${at.getUTCFullYear()} ${two(at.getUTCHours())}:${two(at.getUTCMinutes())},21.5,71.0`;
    });
    rows.splice(10, 0, 'battery changed,,');
    const buffer = Buffer.from(['Time,Temperature (°C),Humidity (%)', ...rows].join('\n'));
    await page.goto('/air');
    await page.locator('input[type=file]').setInputFiles({ name: 'south-wall.csv', mimeType: 'text/csv', buffer });
    await page.getByRole('heading', { name: 'south-wall.csv' }).waitFor();
    await page.getByText('The first rows, as they were understood').waitFor();
    await page.getByText(/1 line left out/).click();
    await page
      .getByText(/line 12/)
      .first()
      .waitFor();
    expect(await page.getByRole('button', { name: 'Bring it in' }).isDisabled()).toBe(true);
    const asked = page.getByRole('group').filter({ hasText: /day first or month first|month first or day first/i });
    await asked.getByLabel('day-first').check();
    await page.getByLabel('Whose air it is').selectOption('wet bench');
    await page.getByRole('button', { name: 'Bring it in' }).click();
    await page.getByText(/192 values came into the air of wet bench/).waitFor();
    const room = page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: 'wet bench' }) });
    // The preview goes and the rooms beneath it move up: nobody taps while they move.
    await page.getByRole('heading', { name: 'south-wall.csv' }).waitFor({ state: 'detached' });
    await room
      .getByText(/south.wall/)
      .first()
      .waitFor();
    await room.getByText('Air over time').click();
    await room.getByRole('button', { name: 'a year' }).click();
    await room.getByRole('application', { name: /^wet bench, temperature/ }).waitFor();
    await page.keyboard.press('x');
    await room.getByText('71.0').first().waitFor();
    expect(await found(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('looked at closer the same hours are read more finely, and one can go back', async () => {
    const { page, context } = await visit(browser, served.address);
    await page.goto('/air');
    const room = page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: 'wet bench' }) });
    await room.getByText('Air over time').click();
    // The stretch that is shown already, tapped again, stays.
    await room.getByRole('button', { name: 'a week' }).click();
    const plot = room.getByRole('application', { name: /^wet bench, water vapour/ });
    await plot.locator('canvas').waitFor();
    await plot.focus();
    for (let i = 0; i < 3; i++) await page.keyboard.press('+');
    await room.getByRole('button', { name: 'back to the whole' }).click();
    await room.getByRole('button', { name: 'back to the whole' }).waitFor({ state: 'detached' });
    await context.close();
  });

  it('a band is changed: what would follow is said first, the list answers differently, undo answers as before', async () => {
    const { page, context } = await visit(browser, served.address, looks[0]);
    const before = await nowOf(shelf.drum);
    expect(before.state).toBe('GOOD');
    await page.goto(`/sorbents?sorbent=${encodeURIComponent(silica)}`);
    await page.getByRole('button', { name: `Change it (${silica})` }).click();
    await page.getByLabel('Water at most').fill('0,5');
    await page.getByText(/With this, \d of \d in use change/).waitFor();
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText(/Kept dry: at most 0\.50\s% water, as received\./).waitFor();
    expect(await nowOf(shelf.drum)).toMatchObject({ state: 'REDRY' });
    await page.getByRole('button', { name: 'dry basis' }).first().click();
    await page.getByText(/at most 0\.50\s% water, dry basis\./).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('Taken back').waitFor();
    const { state, upperWaterFraction } = before;
    expect(await nowOf(shelf.drum)).toMatchObject({ state, upperWaterFraction });
    await context.close();
  });

  it('an impossible band stays in the form, with what would be right beside the field', async () => {
    const { page, context } = await visit(browser, served.address);
    await page.goto(`/sorbents?sorbent=${encodeURIComponent(silica)}`);
    await page.getByRole('button', { name: `Change it (${silica})` }).click();
    await page.getByLabel('It is').selectOption('SET');
    await page.getByLabel('Water', { exact: true }).fill('2');
    await page.getByLabel('Either side').fill('3');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText(/at most the value itself/).waitFor();
    expect(await page.getByLabel('Either side').inputValue()).toBe('3');
    expect(await page.getByLabel('Either side').getAttribute('aria-invalid')).toBe('true');
    await context.close();
  });

  it('an isotherm of the lab’s own is weighed over a salt, drawn, kept, and taken back', async () => {
    const { page, context } = await visit(browser, served.address);
    const before = await nowOf(shelf.forgotten);
    await page.goto(`/sorbents?sorbent=${encodeURIComponent(silica)}`);
    await page.getByText('Weigh it over a salt').click();
    await page.getByLabel('Stood over').selectOption('magnesium chloride');
    await page.getByLabel('After it stood there').fill('10.9');
    await page.getByLabel('After drying').fill('11');
    await page.getByText(/no more than the weighing before/).waitFor();
    await page.getByLabel('After drying').fill('10');
    await page
      .getByRole('img', { name: /^Water over relative humidity at 25 °C, dry basis\. Weighed: 9\.0\s% at 33/ })
      .waitFor();
    await page.getByText(/^One point cannot tell the shape/).waitFor();
    expect(await found(page)).toEqual([]);
    await page.getByRole('button', { name: /^Keep it/ }).click();
    await page.getByText(`${silica} goes by what was weighed`).waitFor();
    await page.getByText('Its numbers').click();
    await page
      .getByText(/Measured here, derived: weighed over magnesium chloride at 22 °C/)
      .first()
      .waitFor();
    expect((await nowOf(shelf.forgotten)).scoopWaterFraction).toBeGreaterThan(before.scoopWaterFraction);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('Taken back').waitFor();
    expect((await nowOf(shelf.forgotten)).scoopWaterFraction).toBeCloseTo(before.scoopWaterFraction, 4);
    await context.close();
  });

  it('a certificate is put right, and the timeline says so', async () => {
    const { page, context } = await visit(browser, served.address, looks[0]);
    await page.goto(`/sorbents?sorbent=${encodeURIComponent(silica)}`);
    await page.getByRole('button', { name: 'Put right lot F-118' }).click();
    await page.getByLabel('Water on its certificate of analysis').fill('1.2');
    await page.getByLabel('Retest date').fill('2030-01-31');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText(/certificate: 1\.20?\s% water, as received · retest 31 January 2030/).waitFor();
    expect(await found(page)).toEqual([]);
    await context.close();
  });

  it('a desiccant is renewed, its jar is dry from then on, and that can be taken back', async () => {
    const { page, context } = await visit(browser, served.address, looks[0]);
    await page.goto('/air');
    const jar = page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: /^jar/ }) });
    await jar.getByText('Nobody said when its desiccant was renewed.').waitFor();
    await jar.getByRole('button', { name: /^Renewed/ }).click();
    await jar.getByLabel('Humidity from then on').fill('1');
    await jar.getByRole('button', { name: 'Note it' }).click();
    await jar.getByText(/22\.0\s°C, 1\s% RH/).waitFor();
    await jar.getByText(/Desiccant renewed today/).waitFor();
    expect(await found(page)).toEqual([]);
    await page.getByRole('button', { name: 'Undo' }).click();
    await jar.getByText(/22\.0\s°C, 30\s% RH/).waitFor();
    await context.close();
  });

  it('the lab’s own figures are a quiet page away, and an answer follows them', async () => {
    const { page, context } = await visit(browser, served.address);
    await page.goto('/');
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('link', { name: 'The lab’s settings' }).click();
    await page.getByRole('button', { name: 'Change what decides a state' }).click();
    await page.getByLabel('Redry from a chance of').fill('140');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText('0.99 or less').waitFor();
    await page.getByLabel('Redry from a chance of').fill('99');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText(/Redry from a chance of 99\s%/).waitFor();
    await page.getByRole('button', { name: 'Back to the default of what decides a state' }).click();
    await page.getByText(/Redry from a chance of 50\s%/).waitFor();
    await page.getByRole('button', { name: 'Change stores' }).click();
    await page.getByLabel('Role').fill('stores person');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByRole('button', { name: 'Change stores person' }).waitFor();
    await context.close();
  });

  it.each(looks)('nothing is found on these pages at $width px, $colorScheme, with everything opened', async (look) => {
    const { page, context, foreign } = await visit(browser, served.address, look);
    for (const path of [`/sorbents?sorbent=${encodeURIComponent(silica)}`, '/lab', '/air']) {
      await page.goto(path);
      await page.locator('main h2').first().waitFor();
      if (path.startsWith('/sorbents')) await page.getByRole('heading', { name: 'Lots' }).waitFor();
      for (const change of await page.getByRole('button', { name: /^(Change it|Put right|Its own band)/ }).all()) {
        if (await change.isVisible()) await change.click();
      }
      await page.locator('details').evaluateAll((all) => {
        for (const details of all) (details as HTMLDetailsElement).open = true;
      });
      await page.waitForTimeout(300);
      expect(await found(page), path).toEqual([]);
    }
    expect(foreign).toEqual([]);
    await context.close();
  });
});
