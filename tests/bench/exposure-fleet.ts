// A hundred thousand open containers in twenty rooms brought one day forward: intervals, SQLite read and written.
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as later } from 'node:timers/promises';
import { openDatabase } from '../../api/database/database.ts';
import { runPass } from '../../api/exposure/pass.ts';
import { startThread } from '../../api/exposure/thread.ts';
import { readSettings } from '../../api/settings.ts';
import { type App, yogaOf } from '../../api/yoga.ts';
import { writeFleet } from '../support/fleet.ts';
import { type Bench, quantile } from './bench.ts';

const day = 86_400_000;
const start = Date.UTC(2026, 2, 2);
/** Days that the containers have stood open before the one that is measured. */
const before = 2;

interface Run {
  seconds: number;
  /** What somebody who looks at the open list meanwhile waits for it, ms each. */
  answeredMs: number[];
  peakMegabytes: number;
}

const openList = JSON.stringify({
  query: `{ containers(first: 50, filter: { isOpen: true }) { nodes { label sorbent { name } lot { lotNumber } room { name }
    exposure { state scoopWaterFraction scoopLow scoopHigh hoursToLimit reason } } } }`,
});

/** Looks at the open list ten times a second until told to stop; gives what each look took, ms. */
function watching(app: App) {
  const yoga = yogaOf(app);
  let isOver = false;
  const answeredMs: number[] = [];
  const looked = (async () => {
    while (!isOver) {
      const from = performance.now();
      const headers = { 'content-type': 'application/json' };
      const answer = await yoga.fetch('http://127.0.0.1/graphql', { method: 'POST', headers, body: openList });
      if (!(await answer.text()).startsWith('{"data"')) throw new Error('the open list was not answered');
      answeredMs.push(performance.now() - from);
      await later(100);
    }
  })();
  return async () => {
    isOver = true;
    await looked;
    return answeredMs;
  };
}

async function dayForward(count: number): Promise<Run> {
  const dataFolder = mkdtempSync(join(tmpdir(), 'drumkeep-fleet-'));
  const database = await openDatabase({ dataFolder });
  const threads = Array.from({ length: Math.min(2, availableParallelism()) }, () => startThread({ dataFolder }));
  try {
    const id = await writeFleet(database, { count, rooms: 20, lots: 400, start, days: before + 3 });
    const lab = { id, timeZone: 'UTC', settings: {} };
    const pass = (at: number) => runPass({ database, lab, threads, now: () => new Date(at), stopped: () => false });
    // Twelve hours past midnight, so that one midnight lies within the day.
    await pass(start + (before + 0.5) * day);
    const labRow = await database.read.lab.findUniqueOrThrow({ where: { id } });
    const settings = readSettings({ DRUMKEEP_LOG: 'silent' });
    const stopped = watching({ settings, database, lab: labRow, now: () => new Date(start + (before + 1.5) * day) });
    let peak = 0;
    const timer = setInterval(() => (peak = Math.max(peak, process.memoryUsage.rss())), 50);
    const from = performance.now();
    await pass(start + (before + 1.5) * day);
    const seconds = (performance.now() - from) / 1000;
    clearInterval(timer);
    return { seconds, answeredMs: await stopped(), peakMegabytes: peak / 1e6 };
  } finally {
    for (const thread of threads) await thread.stop();
    await database.close();
    rmSync(dataFolder, { recursive: true, force: true });
  }
}

export async function exposureFleet(short: boolean): Promise<Bench> {
  const count = short ? 2_000 : 100_000;
  const small = await dayForward(1_000);
  const large = await dayForward(count);
  const perContainer = ({ seconds }: Run, of: number) => (1000 * seconds) / of;
  return {
    value: large.seconds,
    unit: `s for ${count} containers, one day`,
    against: 'the target of 40 s for 100,000, in proportion',
    ratio: large.seconds / ((40 * count) / 100_000),
    spread: 0,
    details: {
      secondsPer100000: (large.seconds * 100_000) / count,
      millisecondsEachAt1000: perContainer(small, 1_000),
      millisecondsEach: perContainer(large, count),
      growth: perContainer(large, count) / perContainer(small, 1_000),
      peakMegabytes: large.peakMegabytes,
      openListMeanwhileP50Ms: quantile(large.answeredMs, 0.5),
      openListMeanwhileP99Ms: quantile(large.answeredMs, 0.99),
    },
  };
}
