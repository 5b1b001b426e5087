// What the first load of the admin costs: bytes as they travel, and how soon something useful stands on the screen.
import { openBrowser, visit } from '../journeys/browser.ts';
import { serveApart } from '../support/own-server.ts';
import { stockShelf } from '../journeys/shelf.ts';
import { quantile, spread, type Bench } from './bench.ts';

/** What the page may weigh, compressed. */
const mostBytes = 60_000;

/** Notes in the page when its first container is painted, and how far it jumped until then; text, since it runs there. */
const watching = `
  globalThis.seen = { jump: 0, useful: 0 };
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) seen.jump += entry.value;
  }).observe({ type: 'layout-shift', buffered: true });
  requestAnimationFrame(function look() {
    if (document.querySelector('[data-label]')) requestAnimationFrame(() => (seen.useful = performance.now()));
    else requestAnimationFrame(look);
  });
`;

/** Bytes of the first load of "Open now" with what it needs, and milliseconds until the first answer is painted. */
export async function adminLoad(short: boolean): Promise<Bench> {
  const [served, browser] = await Promise.all([serveApart(), openBrowser()]);
  try {
    await stockShelf(served);
    const bytes: number[] = [];
    const useful: number[] = [];
    const jumps: number[] = [];
    for (let run = 0; run < (short ? 3 : 10); run += 1) {
      const { page, context } = await visit(browser, served.address, { width: 360, height: 780 });
      const session = await context.newCDPSession(page);
      await session.send('Network.enable');
      let travelled = 0;
      const assets = new Map<string, string>();
      session.on('Network.responseReceived', ({ requestId, response }) => assets.set(requestId, response.url));
      session.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
        if (!assets.get(requestId)?.endsWith('/graphql')) travelled += encodedDataLength;
      });
      await page.addInitScript({ content: watching });
      await page.goto('/');
      await page.locator('[data-label]').first().waitFor();
      await page.waitForTimeout(400);
      const seen = await page.evaluate(
        () => (globalThis as unknown as { seen: { jump: number; useful: number } }).seen,
      );
      bytes.push(travelled);
      useful.push(seen.useful);
      jumps.push(seen.jump);
      await context.close();
    }
    const value = quantile(bytes, 0.5);
    return {
      value,
      unit: 'bytes',
      against: `${mostBytes} bytes`,
      ratio: value / mostBytes,
      spread: spread(bytes),
      details: {
        'ms to the first answer, median': Math.round(quantile(useful, 0.5)),
        'ms to the first answer, worst': Math.round(Math.max(...useful)),
        'layout shift, worst': Number(Math.max(...jumps).toFixed(4)),
      },
    };
  } finally {
    await browser.close();
    await served.stop();
  }
}
