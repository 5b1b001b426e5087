// The ledger of five years and 200 containers: a page of it over GraphQL on SQLite; the target is 50 ms.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { insertRows } from '../../api/database/bulk.ts';
import { openDatabase, type Database } from '../../api/database/database.ts';
import { labelOf } from '../../api/stock/label.ts';
import { newId } from '../../api/work.ts';
import { chance, writeFleet } from '../support/fleet.ts';
import { newWorld, type World } from '../support/world.ts';
import { quantile, spread, type Bench } from './bench.ts';

const containers = 200;
const lots = 20;
const weeks = 260;
const weekMs = 7 * 86_400_000;
const now = new Date('2026-03-02T12:00:00Z');
const start = now.getTime() - weeks * weekMs;
const targetMs = 50;

const figures = 'opening cameIn used writtenOff lost spentOnChecks counted onHand';
/** What the page asks: every lot over all the years, with the last half year week by week. */
const page = `query { ledger(first: 50) { totalCount nodes { kind asReceivedPerDry sorbent { name } lot { lotNumber }
  shelf { ${figures} } takenOut { ${figures} } reasons { account why amount events } } } }`;
const bars = `query { ledger(first: 50, from: "2025-09-01") { nodes { weeks { week shelf { used onHand } } } } }`;
/** One lot opened: its five years week by week, and its last events. */
const opened = `query ($lot: String) { ledger(lot: $lot) { nodes { weeks { week shelf { ${figures} } }
  lines(first: 50) { totalCount nodes { at account dryGrams event { sentence } container { label } } } } } }`;

/** Something taken out of each container every week, in bulk. */
async function taken(database: Database, labId: string): Promise<number> {
  const next = chance(5);
  const all = await database.read.container.findMany({ where: { labId }, select: { id: true, dryGrams: true } });
  const boxes = new Set(
    (await database.read.container.findMany({ where: { labId, kind: 'PLATE_BOX' } })).map(({ id }) => id),
  );
  let seq = containers + 1;
  const events = all.flatMap(({ id, dryGrams }) =>
    Array.from({ length: boxes.has(id) ? 20 : weeks - 1 }, (_, week) => {
      const isPlates = boxes.has(id);
      const [grams, at] = [isPlates ? 4 : (dryGrams / weeks) * next(), start + (week + next()) * weekMs];
      const detail = { openMinutes: 5, leftOpen: false, into: { roomId: 'none', closure: 'OPEN' } };
      const weighed = { grams, basis: 'DRY', bookedWaterFraction: null, waterAssumed: false, scooping: null };
      const number = (seq += 1);
      return {
        ...{
          id: newId(),
          labId,
          containerId: id,
          at,
          recordedAt: at,
          recordedSeq: number,
          place: number,
          stands: true,
        },
        ...(isPlates
          ? { type: 'PLATES_TAKEN', detail, dryGrams: grams, plates: 1 }
          : { type: 'PORTION_TAKEN', detail: { ...weighed, ...detail }, dryGrams: grams, plates: null }),
      };
    }),
  );
  for (let from = 0; from < events.length; from += 5_000) {
    await database.write((tx) =>
      insertRows(tx, database.engine, {
        table: 'Event',
        columns: {
          ...{
            id: 'text',
            labId: 'text',
            containerId: 'text',
            type: { enum: 'EventType' },
            at: 'time',
            recordedAt: 'time',
          },
          ...{
            recordedSeq: 'integer',
            detail: 'json',
            dryGrams: 'real',
            plates: 'integer',
            stands: 'boolean',
            place: 'integer',
          },
        },
        rows: events.slice(from, from + 5_000),
      }),
    );
  }
  await database.write((tx) => tx.counter.create({ data: { labId, name: 'event', value: seq } }));
  return events.length + containers;
}

async function timesOf(world: World, rounds: number, query: string, variables: object = {}): Promise<number[]> {
  const times: number[] = [];
  for (let round = 0; round < rounds + 3; round += 1) {
    const from = performance.now();
    await world.ask(query, { ...variables });
    // The first find nothing compiled.
    if (round >= 3) times.push(performance.now() - from);
  }
  return times;
}

export async function ledger(short: boolean): Promise<Bench> {
  const dataFolder = mkdtempSync(join(tmpdir(), 'drumkeep-ledger-'));
  const database = await openDatabase({ dataFolder });
  try {
    const world = await newWorld(database, { estimates: false, now });
    const labId = await writeFleet(database, {
      count: containers,
      rooms: 2,
      lots,
      start,
      days: 1,
      closureOf: () => 'TIGHT',
      labelOf,
    });
    Object.assign(world.app, { lab: await database.read.lab.findUniqueOrThrow({ where: { id: labId } }) });
    const events = await taken(database, labId);
    const began = performance.now();
    await world.ask(page);
    const madeMs = performance.now() - began;
    const rounds = short ? 5 : 25;
    const times = await timesOf(world, rounds, page);
    const barTimes = await timesOf(world, rounds, bars);
    const openedTimes = await timesOf(world, rounds, opened, { lot: 'L0' });
    // Somebody takes some: the first look afterwards has that container folded again.
    const label = labelOf(1);
    await world.tell('takePortion', { label, grams: 1, basis: 'DRY' });
    const told = performance.now();
    await world.ask(page);
    const afterAnActMs = performance.now() - told;
    const value = quantile(times, 0.5);
    return {
      value,
      unit: `ms a page of ${lots} lots over five years of ${containers} containers`,
      against: `${targetMs} ms`,
      ratio: value / targetMs,
      spread: spread(times),
      details: {
        ...{ events, madeFirstMs: madeMs, worstMs: Math.max(...times), barsMs: quantile(barTimes, 0.5) },
        ...{ openedLotMs: quantile(openedTimes, 0.5), afterAnActMs },
      },
    };
  } finally {
    await database.close();
    rmSync(dataFolder, { recursive: true, force: true });
  }
}
