// From the tap on "Scan" to the event that is recorded, read by a camera that sees a label: a phone in a real browser.
import { visit } from '../journeys/browser.ts';
import { openFilming } from '../journeys/filming.ts';
import { serveApart } from '../support/own-server.ts';
import { stockShelf } from '../journeys/shelf.ts';
import { quantile, spread, type Bench } from './bench.ts';

const targetS = 5;
const phone = { width: 360, height: 740, colorScheme: 'dark' } as const;

/** Seconds from the tap on "Scan" until the opening or closing of the drum that was scanned is told. */
export async function scan(short: boolean): Promise<Bench> {
  const served = await serveApart();
  try {
    const { drum } = await stockShelf(served);
    const { browser, close } = await openFilming(drum);
    try {
      const { page } = await visit(browser, served.address, phone);
      const took: number[] = [];
      for (let run = 0; run < (short ? 2 : 8); run += 1) {
        await page.goto('/');
        await page.locator('[data-label]').first().waitFor();
        const began = performance.now();
        await page.getByRole('button', { name: 'Scan', exact: true }).click();
        const three = page.getByRole('region', { name: `What one does with ${drum} now` });
        await three.getByRole('button', { name: run % 2 === 0 ? 'Open' : 'Close', exact: true }).click();
        await page
          .getByRole('status')
          .getByText(run % 2 === 0 ? 'Opened' : 'Closed')
          .waitFor();
        took.push((performance.now() - began) / 1000);
      }
      const value = quantile(took, 0.5);
      const details = { 's, first': took[0] ?? null, 's, worst': Math.max(...took) };
      return { value, unit: 's', against: `${targetS} s`, ratio: value / targetS, spread: spread(took), details };
    } finally {
      await close();
    }
  } finally {
    await served.stop();
  }
}
