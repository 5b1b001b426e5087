// The stock as it was last seen: every line by its label, kept on this machine so that it opens when nobody answers.
import { SvelteMap } from 'svelte/reactivity';
import { onChanged } from '../act/record.svelte.ts';
import { ask } from '../ask.ts';
import type { Line } from '../fields.ts';
import { recall, remember } from '../later/store.ts';
import { linesQuestion, stockQuestion } from './questions.ts';

interface Seen {
  line: Line;
  /** When, ms on this machine's clock. */
  atMs: number;
}

const NAME = 'stock';
/** As many lines as one question brings. */
export const MOST_LINES = 60;
const BETWEEN_QUESTIONS_MS = 250;
const OLD_MS = 6 * 3_600_000;
const SAVE_AFTER_MS = 4_000;

const lines = new SvelteMap<string, Seen>();
let saving: ReturnType<typeof setTimeout> | undefined;

const whenIdle = (run: () => void): void => {
  if ('requestIdleCallback' in globalThis) requestIdleCallback(run, { timeout: 5_000 });
  else setTimeout(run, 200);
};

function note(some: readonly Line[], atMs = Date.now()): void {
  for (const line of some) lines.set(line.label, { line, atMs });
  saving ??= setTimeout(() => {
    saving = undefined;
    whenIdle(() => void remember(NAME, [...lines.values()]));
  }, SAVE_AFTER_MS);
}

let recalling: Promise<void> | undefined;

/** Takes up what this machine kept, where nothing newer is known; not what an older version kept in another shape. */
async function takeUp(): Promise<void> {
  for (const seen of (await recall<Seen[]>(NAME)) ?? [])
    if ('keptWords' in seen.line && !lines.has(seen.line.label)) lines.set(seen.line.label, seen);
}

/** Fetches, at leisure, what was never seen or long ago, so that the whole stock opens without a network; drops what is gone. */
async function gather(): Promise<void> {
  const { groups } = await ask(stockQuestion, {});
  const all = groups.flatMap(({ labels }) => labels);
  const there = new Set(all);
  for (const label of lines.keys()) if (!there.has(label)) lines.delete(label);
  const isOld = (label: string) => Date.now() - (lines.get(label)?.atMs ?? 0) > OLD_MS;
  const wanted = all.filter(isOld);
  for (let from = 0; from < wanted.length; from += MOST_LINES) {
    const { containers } = await ask(linesQuestion, { labels: wanted.slice(from, from + MOST_LINES) });
    note(containers.nodes);
    await new Promise((go) => setTimeout(go, BETWEEN_QUESTIONS_MS));
  }
}

export const stock = {
  line: (label: string): Line | undefined => lines.get(label)?.line,
  seenAt: (label: string): Date | null => {
    const seen = lines.get(label);
    return seen ? new Date(seen.atMs) : null;
  },
  all: (): Line[] => [...lines.values()].map(({ line }) => line),
  /** When the newest of it was seen. */
  get lastSeen(): Date | null {
    const newest = Math.max(...[...lines.values()].map(({ atMs }) => atMs));
    return Number.isFinite(newest) ? new Date(newest) : null;
  },
  note,
  /** Waits for what this machine kept. */
  recalled: (): Promise<void> => (recalling ??= takeUp()),
  gather,
};

onChanged((line) => note([line]));
