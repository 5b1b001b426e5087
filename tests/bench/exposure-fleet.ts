// A hundred thousand open containers in twenty rooms brought one day forward: intervals, SQLite read and written.
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { openDatabase } from '../../api/database/database.ts';
import { runPass } from '../../api/exposure/pass.ts';
import { startThread } from '../../api/exposure/thread.ts';
import { writeFleet } from '../support/fleet.ts';
import type { Bench } from './bench.ts';

const day = 86_400_000;
const start = Date.UTC(2026, 2, 2);
/** Days that the containers have stood open before the one that is measured. */
const before = 2;

interface Run {
  seconds: number;
  /** Longest stretch in which the main thread answered nobody, ms. */
  longestPauseMs: number;
  peakMegabytes: number;
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
    let longestPauseMs = 0;
    let last = performance.now();
    let peak = 0;
    const timer = setInterval(() => {
      longestPauseMs = Math.max(longestPauseMs, performance.now() - last - 5);
      last = performance.now();
      peak = Math.max(peak, process.memoryUsage.rss());
    }, 5);
    const from = performance.now();
    await pass(start + (before + 1.5) * day);
    clearInterval(timer);
    return { seconds: (performance.now() - from) / 1000, longestPauseMs, peakMegabytes: peak / 1e6 };
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
      longestPauseMs: large.longestPauseMs,
    },
  };
}
