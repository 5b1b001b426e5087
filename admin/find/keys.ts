// What each key does, and the pages one can go to.
import { containerPath, go, here } from '../route.svelte.ts';
import { giveCommand, type Command } from './commands.ts';

const commands: Record<string, Command> = { o: 'lid', t: 'take', w: 'weigh', m: 'move', n: 'count', d: 'dry' };

interface Place {
  path: string;
  name: string;
}
/** What a day asks for, in its order. */
export const often: readonly Place[] = [
  { path: '/', name: 'Open now' },
  { path: '/sheet', name: 'Prep sheet' },
  { path: '/needs', name: 'Needs' },
  { path: '/to-dry', name: 'To dry' },
  { path: '/ovens', name: 'Ovens' },
  { path: '/plates', name: 'Plates' },
];
/** The rest, which one comes to now and then. */
export const seldom: readonly Place[] = [
  { path: '/came-in', name: 'Came in' },
  { path: '/shelf-count', name: 'Shelf count' },
  { path: '/orders', name: 'Order' },
  { path: '/ledger', name: 'Ledger' },
  { path: '/labels', name: 'Labels' },
  { path: '/air', name: 'Rooms and air' },
  { path: '/sorbents', name: 'Sorbents' },
  { path: '/recipes', name: 'Recipes' },
  { path: '/daily', name: 'Daily check' },
  { path: '/checks', name: 'Lot checks' },
  { path: '/charts', name: 'Charts' },
  { path: '/why', name: 'Lot, plate, person or air' },
  { path: '/grades', name: 'Activity grades' },
  { path: '/learned', name: 'What we learned' },
  { path: '/lab', name: 'The lab’s settings' },
];
export const pages: readonly Place[] = [...often, ...seldom];

/** The container that keys act on: the line one is on, else the one the page shows. */
function labelAtHand(): string | null {
  const line = document.activeElement?.closest<HTMLElement>('[data-label]');
  const shown = document.querySelector<HTMLElement>('[data-shown]');
  return line?.dataset['label'] ?? shown?.dataset['shown'] ?? null;
}

function step(by: 1 | -1): void {
  const lines = [...document.querySelectorAll<HTMLElement>('[data-label] [data-line]')];
  const at = lines.findIndex((line) => line.closest('[data-label]')?.contains(document.activeElement));
  const next = lines[at < 0 ? (by > 0 ? 0 : lines.length - 1) : at + by];
  next?.focus();
  next?.scrollIntoView({ block: 'nearest' });
}

export interface KeyDoings {
  showKeys: () => void;
  undo: () => void;
}

/** Does what a single key asks for; unknown keys do nothing. */
export function doKey(key: string, { showKeys, undo }: KeyDoings): void {
  const page = pages[Number(key) - 1];
  const command = commands[key];
  if (key === '/') document.querySelector<HTMLElement>('[data-finder]')?.focus();
  else if (key === '?') showKeys();
  else if (key === 'u') undo();
  else if (key === 'j') step(1);
  else if (key === 'k') step(-1);
  else if (key === 'x') document.querySelector<HTMLElement>('[data-as-table]')?.click();
  else if (page) go(page.path);
  else if (command) {
    const label = labelAtHand();
    if (label !== null && !giveCommand(label, command) && here.path === '/') go(containerPath(label));
  }
}
