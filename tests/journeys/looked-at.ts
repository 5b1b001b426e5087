// What an accessibility check finds on a page as it stands, and what is too small for a finger.
import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** WCAG 2.2 to AA, and what axe calls best practice. */
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What axe finds on the page as it stands. Throws when it looked at next to nothing. */
export async function findings(page: Page): Promise<string[]> {
  // The pages hold no frames, so that one pass in the page itself is all there is, at a third of the time.
  // Of what is in order only the number of rules is read: describing every sound element costs two to four times as long.
  const { violations, passes } = await new AxeBuilder({ page })
    .options({ resultTypes: ['violations'] })
    .withTags(rules)
    .setLegacyMode(true)
    .analyze();
  if (passes.length <= 10) throw new Error(`only ${passes.length} rules were looked at`);
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`);
}

/** Controls lower than 44 px; links within a sentence are not meant. */
export const tooSmall = (page: Page): Promise<(string | undefined)[]> =>
  page
    .locator('main button, main select, main summary, main input:not([type=checkbox]), .foot button')
    .evaluateAll((controls) =>
      controls
        .filter((control) => {
          const { height } = control.getBoundingClientRect();
          return height > 0 && height < 44;
        })
        .map((control) => control.textContent?.trim()),
    );

export const isTooWide = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
