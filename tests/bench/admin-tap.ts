// From a tap to its answer on the screen: a lid closed and opened, a form, a container beside, a filter; with eighty and with
// five thousand containers. Milliseconds from the tap until the frame that shows the answer is painted.
import type { Browser, Page } from 'playwright-core';
import { openBrowser, visit } from '../journeys/browser.ts';
import { serveApart } from '../support/own-server.ts';
import { quantile, spread, type Bench } from './bench.ts';

/** A tap is answered within this, ms. */
const targetMs = 100;

/**
 * Taps what the first selector names and waits for the frame in which the second one is (or, with `!`, no longer is) there.
 * Text, since it runs in the page.
 */
const tapping = `
  globalThis.tap = (tapped, awaited) => new Promise((painted, failed) => {
    const gone = awaited.startsWith('!');
    const found = (selector) => document.evaluate(selector, document, null, XPathResult.FIRST_ORDERED_NODE_TYPE).singleNodeValue;
    const target = found(tapped);
    if (!target) return failed(new Error('nothing to tap: ' + tapped));
    const began = performance.now();
    const late = setTimeout(() => failed(new Error('never there: ' + awaited)), 20000);
    const look = () => {
      if (Boolean(found(gone ? awaited.slice(1) : awaited)) === gone) return requestAnimationFrame(look);
      clearTimeout(late);
      // The frame after the one that finds it has been painted with it.
      const channel = new MessageChannel();
      channel.port1.onmessage = () => painted(performance.now() - began);
      channel.port2.postMessage(null);
    };
    target.click();
    requestAnimationFrame(look);
  });
`;

interface Tap {
  tapped: string;
  awaited: string;
}

const line = (label: string): string => `//*[@data-label='${label}']`;
const button = (label: string, name: string): string => `${line(label)}//button[normalize-space(text())='${name}']`;

/** What is tapped in turn; each leaves the page as it was. */
function taps(label: string): Record<string, Tap[]> {
  const form = `${line(label)}//form`;
  return {
    'a lid': [
      { tapped: button(label, 'Close'), awaited: button(label, 'Open') },
      { tapped: button(label, 'Open'), awaited: button(label, 'Close') },
    ],
    'a form': [
      { tapped: button(label, 'Weigh'), awaited: form },
      { tapped: `${form}//button[normalize-space(text())='Cancel']`, awaited: `!${form}` },
    ],
    'a filter': [
      { tapped: "//a[text()='Lid off']", awaited: "//a[text()='Lid off' and @aria-current='true']" },
      { tapped: "//a[text()='All stock']", awaited: "//a[text()='All stock' and @aria-current='true']" },
    ],
    'a container beside': [
      { tapped: `${line(label)}//a[@data-line]`, awaited: `//*[@data-shown='${label}']` },
      {
        tapped: "//button[text()='Close this side']",
        awaited: "!//section[@class and starts-with(@aria-label,'Container')]",
      },
    ],
  };
}

async function measured(page: Page, rounds: number): Promise<Record<string, number[]>> {
  const times: Record<string, number[]> = {};
  for (let round = 0; round < rounds; round += 1) {
    const label = await page.evaluate(() => {
      const open = [...document.querySelectorAll<HTMLElement>('[data-label]')].find((one) =>
        [...one.querySelectorAll('button')].some((each) => each.textContent?.trim() === 'Close'),
      );
      const buttons = [...(open?.querySelectorAll('button') ?? [])];
      buttons.find((each) => each.textContent?.trim().startsWith('More'))?.click();
      return open?.dataset['label'] ?? '';
    });
    await page.locator(`[data-label="${label}"]`).getByRole('button', { name: 'Weigh', exact: true }).waitFor();
    for (const [name, each] of Object.entries(taps(label))) {
      for (const { tapped, awaited } of each) {
        // What the tap before fetched may still be on its way.
        await page.locator(`xpath=${tapped}`).first().waitFor();
        const call = `tap(${JSON.stringify(tapped)}, ${JSON.stringify(awaited)})`;
        (times[name] ??= []).push(await page.evaluate<number>(call));
        await page.waitForTimeout(150);
      }
    }
    await page.reload();
    await page.locator('[data-label]').first().waitFor();
    await page.waitForTimeout(500);
  }
  return times;
}

async function lab(browser: Browser, count: number, rounds: number): Promise<Record<string, number[]>> {
  const served = await serveApart({ large: count });
  try {
    const { page, context } = await visit(browser, served.address);
    await page.addInitScript({ content: tapping });
    await page.goto('/?show=all');
    await page.locator('[data-label]').first().waitFor();
    // The screens that are fetched at leisure are there by then, as for somebody who has looked at the list.
    await page.waitForTimeout(4_500);
    const times = await measured(page, rounds);
    await context.close();
    return times;
  } finally {
    await served.stop();
  }
}

/** Milliseconds from a tap to its answer painted: the median of all taps of the larger lab, against 100 ms. */
export async function adminTap(short: boolean): Promise<Bench> {
  const browser = await openBrowser();
  try {
    const details: Record<string, number> = {};
    let all: number[] = [];
    for (const count of [80, 5_000]) {
      const times = await lab(browser, count, short ? 2 : 8);
      all = Object.values(times).flat();
      for (const [name, of] of Object.entries(times)) {
        const [median, worst] = [quantile(of, 0.5), Math.max(...of)];
        details[`${name}, ${count} containers, median ms`] = Math.round(median);
        details[`${name}, ${count} containers, worst ms`] = Math.round(worst);
        details[`${name}, ${count} containers, median over ${targetMs} ms`] = Number((median / targetMs).toFixed(2));
        details[`${name}, ${count} containers, worst over ${targetMs} ms`] = Number((worst / targetMs).toFixed(2));
      }
    }
    const value = quantile(all, 0.5);
    return { value, unit: 'ms', against: `${targetMs} ms`, ratio: value / targetMs, spread: spread(all), details };
  } finally {
    await browser.close();
  }
}
