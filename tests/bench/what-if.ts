// A slider of "what if" moved by one step until the sentence that answers it stands there, in a real browser.
import { openBrowser, visit } from '../journeys/browser.ts';
import { serveApart } from '../support/own-server.ts';
import { quantile, spread, type Bench } from './bench.ts';

const targetMs = 200;

/** Moves the slider and waits until the answer is another one and painted; text, since it runs in the page. */
const sliding = `(async (to) => {
  const slider = document.querySelector('input[type=range]');
  const said = document.querySelector('[data-would]');
  const before = said.textContent;
  const began = performance.now();
  slider.value = to;
  slider.dispatchEvent(new Event('input', { bubbles: true }));
  while (said.textContent === before && performance.now() - began < 20000) await new Promise(requestAnimationFrame);
  if (said.textContent === before) throw new Error('no other answer for ' + to + ': ' + before);
  await new Promise(requestAnimationFrame);
  return performance.now() - began;
})`;

/** Milliseconds from a slider's step to its sentence, on open containers of the demo lab. */
export async function whatIf(short: boolean): Promise<Bench> {
  const [served, browser] = await Promise.all([serveApart({ demo: true }), openBrowser()]);
  try {
    const { containers } = (await served.ask(
      '{ containers(first: 6, filter: { isOpen: true, kind: PORTION }) { nodes { label } } }',
    )) as { containers: { nodes: { label: string }[] } };
    const { page } = await visit(browser, served.address);
    const took: number[] = [];
    for (const { label } of containers.nodes.slice(0, short ? 2 : 6)) {
      await page.goto(`/c/${label}`);
      await page.getByRole('button', { name: 'it stays open' }).click();
      await page.locator('[data-would]').filter({ hasNotText: 'Working it out' }).waitFor();
      for (const to of [4, 30, 8, 60, 20]) {
        await page.waitForTimeout(400);
        took.push(await page.evaluate<number>(`${sliding}(${to})`));
      }
    }
    if (took.length === 0) throw new Error('the demo lab has no open portion');
    const value = quantile(took, 0.5);
    return {
      value,
      unit: 'ms',
      against: `${targetMs} ms`,
      ratio: value / targetMs,
      spread: spread(took),
      details: { 'ms, worst': Math.round(Math.max(...took)), containers: took.length / 5 },
    };
  } finally {
    await browser.close();
    await served.stop();
  }
}
