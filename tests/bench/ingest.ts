// A million readings by file and by mutation, beside raw SQLite inserts of the same readings.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { importFile } from '../../api/climate/import-readings.ts';
import { addRoom } from '../../api/climate/rooms.ts';
import { openDatabase } from '../../api/database/database.ts';
import { labOf } from '../../api/lab.ts';
import { readSettings } from '../../api/settings.ts';
import { type App, contextOf, yogaOf } from '../../api/yoga.ts';
import { type Bench, quantile, spread } from './bench.ts';

const start = Date.UTC(2026, 0, 1);
const minute = 60_000;

interface Row {
  at: number;
  temperatureC: number;
  humidityPercent: number;
}

/** A reading of both quantities each minute, as noisy as rooms are. */
function rowsOf(count: number): Row[] {
  return Array.from({ length: count }, (_, i) => ({
    at: start + i * minute,
    temperatureC: Number((21 + 2 * Math.sin(i / 229) + ((i * 7) % 11) / 20).toFixed(2)),
    humidityPercent: Number((45 + 9 * Math.cos(i / 977) + ((i * 5) % 13) / 10).toFixed(1)),
  }));
}

const fileOf = (rows: readonly Row[]): Uint8Array => {
  const lines = rows.map(
    (row) => `${new Date(row.at).toISOString().slice(0, 19)}Z,${row.temperatureC},${row.humidityPercent}`,
  );
  return new TextEncoder().encode(['Time,Temperature (°C),Humidity (% RH)', ...lines, ''].join('\n'));
};

/** CPU time of all threads: what else the machine does must not count. */
const seconds = async (work: () => Promise<unknown> | void): Promise<number> => {
  const from = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1e6;
};

async function inFolder<Result>(work: (folder: string) => Promise<Result>): Promise<Result> {
  const folder = mkdtempSync(join(tmpdir(), 'drumkeep-ingest-'));
  return work(folder).finally(() => rmSync(folder, { recursive: true, force: true }));
}

/** A new lab with one room; the clock stands after all readings. */
async function withLab(folder: string, work: (app: App) => Promise<number>): Promise<number> {
  const settings = readSettings({ DRUMKEEP_DATA: folder, DRUMKEEP_DEMO: 'no', DRUMKEEP_TIME_ZONE: 'UTC' });
  const database = await openDatabase(settings);
  const now = () => new Date(start + 3 * 366 * 86_400_000);
  const app = { settings, database, lab: await labOf(database, settings, now()), now };
  await addRoom(await contextOf(app, null), { name: 'wet bench' });
  return work(app).finally(() => database.close());
}

/** Bytes of a file to stored readings and the room's stored air. */
const byFile = (bytes: Uint8Array): Promise<number> =>
  inFolder((folder) =>
    withLab(folder, async (app) => {
      const context = await contextOf(app, null);
      return seconds(() => importFile(context, { bytes, fileName: 'bench.csv', room: 'wet bench', answers: {} }));
    }),
  );

const mutation = `mutation ($input: AddReadingsInput!) { addReadings(input: $input) { __typename } }`;

/** Ten thousand instants a call, as a script would send them. */
const byMutation = (rows: readonly Row[]): Promise<number> =>
  inFolder((folder) =>
    withLab(folder, async (app) => {
      const yoga = yogaOf(app);
      return seconds(async () => {
        for (let from = 0; from < rows.length; from += 10_000) {
          const readings = rows
            .slice(from, from + 10_000)
            .map((row) => ({ ...row, at: new Date(row.at).toISOString() }));
          const body = JSON.stringify({ query: mutation, variables: { input: { room: 'wet bench', readings } } });
          const headers = { 'content-type': 'application/json' };
          const response = await yoga.fetch('http://127.0.0.1/graphql', { method: 'POST', headers, body });
          const text = await response.text();
          if (!text.includes('ReadingsAdded')) throw new Error(text.slice(0, 500));
        }
      });
    }),
  );

/** One row a value, one prepared statement, one transaction; `key` is what makes a repeat harmless. */
const raw = (rows: readonly Row[], key: string): Promise<number> =>
  inFolder(async (folder) => {
    const database = new Sqlite(join(folder, 'raw.sqlite'));
    database.exec('pragma journal_mode = wal; pragma synchronous = normal');
    database.exec(`create table Reading (sensorId text, quantity text, at integer, value real${key})`);
    const insert = database.prepare('insert into Reading values (?, ?, ?, ?)');
    const sensor = '019aa5a0-0000-7000-8000-000000000000';
    const taken = await seconds(() =>
      database.transaction(() => {
        for (const { at, temperatureC, humidityPercent } of rows) {
          insert.run(sensor, 'TEMPERATURE', at, temperatureC);
          insert.run(sensor, 'RELATIVE_HUMIDITY', at, humidityPercent);
        }
      })(),
    );
    database.close();
    return taken;
  });

/** Values a second; the ratio is ours over the raw inserts with a key, the runs alternating. */
export async function ingest(short: boolean): Promise<Bench> {
  const rows = rowsOf(short ? 50_000 : 500_000);
  const values = 2 * rows.length;
  const bytes = fileOf(rows);
  const ours: number[] = [];
  const keyed: number[] = [];
  const plain: number[] = [];
  for (let run = 0; run < 3; run++) {
    keyed.push(values / (await raw(rows, ', primary key (sensorId, quantity, at)')));
    ours.push(values / (await byFile(bytes)));
    plain.push(values / (await raw(rows, '')));
  }
  const sent = values / (await byMutation(rows));
  const middle = quantile(keyed, 0.5);
  return {
    value: quantile(ours, 0.5),
    unit: 'readings/s of CPU by file, parsing and the room air included',
    against: 'raw prepared inserts into SQLite, one row a value with a unique key',
    ratio: quantile(ours, 0.5) / middle,
    spread: spread(ours),
    details: {
      readings: values,
      rawPerSecond: middle,
      rawWithoutKeyPerSecond: quantile(plain, 0.5),
      ratioToRawWithoutKey: quantile(ours, 0.5) / quantile(plain, 0.5),
      byMutationPerSecond: sent,
      byMutationRatio: sent / middle,
      target: 0.5,
    },
  };
}
