// The list of open stock as it stands on the page: asked in pages, brought up to date by itself, held still under a hand.
import { untrack } from 'svelte';
import { onChanged } from '../act/record.svelte.ts';
import { ask, problemWords } from '../ask.ts';
import type { Line } from '../fields.ts';
import type { Answer } from '../shape.ts';
import { heldOrder, outOfPlace } from './order.ts';
import { dayQuestion, pageQuestion, type Filter } from './questions.ts';

const PAGE = 100;
const EVERY_MS = 30_000;

export type Day = Answer<typeof dayQuestion.shape>;
type Page = Answer<typeof pageQuestion.shape>['containers'];

/** `isHeld` says whether somebody's hand is on the list. Call it while a component is being set up. */
export function openList(filterOf: () => Filter, isHeld: () => boolean) {
  let lines = $state.raw<Line[] | null>(null);
  let fresh: Line[] = [];
  let day = $state.raw<Day | null>(null);
  let total = $state(0);
  let next = $state<string | null>(null);
  let moved = $state(0);
  let problem = $state('');
  let loading = $state(false);
  let turn = 0;

  async function pagesUpTo(filter: Filter, wanted: number): Promise<{ nodes: Line[]; last: Page }> {
    const page = async (after: string | null) => (await ask(pageQuestion, { filter, first: PAGE, after })).containers;
    let last = await page(null);
    const nodes = [...last.nodes];
    while (nodes.length < wanted && last.pageInfo.hasNextPage) {
      last = await page(last.pageInfo.endCursor);
      nodes.push(...last.nodes);
    }
    return { nodes, last };
  }

  function settle(): void {
    lines = fresh;
    moved = 0;
  }

  async function refresh(): Promise<void> {
    const mine = ++turn;
    try {
      const [{ nodes, last }, figures] = await Promise.all([
        pagesUpTo(filterOf(), lines?.length ?? 0),
        ask(dayQuestion, {}),
      ]);
      if (mine !== turn) return;
      fresh = nodes;
      day = figures;
      total = last.totalCount;
      next = last.pageInfo.hasNextPage ? last.pageInfo.endCursor : null;
      problem = '';
      if (lines === null || !isHeld()) settle();
      else {
        moved = outOfPlace(lines, fresh);
        lines = heldOrder(lines, fresh);
      }
    } catch (error) {
      if (mine === turn) problem = problemWords(error);
    }
  }

  async function more(): Promise<void> {
    if (next === null || loading) return;
    loading = true;
    const mine = ++turn;
    try {
      const { containers } = await ask(pageQuestion, { filter: filterOf(), first: PAGE, after: next });
      if (mine !== turn) return;
      const have = new Set(lines?.map(({ label }) => label));
      lines = [...(lines ?? []), ...containers.nodes.filter(({ label }) => !have.has(label))];
      next = containers.pageInfo.hasNextPage ? containers.pageInfo.endCursor : null;
      problem = '';
    } catch (error) {
      problem = problemWords(error);
    } finally {
      loading = false;
    }
  }

  $effect(() => {
    void filterOf();
    untrack(() => {
      lines = null;
      moved = 0;
      void refresh();
    });
  });
  $effect(() => {
    const again = () => document.visibilityState === 'visible' && void refresh();
    const timer = setInterval(again, EVERY_MS);
    document.addEventListener('visibilitychange', again);
    const deaf = onChanged((changed) => {
      lines = lines?.map((line) => (line.label === changed.label ? changed : line)) ?? null;
      void refresh();
    });
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', again);
      deaf();
    };
  });

  return {
    get lines() {
      return lines;
    },
    get day() {
      return day;
    },
    get total() {
      return total;
    },
    get hasMore() {
      return next !== null;
    },
    get loading() {
      return loading;
    },
    /** How many lines wait to change places. */
    get moved() {
      return moved;
    },
    get problem() {
      return problem;
    },
    settle,
    refresh,
    more,
  };
}
