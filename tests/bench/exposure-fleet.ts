// A hundred thousand open containers in twenty rooms brought one day forward: intervals, SQLite read and written.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as later } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { openDatabase } from '../../api/database/database.ts';
import { runPass } from '../../api/exposure/pass.ts';
import { startThread } from '../../api/exposure/thread.ts';
import { readSettings } from '../../api/settings.ts';
import { type App, yogaOf } from '../../api/yoga.ts';
import { type Bench, quantile } from './bench.ts';

const day = 86_400_000;
const start = Date.UTC(2026, 2, 2);
/** Days that the containers have stood open before the one that is measured. */
const before = 2;

interface Run {
  seconds: number;
  /** Processor time of all threads meanwhile, which other programs disturb less. */
  cpuSeconds: number;
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

function written(dataFolder: string, count: number): void {
  const file = fileURLToPath(new URL('../support/fleet-folder.ts', import.meta.url));
  const words = [dataFolder, count, start, before + 3].map(String);
  const run = spawnSync(process.execPath, [...process.execArgv, file, ...words], {
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  if (run.status !== 0) throw new Error('the fleet was not written');
}

async function dayForward(count: number): Promise<Run> {
  const dataFolder = mkdtempSync(join(tmpdir(), 'drumkeep-fleet-'));
  written(dataFolder, count);
  const database = await openDatabase({ dataFolder });
  const threads = Array.from({ length: Math.min(2, availableParallelism()) }, () => startThread({ dataFolder }));
  try {
    const labRow = await database.read.lab.findFirstOrThrow();
    const lab = { id: labRow.id, timeZone: 'UTC', settings: {} };
    const pass = (at: number) => runPass({ database, lab, threads, now: () => new Date(at), stopped: () => false });
    // Twelve hours past midnight, so that one midnight lies within the day.
    await pass(start + (before + 0.5) * day);
    const settings = readSettings({ DRUMKEEP_LOG: 'silent' });
    const stopped = watching({ settings, database, lab: labRow, now: () => new Date(start + (before + 1.5) * day) });
    let peak = 0;
    const timer = setInterval(() => (peak = Math.max(peak, process.memoryUsage.rss())), 50);
    const from = performance.now();
    const cpuFrom = process.cpuUsage();
    await pass(start + (before + 1.5) * day);
    const { user, system } = process.cpuUsage(cpuFrom);
    const seconds = (performance.now() - from) / 1000;
    clearInterval(timer);
    return { seconds, cpuSeconds: (user + system) / 1e6, answeredMs: await stopped(), peakMegabytes: peak / 1e6 };
  } finally {
    for (const thread of threads) await thread.stop();
    await database.close();
    rmSync(dataFolder, { recursive: true, force: true });
  }
}

export async function exposureFleet(short: boolean): Promise<Bench> {
  const count = short ? 2_000 : 100_000;
  const large = await dayForward(count);
  const small = await dayForward(1_000);
  const perContainer = ({ seconds }: Run, of: number) => (1000 * seconds) / of;
  return {
    value: large.seconds,
    unit: `s for ${count} containers, one day`,
    against: 'the target of 40 s for 100,000, in proportion',
    ratio: large.seconds / ((40 * count) / 100_000),
    spread: 0,
    details: {
      secondsPer100000: (large.seconds * 100_000) / count,
      cpuSecondsPer100000: (large.cpuSeconds * 100_000) / count,
      millisecondsEachAt1000: perContainer(small, 1_000),
      millisecondsEach: perContainer(large, count),
      growth: perContainer(large, count) / perContainer(small, 1_000),
      peakMegabytes: large.peakMegabytes,
      openListMeanwhileP50Ms: quantile(large.answeredMs, 0.5),
      openListMeanwhileP99Ms: quantile(large.answeredMs, 0.99),
    },
  };
}
