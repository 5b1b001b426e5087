// The open list over HTTP: fifty containers with sorbent, lot, room and exposure out of a hundred thousand, beside the same
// rows by one hand-written statement and JSON on the same server.
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { storeExposures, type ExposureRow } from '../../api/database/exposures.ts';
import { openDatabase, type Database } from '../../api/database/database.ts';
import { serverOf } from '../../api/http.ts';
import { readSettings } from '../../api/settings.ts';
import { yogaOf } from '../../api/yoga.ts';
import { chance, writeFleet } from '../support/fleet.ts';
import { type Bench, quantile, spread } from './bench.ts';

const start = Date.UTC(2026, 2, 2);
const day = 86_400_000;
const connections = 8;

const query = `query OpenNow { containers(first: 50, filter: { isOpen: true }) { nodes {
  label openedAt closure dryGrams sorbent { name } lot { lotNumber } room { name }
  exposure { state scoopWaterFraction scoopLow scoopHigh hoursToLimit reason } } } }`;

const byHand = `select c."label", c."openedAt", c."closure", c."dryGrams", s."name" as "sorbent", l."lotNumber" as "lot",
    r."name" as "room", e."state", e."scoopWaterFraction", e."scoopLow", e."scoopHigh", e."hoursToLimit", e."reason"
  from "Exposure" e join "Container" c on c."id" = e."containerId" join "Lot" l on l."id" = c."lotId"
  join "Sorbent" s on s."id" = l."sorbentId" join "Room" r on r."id" = c."roomId"
  where e."labId" = $1 and c."isOpen" and not c."isVoid" order by e."urgency", e."containerId" limit 50`;

/** Exposures as a pass would have stored them, with invented figures. */
async function estimated(database: Database, labId: string): Promise<void> {
  const next = chance(7);
  const all = await database.select<{ id: string }>('select "id" from "Container" where "labId" = $1', [labId]);
  const rows = all.map(({ id }): ExposureRow => {
    const water = 0.01 + 0.06 * next();
    const hours = 2000 * next();
    return {
      containerId: id,
      labId,
      asOf: start + day,
      state: water > 0.05 ? 'REDRY' : 'GOOD',
      urgency: (water > 0.05 ? 0 : 40_000) + hours,
      staleFrom: null,
      version: 0,
      meanWaterFraction: water,
      low: 0.8 * water,
      high: 1.2 * water,
      scoopWaterFraction: 1.1 * water,
      scoopLow: 0.9 * water,
      scoopHigh: 1.3 * water,
      topWaterFraction: 1.3 * water,
      chancePastLimit: next(),
      hoursToLimit: hours,
      hoursToLimitOpen: hours,
      hoursToLimitClosed: 4 * hours,
      upperWaterFraction: 0.05,
      lowerWaterFraction: null,
      grade: 'II',
      minutesToRoomEquilibrium: null,
      uncertainAirFraction: 0,
      reason: 'open 19 h at 48 % RH, 22 °C; the top 8 mm is past 5 %',
    };
  });
  for (let from = 0; from < rows.length; from += 5_000) {
    await database.write((tx) => storeExposures(tx, database.engine, rows.slice(from, from + 5_000)));
  }
}

interface Load {
  perSecond: number;
  times: number[];
}

function load(url: string, body: string | null, seconds: number): Promise<Load> {
  const workerData = { url, body, method: body ? 'POST' : 'GET', connections, seconds };
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./load.mjs', import.meta.url), { workerData, execArgv: [] });
    worker.once('message', resolve);
    worker.once('error', reject);
  });
}

/** The server itself, with the hand-written list beside it under `/by-hand`. */
function withByHand(server: Server, database: Database, labId: string): Server {
  return createServer((request, response) => {
    if (request.url !== '/by-hand') return void server.emit('request', request, response);
    void database.select(byHand, [labId]).then((nodes) => {
      const text = JSON.stringify({ data: { containers: { nodes } } });
      response.writeHead(200, {
        'content-type': 'application/json; charset=utf-8',
        'content-length': Buffer.byteLength(text),
      });
      response.end(text);
    });
  });
}

export async function listing(short: boolean): Promise<Bench> {
  const dataFolder = mkdtempSync(join(tmpdir(), 'drumkeep-listing-'));
  const database = await openDatabase({ dataFolder });
  try {
    const count = short ? 5_000 : 100_000;
    const labId = await writeFleet(database, { count, rooms: 20, lots: 400, start, days: 1 });
    await estimated(database, labId);
    const lab = await database.read.lab.findUniqueOrThrow({ where: { id: labId } });
    const settings = readSettings({ DRUMKEEP_LOG: 'silent' });
    const app = { settings, database, lab, now: () => new Date(start + day) };
    const server = withByHand(serverOf(app, dataFolder), database, labId);
    await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
    const at = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    const seconds = short ? 1.5 : 5;
    const body = (asked: string) => JSON.stringify({ query: asked });
    const rounds: { ours: Load; theirs: Load }[] = [];
    for (let round = 0; round < (short ? 2 : 5); round++) {
      const ours = await load(`${at}/graphql`, body(query), seconds);
      rounds.push({ ours, theirs: await load(`${at}/by-hand`, null, seconds) });
    }
    const interpreting = yogaOf(app, { isCompiled: false });
    const other = createServer((request, response) => void interpreting(request, response));
    await new Promise<void>((listening) => other.listen(0, '127.0.0.1', listening));
    const otherAt = `http://127.0.0.1:${(other.address() as AddressInfo).port}`;
    const interpreted = await load(`${otherAt}/graphql`, body(query), seconds);
    other.close();
    other.closeAllConnections();
    server.close();
    server.closeAllConnections();
    const perSecond = rounds.map(({ ours }) => ours.perSecond);
    const theirs = quantile(
      rounds.map((round) => round.theirs.perSecond),
      0.5,
    );
    const value = quantile(perSecond, 0.5);
    return {
      value,
      unit: 'pages of 50 a second',
      against: 'one hand-written statement and JSON.stringify on the same server',
      ratio: value / theirs,
      spread: spread(perSecond),
      details: {
        containers: count,
        byHandPerSecond: theirs,
        ratioInterpreted: interpreted.perSecond / theirs,
        p50Ms: quantile(
          rounds.flatMap(({ ours }) => ours.times),
          0.5,
        ),
        p99Ms: quantile(
          rounds.flatMap(({ ours }) => ours.times),
          0.99,
        ),
        byHandP99Ms: quantile(
          rounds.flatMap((round) => round.theirs.times),
          0.99,
        ),
        connections,
      },
    };
  } finally {
    await database.close();
    rmSync(dataFolder, { recursive: true, force: true });
  }
}
