// A code read by the camera, from a photo or by a keyboard scanner, and what was wanted is recorded: three taps at most.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, visit } from './browser.ts';
import { openFilming, signs } from './filming.ts';
import type { Served } from '../support/asked.ts';
import { serve } from './server.ts';
import { stockShelf, type Shelf } from './shelf.ts';
import { picture } from './symbols.ts';

let served: Served;
let shelf: Shelf;
let plain: Browser;
let filming: Awaited<ReturnType<typeof openFilming>>;
const phone = { width: 360, height: 740, colorScheme: 'dark' } as const;

beforeAll(async () => {
  served = await serve();
  shelf = await stockShelf(served);
  await served.tell('addVessel', { name: 'drum 5 L', innerDiameterMm: 160, heightMm: 250 });
  [plain, filming] = await Promise.all([openBrowser(), openFilming(shelf.drum)]);
});
afterAll(async () => {
  await plain?.close();
  await filming?.close();
  await served?.stop();
});

const openNow = async (page: Page): Promise<void> => {
  await page.goto('/');
  await page.getByText('1 to redry first').waitFor();
};
/** Types as a keyboard scanner does, all within a moment, to whatever has the focus. */
const scan = (page: Page, code: string, end = 'Enter'): Promise<void> =>
  page.evaluate(
    (keys) => {
      const at = document.activeElement ?? document.body;
      for (const key of keys) {
        const free = at.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
        if (free && key.length === 1 && at instanceof HTMLInputElement) {
          at.value += key;
          at.dispatchEvent(new Event('input', { bubbles: true }));
        }
      }
    },
    [...code, end],
  );
const threeOf = (page: Page, label: string) => page.getByRole('region', { name: `What one does with ${label} now` });

describe('a scan by camera to a recorded event', () => {
  it('takes two taps, and asks no foreign host for its reader', async () => {
    const { page, context, foreign, complaints } = await visit(filming.browser, served.address, phone);
    await openNow(page);
    await page.evaluate(() => {
      const counted = window as unknown as { taps: number };
      counted.taps = 0;
      addEventListener('pointerdown', () => (counted.taps += 1));
    });
    await page.getByRole('button', { name: 'Scan', exact: true }).click();
    const three = threeOf(page, shelf.drum);
    await three.getByRole('button', { name: 'Open', exact: true }).click();
    await page.getByRole('status').getByText('Opened').waitFor();
    expect(await page.evaluate(() => (window as unknown as { taps: number }).taps)).toBeLessThanOrEqual(3);
    expect(await three.count()).toBe(0);
    const { container } = await served.ask(`{ container(label: "${shelf.drum}") { isOpen } }`);
    expect(container).toEqual({ isOpen: true });
    expect(foreign).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});

describe('without a camera', () => {
  it('that is said, and a photo is read instead', async () => {
    const { page, context } = await visit(plain, served.address, phone);
    await openNow(page);
    await page.getByRole('button', { name: 'Scan', exact: true }).click();
    await page.getByText('No camera is found on this machine.').waitFor();
    const photo = async (buffer: Buffer) =>
      page.locator('input[type=file]').setInputFiles({ name: 'photo.png', mimeType: 'image/png', buffer });
    await photo((await picture({ bcid: 'code128', text: ' ' })).toBuffer('image/png').subarray(0, 400));
    await page.getByText(/No code is readable in it|no picture that can be read/).waitFor();
    await photo((await picture({ bcid: 'qrcode', text: signs(shelf.forgotten) }, 1200, 900)).toBuffer('image/png'));
    await page.waitForURL(`**/c/${shelf.forgotten}`);
    await threeOf(page, shelf.forgotten).getByRole('button', { name: 'To dry' }).waitFor();
    await context.close();
  });

  it('that was refused, one learns how to allow it', async () => {
    const { page, context } = await visit(plain, served.address, phone);
    await page.addInitScript(() => {
      navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('', 'NotAllowedError'));
    });
    await openNow(page);
    await page.getByRole('button', { name: 'Scan', exact: true }).click();
    await page.getByText('The camera was refused.').waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await context.close();
  });
});

describe('a keyboard scanner', () => {
  it('opens a container from any page, with what one does there under the thumb', async () => {
    const { page, context } = await visit(plain, served.address);
    await page.goto('/air');
    await page.getByText('wet bench').first().waitFor();
    await scan(page, signs(shelf.forgotten), 'Tab');
    await page.waitForURL(`**/c/${shelf.forgotten}`);
    await threeOf(page, shelf.forgotten).getByRole('button', { name: 'Close', exact: true }).waitFor();
    await page.getByRole('button', { name: 'Put these away' }).click();
    await threeOf(page, shelf.forgotten).waitFor({ state: 'detached' });
    await context.close();
  });

  it('is not swallowed by a field one types in, which keeps what it held', async () => {
    const { page, context } = await visit(plain, served.address);
    await page.goto('/came-in');
    const field = page.getByLabel('Lot number, as printed');
    await field.fill('half a lot');
    await scan(page, signs(shelf.drum));
    await page.waitForURL(`**/c/${shelf.drum}`);
    await page.goBack();
    expect(await page.getByLabel('Lot number, as printed').inputValue()).toBe('half a lot');
    await context.close();
  });
});

describe('a supplier’s barcode learned once', () => {
  it('is asked about at first, and the next time fills in all but the number', async () => {
    const { page, context, foreign } = await visit(plain, served.address, phone);
    await openNow(page);
    // The trade item number of GS1's own examples; FNC1 before the expiry.
    await scan(page, '010950110102091710F-131');
    await page.getByRole('heading', { name: 'What is this?' }).waitFor();
    await page.getByText('F-131').waitFor();
    await page.getByLabel('Supplier').selectOption('Marlpit Chemicals');
    await page.getByLabel('In each').fill('1000');
    await page.getByLabel('Vessel').selectOption('drum 5 L');
    await page.getByRole('button', { name: 'Keep it, and fill in what came' }).click();
    await page.getByText('Silica 40 to 63 µm, by its barcode.').waitFor();
    expect(await page.getByLabel('Lot number, as printed').inputValue()).toBe('F-131');

    await page.goto('/');
    await page.getByText('1 to redry first').waitFor();
    await scan(page, '010950110102091710F-132');
    await page.waitForURL('**/came-in?barcode=*');
    await page.getByText('Silica 40 to 63 µm, by its barcode.').waitFor();
    expect(await page.getByLabel('Lot number, as printed').inputValue()).toBe('F-132');
    expect(await page.getByLabel('In each').inputValue()).toBe('1000');
    expect(await page.getByLabel('Supplier').inputValue()).toBe('Marlpit Chemicals');
    await page.getByLabel('How many, all alike').fill('2');
    await page.getByRole('button', { name: 'Put on the book' }).click();
    await page.getByRole('link', { name: 'Print their labels' }).waitFor();
    const { lots } = await served.ask(
      '{ lots(first: 1) { nodes { lotNumber supplier { name } containers { dryGrams } } } }',
    );
    expect(lots).toMatchObject({
      nodes: [{ lotNumber: 'F-132', supplier: { name: 'Marlpit Chemicals' }, containers: [{}, {}] }],
    });
    expect(foreign).toEqual([]);
    await context.close();
  });
});
