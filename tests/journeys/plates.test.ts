// Plates in a real browser: pre-washed tonight, dry of solvent tomorrow and not before, activated, and ready.
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, visit } from './browser.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';
import { hoursAgo, stockShelf } from './shelf.ts';

let served: Served;
let browser: Browser;
let box: string;

beforeAll(async () => {
  [served, browser] = await Promise.all([serve(), openBrowser()]);
  await stockShelf(served);
  await served.tell('addSorbent', { name: 'Glass plates 20 × 20', sorbentClass: 'silica' });
  const received = (await served.tell('receiveLot', {
    sorbent: 'Glass plates 20 × 20',
    lotNumber: 'P-001',
    receivedAt: hoursAgo(48),
    containers: [{ kind: 'PLATE_BOX', plates: 12, room: 'wet bench' }],
  })) as { containers: { label: string }[] };
  box = received.containers[0]?.label ?? '';
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

async function preWashed(): Promise<string> {
  const { container } = (await served.ask(
    `query ($label: String!) { container(label: $label) { timeline(first: 20) { nodes { id type counts } } } }`,
    { label: box },
  )) as { container: { timeline: { nodes: { id: string; type: string; counts: boolean }[] } } };
  return container.timeline.nodes.find(({ type, counts }) => type === 'PRE_WASHED' && counts)?.id ?? '';
}

describe('plates', () => {
  it('are pre-washed tonight, kept from the oven until their solvent is gone, activated tomorrow, and ready', async () => {
    const { page, context, complaints, foreign } = await visit(browser, served.address, { width: 360 });
    await page.goto('/plates');
    await page.getByRole('button', { name: 'Pre-wash plates' }).click();
    const wash = page.getByRole('form', { name: 'Pre-wash plates' });
    await wash.getByText(/Thin nitrile gloves hold chloroform for minutes only/).waitFor();
    await wash.getByLabel('Solvent', { exact: true }).fill('methanol and ethyl acetate, 1:1 v/v');
    await wash.getByRole('button', { name: 'They are washed' }).click();

    const line = page.locator(`[data-label="${box}"]`);
    await page.getByRole('heading', { name: 'Drying in the hood' }).waitFor();
    await line.getByText(/solvent gone from .* at the earliest/).waitFor();
    await line.getByRole('button', { name: /^Solvent gone/ }).click();
    await line.getByRole('button', { name: 'It is gone' }).click();
    await line.getByText(/not before/).waitFor();

    // The night passes: they were washed 13 hours ago.
    const input = { event: await preWashed(), replacement: { at: hoursAgo(13) } };
    await served.tell('correctEvent', input);
    await line.getByRole('button', { name: 'It is gone' }).click();
    await page.getByRole('heading', { name: 'To activate' }).waitFor();

    await line.getByRole('button', { name: /^Activate/ }).click();
    await line.getByLabel('Oven at').fill('130');
    await line.getByLabel('For', { exact: true }).fill('30');
    await line.getByLabel('And stand').selectOption({ label: 'tight' });
    await line.getByRole('button', { name: 'They are activated' }).click();
    await page.getByRole('heading', { name: 'Ready', exact: true }).waitFor();
    await line.getByText(/12 plates, dry until spotted/).waitFor();
    await line.getByText(/Once out: \d+ min in wet bench/).waitFor();

    await page.goto('/');
    await page.getByText(/12 plates ready/).waitFor();
    await page.getByText(/: 12 dry/).waitFor();
    expect(complaints).toEqual([]);
    expect(foreign).toEqual([]);
    await context.close();
  });
});
