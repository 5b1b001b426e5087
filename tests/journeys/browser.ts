// A browser for the journeys: Chromium without a window, in which every foreign host is blocked and counted.
import { chromiumPath } from '../../.config/chromium.ts';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';

/** Keeps the browser itself from calling anybody. */
const args = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** `more` are switches of Chromium beyond the usual. */
export const openBrowser = (more: readonly string[] = []): Promise<Browser> =>
  chromium.launch({ executablePath: chromiumPath(), args: [...args, ...more] });

export interface Visit {
  page: Page;
  context: BrowserContext;
  /** Addresses of other hosts that the pages asked for. */
  foreign: string[];
  /** What the pages complained of: errors thrown, and refusals by the content policy. */
  complaints: string[];
}

export interface Look {
  width?: number;
  height?: number;
  colorScheme?: 'light' | 'dark';
  /** With the service worker; without it, every request is the page's own and can be watched. */
  worker?: boolean;
}

/** A fresh visit to a server: no cookies, no drafts, nothing remembered. */
export async function visit(
  browser: Browser,
  address: string,
  { width = 1280, height = 900, colorScheme = 'light', worker = false }: Look = {},
): Promise<Visit> {
  const context = await browser.newContext({
    baseURL: address,
    viewport: { width, height },
    colorScheme,
    reducedMotion: 'reduce',
    locale: 'en-GB',
    serviceWorkers: worker ? 'allow' : 'block',
  });
  const foreign: string[] = [];
  const complaints: string[] = [];
  await context.route(
    (url) => url.origin !== new URL(address).origin && !['data:', 'blob:'].includes(url.protocol),
    (route) => {
      foreign.push(route.request().url());
      return route.abort();
    },
  );
  const page = await context.newPage();
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error' && /Content Security Policy|Uncaught/i.test(message.text()))
      complaints.push(message.text());
  });
  return { page, context, foreign, complaints };
}
