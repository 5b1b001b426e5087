// Every page and state that is looked at before it is called done: its address, and what is tapped on it first.
import type { Page } from 'playwright-core';

export interface Pictured {
  name: string;
  /** `label` is a container of the lab, when there is one. */
  path: (label: string | undefined) => string | null;
  act?: (page: Page) => Promise<void>;
}

const of = (path: (label: string) => string) => (label: string | undefined) =>
  label === undefined ? null : path(label);

export const pictured: Pictured[] = [
  { name: 'open-now', path: () => '/' },
  { name: 'lid-off', path: () => '/?show=lid-off' },
  { name: 'all-stock', path: () => '/?show=all' },
  { name: 'beside', path: of((label) => `/?show=all&c=${label}`) },
  { name: 'container', path: of((label) => `/c/${label}`) },
  {
    name: 'container-weigh',
    path: of((label) => `/c/${label}`),
    act: (page) => page.getByRole('button', { name: 'Weigh', exact: true }).first().click(),
  },
  { name: 'needs', path: () => '/needs' },
  {
    name: 'needs-form',
    path: () => '/needs',
    act: (page) => page.getByRole('button', { name: 'Something is needed' }).click(),
  },
  { name: 'sheet', path: () => '/sheet' },
  { name: 'to-dry', path: () => '/to-dry' },
  { name: 'ovens', path: () => '/ovens' },
  { name: 'ovens-week', path: () => '/ovens?show=week' },
  { name: 'plates', path: () => '/plates' },
  { name: 'recipes', path: () => '/recipes' },
  { name: 'learned', path: () => '/learned' },
  { name: 'orders', path: () => '/orders' },
  { name: 'ledger', path: () => '/ledger' },
  { name: 'checks', path: () => '/checks' },
  { name: 'daily', path: () => '/daily' },
  { name: 'charts', path: () => '/charts' },
  { name: 'why', path: () => '/why' },
  { name: 'grades', path: () => '/grades' },
  { name: 'came-in', path: () => '/came-in' },
  { name: 'air', path: () => '/air' },
  { name: 'sorbents', path: () => '/sorbents' },
  { name: 'labels', path: of((label) => `/labels?c=${label}`) },
  { name: 'shelf-count', path: () => '/shelf-count' },
  {
    name: 'check',
    path: () => '/checks',
    act: async (page) => {
      // Not every lab that is looked at has one.
      const checks = page.getByRole('link', { name: / against / });
      if ((await checks.count()) > 0) await checks.last().click();
    },
  },
  { name: 'lab', path: () => '/lab' },
  { name: 'nowhere', path: () => '/attic' },
  { name: 'no-such-label', path: () => '/c/ZZZ-ZZZ' },
];
