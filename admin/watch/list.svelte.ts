// The list of open stock as it stands on the page: whole as labels, line by line as they come into sight, held still under a hand.
import { untrack } from 'svelte';
import { onChanged } from '../act/record.svelte.ts';
import { ask, problemWords, Unreachable } from '../ask.ts';
import { fits, type View } from './filter.ts';
import { groupsOf, outOfPlace } from './order.ts';
import {
  againQuestion,
  linesQuestion,
  openNowQuestion,
  pulseQuestion,
  type Filter,
  type Group,
  type Pulse,
} from './questions.ts';
import { MOST_LINES, stock } from './stock.svelte.ts';

const FIRST_LINES = 40;
const EVERY_MS = 15_000;
/** A line that comes into sight is asked again when it was seen longer ago, ms. */
const FRESH_MS = 120_000;
const GATHER_AFTER_MS = 8_000;

/**
 * `isHeld` says whether somebody's hand is on the list; `inPlace` runs a change so that nothing moves under it.
 * Call it while a component is being set up.
 */
export function openList(viewNow: () => View, isHeld: () => boolean, inPlace: (change: () => void) => void) {
  const filterNow = (): Filter => viewNow().filter;
  let shown = $state.raw<Group[] | null>(null);
  let fresh: Group[] = [];
  let day = $state.raw<Pulse['day'] | null>(null);
  let moved = $state(0);
  let problem = $state('');
  /** Nobody answered: what is shown was seen at this instant. */
  let asOf = $state.raw<Date | null>(null);
  let last = '';
  let turn = 0;
  const inSight = new Map<string, number>();

  function settle(): void {
    shown = fresh;
    moved = 0;
  }

  function heardOf({ day: figures, lab, estimates }: Pulse): boolean {
    day = figures;
    problem = '';
    asOf = null;
    const now = `${lab.lastChange} ${estimates.finishedAt}`;
    const isNews = now !== last;
    last = now;
    return isNews;
  }

  function placed(groups: Group[]): void {
    fresh = groups;
    if (shown === null || !isHeld()) settle();
    else moved = outOfPlace(shown, fresh);
  }

  async function withoutAnswer(error: unknown): Promise<void> {
    if (error instanceof Unreachable) {
      await stock.recalled();
      const kept = stock.all().filter((line) => fits(line, viewNow()));
      if (shown === null && stock.lastSeen !== null) shown = groupsOf(kept);
      if (shown !== null && stock.lastSeen !== null) {
        asOf = stock.lastSeen;
        problem = '';
        return;
      }
    }
    problem = problemWords(error);
  }

  async function asked(run: (mine: () => boolean) => Promise<void>): Promise<void> {
    const mine = ++turn;
    try {
      await run(() => mine === turn);
    } catch (error) {
      if (mine === turn) await withoutAnswer(error);
    }
  }

  const look = (): Promise<void> =>
    asked(async (isNewest) => {
      const answer = await ask(openNowQuestion, { filter: filterNow(), first: FIRST_LINES });
      if (!isNewest()) return;
      inPlace(() => {
        heardOf(answer);
        stock.note(answer.containers.nodes);
        placed(answer.groups);
      });
    });

  const again = (): Promise<void> =>
    asked(async (isNewest) => {
      const labels = [...inSight.keys()].slice(0, 100);
      const answer = await ask(againQuestion, { filter: filterNow(), labels });
      if (!isNewest()) return;
      inPlace(() => {
        heardOf(answer);
        stock.note(answer.containers.nodes);
        placed(answer.groups);
      });
    });

  /** Asks whether anything was written or estimated since, and only then for the list. */
  async function feel(): Promise<void> {
    if (shown === null || asOf !== null) return look();
    try {
      if (heardOf(await ask(pulseQuestion, {}))) await again();
    } catch (error) {
      await withoutAnswer(error);
    }
  }

  const wanted = new Set<string>();
  let fetching = false;
  async function fetchWanted(): Promise<void> {
    if (fetching) return;
    fetching = true;
    try {
      while (wanted.size > 0) {
        // What came into sight last is what one looks at.
        const labels = [...wanted].slice(-MOST_LINES);
        for (const label of labels) wanted.delete(label);
        const { containers } = await ask(linesQuestion, { labels });
        stock.note(containers.nodes);
      }
    } catch (error) {
      wanted.clear();
      await withoutAnswer(error);
    } finally {
      fetching = false;
    }
  }

  /** Lines that come into sight: they are kept fresh until they leave it. Returns how they leave. */
  function see(labels: readonly string[]): () => void {
    for (const label of labels) {
      inSight.set(label, (inSight.get(label) ?? 0) + 1);
      const seenMs = stock.seenAt(label)?.getTime() ?? 0;
      if (Date.now() - seenMs > FRESH_MS) wanted.add(label);
    }
    if (wanted.size > 0) setTimeout(() => void fetchWanted(), 20);
    return () => {
      for (const label of labels) {
        const left = (inSight.get(label) ?? 1) - 1;
        if (left > 0) inSight.set(label, left);
        else inSight.delete(label);
        wanted.delete(label);
      }
    };
  }

  $effect(() => {
    void viewNow();
    untrack(() => {
      shown = null;
      moved = 0;
      void look();
    });
  });
  $effect(() => {
    const whenSeen = () => document.visibilityState === 'visible' && void feel();
    const timer = setInterval(whenSeen, EVERY_MS);
    const leisure = setTimeout(
      () =>
        void stock
          .recalled()
          .then(stock.gather)
          .catch(() => {}),
      GATHER_AFTER_MS,
    );
    document.addEventListener('visibilitychange', whenSeen);
    const deaf = onChanged(() => void again());
    return () => {
      clearInterval(timer);
      clearTimeout(leisure);
      document.removeEventListener('visibilitychange', whenSeen);
      deaf();
    };
  });

  return {
    get groups() {
      return shown;
    },
    get total() {
      return (shown ?? []).reduce((sum, { labels }) => sum + labels.length, 0);
    },
    get day() {
      return day;
    },
    /** How many lines wait to change places. */
    get moved() {
      return moved;
    },
    get problem() {
      return problem;
    },
    get asOf() {
      return asOf;
    },
    settle,
    see,
  };
}
