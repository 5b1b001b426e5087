// A year of five-minute readings in a real browser: from the tap on "a year" until its three plots are drawn.
import { openBrowser, visit } from '../journeys/browser.ts';
import type { Served } from '../support/asked.ts';
import { serveApart } from '../support/own-server.ts';
import { hoursAgo } from '../journeys/shelf.ts';
import { quantile, spread, type Bench } from './bench.ts';

const targetMs = 1_000;
const perCall = 10_000;
const readingsADay = 288;

async function keepYear({ tell }: Served, days: number): Promise<void> {
  const count = days * readingsADay;
  for (let from = 0; from < count; from += perCall) {
    const readings = Array.from({ length: Math.min(perCall, count - from) }, (_, i) => {
      const hours = (count - from - i) / 12;
      return {
        at: hoursAgo(hours),
        temperatureC: 21 + Math.sin(hours / 4),
        humidityPercent: 45 + 10 * Math.sin(hours / 900) + 3 * Math.sin(hours / 5),
      };
    });
    await tell('addReadings', { room: 'long record', sensor: 'shelf', readings });
  }
}

/** Taps "a year" and waits until other plots stand there; text, since it runs in the page. */
const drawing = `(async () => {
  const button = [...document.querySelectorAll('button')].filter((one) => one.textContent === 'a year').at(-1);
  const room = button.closest('li');
  const before = room.querySelector('canvas');
  const began = performance.now();
  button.click();
  while (room.querySelector('canvas') === before || room.querySelectorAll('canvas').length < 3)
    await new Promise(requestAnimationFrame);
  return performance.now() - began;
})()`;

/** Milliseconds until a year of a room's air is drawn. */
export async function yearOfAir(short: boolean): Promise<Bench> {
  const [served, browser] = await Promise.all([serveApart(), openBrowser()]);
  try {
    await served.tell('addRoom', { name: 'long record' });
    await keepYear(served, 366);
    const { page } = await visit(browser, served.address);
    await page.goto('/air');
    const room = page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: 'long record' }) });
    await room.getByText('Air over time').click();
    await room.locator('canvas').nth(2).waitFor();
    const took: number[] = [];
    for (let run = 0; run < (short ? 3 : 15); run += 1) {
      await room.getByRole('button', { name: 'a month' }).click();
      await room.locator('canvas').nth(2).waitFor();
      await page.waitForTimeout(300);
      took.push(await page.evaluate<number>(drawing));
    }
    const value = quantile(took, 0.5);
    return {
      value,
      unit: 'ms',
      against: `${targetMs} ms`,
      ratio: value / targetMs,
      spread: spread(took),
      details: { 'ms, worst': Math.round(Math.max(...took)) },
    };
  } finally {
    await browser.close();
    await served.stop();
  }
}
