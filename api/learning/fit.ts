// From timelines to what they teach: everything that was ever weighed, fitted at once. Reads only; runs in any thread, and the same
// timelines and air give the same digits.
import { createHash } from 'node:crypto';
import { judgements, lotsInUse, weighedContainers } from '../database/learned.ts';
import type { Reader } from '../database/reader.ts';
import { storiesOf, type LabFacts, type Stories, type Story } from '../exposure/service.ts';
import { expect } from '../science/calibration/expect.ts';
import { heldOf, gaussianOf, varianceAlong } from '../science/calibration/gaussian.ts';
import { learn, type Learned } from '../science/calibration/learn.ts';
import { storyOf } from '../science/calibration/story.ts';
import { type Bears, bearsOn, taught, type Taught } from '../science/calibration/taught.ts';
import type { Weighing } from '../science/calibration/weighing.ts';
import { saidBy, type Said } from './rules.ts';

export type Counts = 'USED' | 'CONFIRMED' | 'LEFT_OUT' | 'REFUSED' | 'UNUSABLE';

/** A weighing as it is stored; times are milliseconds since 1970. */
export interface WeighingRow {
  eventId: string;
  containerId: string;
  at: number;
  of: string;
  counts: Counts;
  found: number | null;
  noiseSd: number | null;
  expectedBefore: number | null;
  sdBefore: number | null;
  expectedNow: number | null;
  sigmas: number | null;
  why: string | null;
  bearsOn: readonly Bears[];
}

export interface Fit {
  /** Names everything that it was made from. */
  readonly basis: string;
  readonly factors: readonly Taught[];
  readonly weighings: readonly WeighingRow[];
  readonly iterations: number;
}

const daySeconds = 86_400;

/** All that a fit depends on, in a few letters. */
function basisOf(stories: Stories, judged: ReadonlyMap<string, boolean>): string {
  const hash = createHash('sha256');
  const add = (value: unknown) => hash.update(JSON.stringify(value));
  const days = new Map<string, { air: Story['weighed']['input']['airs']; from: number; until: number }>();
  for (const { weighed, observed, events } of stories.stories) {
    const { airs, ...input } = weighed.input;
    add([input, weighed.lot, weighed.pool, [...observed]]);
    add(events.filter(({ type }) => type === 'WEIGHED'));
    for (const room of airs.keys()) {
      const from = Math.floor(input.start.atS / daySeconds);
      const until = Math.floor(input.asOfS / daySeconds);
      const known = days.get(room);
      const wider = known && known.until >= until ? known.air : airs;
      days.set(room, {
        air: wider,
        from: Math.min(from, known?.from ?? from),
        until: Math.max(until, known?.until ?? until),
      });
    }
  }
  for (const [room, { air, from, until }] of [...days].sort(([one], [other]) => (one < other ? -1 : 1))) {
    add(room);
    for (let day = from; day <= until; day++) {
      const { integrals, unknownBlocks } = air.get(room)?.day(day) ?? {};
      if (integrals) hash.update(integrals);
      if (unknownBlocks) hash.update(unknownBlocks);
    }
  }
  add([...judged].sort());
  add(stories.lots.map(({ lot, pool }) => [lot.id, pool]));
  add([...stories.untold]);
  return hash.digest('hex').slice(0, 32);
}

const bare = ({ eventId, at, of, found, why }: Said, containerId: string): WeighingRow => ({
  eventId,
  containerId,
  at,
  of,
  counts: 'UNUSABLE',
  found: found === null ? null : found.of === 'gain' ? found.gainKg : found.waterFraction,
  noiseSd: null,
  expectedBefore: null,
  sdBefore: null,
  expectedNow: null,
  sigmas: null,
  why,
  bearsOn: [],
});

/** One that somebody says is wrong, beside what everything else makes one expect. */
function refused(said: Said, story: Story, learned: Learned): WeighingRow {
  const row = { ...bare(said, story.containerId), counts: 'REFUSED' as const };
  if (!said.found) return row;
  const { eventId: id, at, found } = said;
  const container = story.weighed.input.spec.key;
  const weighing: Weighing = { id, container, atS: at / 1000, found, confirmed: false };
  const [now] = expect(story.weighed, [weighing], learned.values);
  if (!now || now.unusable !== null) return row;
  const { solution, values } = learned;
  const held = heldOf(gaussianOf(solution, values, (locals) => locals.some((name) => now.slopes.has(name))));
  const sd = Math.hypot(now.noise, Math.sqrt(varianceAlong(held, now.slopes)));
  return { ...row, noiseSd: now.noise, expectedNow: now.expected, sigmas: (now.found - now.expected) / sd };
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

function weighingRows(
  all: ReadonlyMap<string, { said: Said; story: Story }>,
  learned: Learned,
  judged: ReadonlyMap<string, boolean>,
): WeighingRow[] {
  const rows = new Map(learned.after.map((row) => [row.weighing.id, row]));
  const told = new Map(storyOf(learned).map((one) => [one.id, one]));
  const counts = { used: 'USED', confirmed: 'CONFIRMED', 'left out': 'LEFT_OUT', unusable: 'UNUSABLE' } as const;
  return [...all].map(([id, { said, story }]): WeighingRow => {
    const one = told.get(id);
    const row = rows.get(id);
    if (one && row) {
      return {
        ...bare(said, story.containerId),
        counts: counts[one.counts],
        noiseSd: finite(one.noiseSd),
        expectedBefore: finite(one.expectedBefore),
        sdBefore: finite(one.sdBefore),
        expectedNow: finite(one.expectedNow),
        sigmas: one.sigmas,
        why: one.why,
        bearsOn: bearsOn(row),
      };
    }
    return judged.get(id) === false ? refused(said, story, learned) : bare(said, story.containerId);
  });
}

/** Null when nothing changed since the fit of that basis, or nothing was ever weighed. */
export async function fitOf(reader: Reader, lab: LabFacts, before: string | null): Promise<Fit | null> {
  const ids = await weighedContainers(reader, lab.id);
  if (ids.length === 0 && before === null) return null;
  const judged = await judgements(reader, lab.id);
  const lots = (await lotsInUse(reader, lab.id)).map(({ id }) => id);
  const stories = await storiesOf(reader, lab, ids, lots, (eventId) => judged.get(eventId) === false);
  const basis = basisOf(stories, judged);
  if (basis === before) return null;

  const all = new Map<string, { said: Said; story: Story }>();
  const weighings: Weighing[] = [];
  for (const story of stories.stories) {
    const events = story.events.map((event) => ({
      ...event,
      gross: event.type === 'WEIGHED' && event.detail.method === 'GROSS' ? (event.detail.gross ?? null) : null,
    }));
    for (const said of saidBy(events, story.observed, story.anew)) {
      const { eventId: id, at, found, why } = said;
      all.set(id, { said, story });
      if (!found || why !== null || judged.get(id) === false) continue;
      weighings.push({ id, container: story.containerId, atS: at / 1000, found, confirmed: judged.get(id) === true });
    }
  }
  const containers = stories.stories.map(({ weighed }) => weighed);
  const learned = learn(containers, weighings);
  const unweighed = stories.lots.flatMap(({ lot, pool, numbers }) =>
    typeof numbers === 'string' ? [] : [{ lot: lot.id, pool, input: { spec: { sorbent: numbers.bed } } }],
  );
  const isTaught = learned.after.some(({ unusable }) => unusable === null);
  return {
    basis,
    factors: isTaught ? taught(learned, [...containers, ...unweighed]) : [],
    weighings: weighingRows(all, learned, judged),
    iterations: learned.iterations,
  };
}
