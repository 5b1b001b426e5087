// Measured room air, from the logger's file to the answer: all files come in through the server's own door, a handful of
// containers are opened and closed against that air, and what is said of them must lie between two closed-form limits.
import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import psychrolib from 'psychrolib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { frontM } from '../science/support/limits.ts';
import { command } from '../support/command.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const data = join(process.env['DRUMKEEP_REAL_DATA'] ?? '', 'room-air');
const folder = mkdtempSync(join(tmpdir(), 'drumkeep-real-'));
const lines: string[] = [];
let server: ChildProcess;
let address = '';

const hourMs = 3_600_000;
psychrolib.SetUnitSystem(psychrolib.SI);

/** What was measured, read here without the importer: [instant, value] of a column. */
function measured(file: string, column: number, separator: string, instantOf: (text: string) => number) {
  const rows = readFileSync(join(data, file), 'utf8').trim().split('\n');
  return rows
    .map((row) => row.trim().split(separator))
    .map((cells) => ({ atMs: instantOf(cells[0] ?? ''), value: Number(cells[column]) }))
    .filter(({ atMs, value }) => Number.isFinite(atMs) && Number.isFinite(value));
}

const fixedOffset = (text: string) => Date.parse(`${text.replace(' ', 'T')}+02:00`);
const unixSeconds = (text: string) => 1000 * Number(text);

interface Air {
  room: string;
  files: string[];
  temperatures: ReturnType<typeof measured>;
  humidities: ReturnType<typeof measured>;
  /** When the containers are opened. */
  openedAt: string;
}

const house = (room: string, file: string, openedAt: string): Air => ({
  room,
  files: [file],
  temperatures: measured(file, 1, ',', fixedOffset),
  humidities: measured(file, 2, ',', fixedOffset),
  openedAt,
});
const flat = ['flat-room1-temperature.tsv', 'flat-room1-humidity.tsv'] as const;

const airs: Air[] = [
  house('house, hourly', 'house-r3-hourly.csv', '2011-08-02T06:00:00Z'),
  house('house, ten minutes', 'house-r1-10min.csv', '2021-04-06T06:00:00Z'),
  {
    room: 'flat',
    files: [...flat],
    temperatures: measured(flat[0], 1, '\t', unixSeconds),
    humidities: measured(flat[1], 1, '\t', unixSeconds),
    openedAt: '2017-05-10T06:00:00Z',
  },
];

async function ask<Data>(query: string, variables: Record<string, unknown> = {}): Promise<Data> {
  const response = await fetch(`${address}/graphql`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ query, variables }),
  });
  const { data: answer, errors } = (await response.json()) as { data: Data; errors?: unknown };
  if (errors) throw new Error(JSON.stringify(errors));
  return answer;
}

/** Runs one mutation; a refusal is an error here. */
async function act<Success>(name: string, input: Record<string, unknown>, fields: string): Promise<Success> {
  const type = `${name[0]?.toUpperCase() ?? ''}${name.slice(1)}Input!`;
  const query = `mutation ($input: ${type}) { answer: ${name}(input: $input) { ${fields} ... on Refusal { message } } }`;
  const { answer } = await ask<{ answer: Success & { message?: string } }>(query, { input });
  if (answer.message !== undefined) throw new Error(`${name}: ${answer.message}`);
  return answer;
}

interface Imported {
  added: number;
  repeated: number;
}

async function imported(file: string, room: string): Promise<Imported> {
  const response = await fetch(`${address}/files`, {
    method: 'POST',
    headers: { 'x-file-name': encodeURIComponent(file) },
    body: readFileSync(join(data, file)),
  });
  const { id, error } = (await response.json()) as { id: string; error?: string };
  if (error !== undefined) throw new Error(error);
  return act('importReadings', { file: id, room }, '... on ReadingsImported { added repeated }');
}

beforeAll(async () => {
  server = spawn(process.execPath, ['--import', 'tsx', 'api/server.ts'], {
    cwd: root,
    env: {
      ...process.env,
      PORT: '0',
      DRUMKEEP_DATA: folder,
      DRUMKEEP_DEMO: 'no',
      DRUMKEEP_TIME_ZONE: 'Europe/Helsinki',
    },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let text = '';
  address = await new Promise<string>((resolve, reject) => {
    server.on('close', (code) => reject(new Error(`the server ended with ${code}: ${text}`)));
    server.stdout?.setEncoding('utf8').on('data', (part: string) => {
      text += part;
      const found = /http:\/\/127\.0\.0\.1:\d+/.exec(text)?.[0];
      if (found) resolve(found);
    });
  });
  await act('addSorbent', { name: 'Silica', sorbentClass: 'silica' }, '__typename');
  await act('addSorbent', { name: 'Alumina', sorbentClass: 'alumina' }, '__typename');
});

afterAll(async () => {
  console.log(lines.join('\n'));
  const ended = new Promise((closed) => server.once('exit', closed));
  server.kill('SIGTERM');
  await ended;
  rmSync(folder, { recursive: true, force: true });
});

const between = (series: Air['temperatures'], fromMs: number, untilMs: number): number[] => {
  const values = series
    .filter(({ atMs }) => atMs >= fromMs - hourMs && atMs <= untilMs + hourMs)
    .map(({ value }) => value);
  if (values.length === 0) throw new Error('nothing was measured then');
  return values;
};

/** Guggenheim, Anderson and de Boer; the parameters of the two classes in the exposure model, below pore filling. */
const film = (wm: number, c: number, k: number) => (a: number) =>
  (wm * c * k * a) / ((1 - k * a) * (1 - k * a + c * k * a));
const sorbents = {
  Silica: { isotherm: film(0.066, 6.8, 0.83), density: 500, voidFraction: 0.4 },
  Alumina: { isotherm: film(0.0417, 33.8, 0.847), density: 950, voidFraction: 0.52 },
} as const;

interface Jar {
  sorbent: keyof typeof sorbents;
  dryGrams: number;
  innerDiameterMm: number;
  heightMm: number;
}

const jars: Jar[] = [
  { sorbent: 'Silica', dryGrams: 380, innerDiameterMm: 90, heightMm: 150 },
  { sorbent: 'Silica', dryGrams: 60, innerDiameterMm: 140, heightMm: 40 },
  { sorbent: 'Alumina', dryGrams: 500, innerDiameterMm: 90, heightMm: 120 },
];
const startWaterFraction = 0.002;
const openHours = 24;

/** Vapour in air of this temperature (°C) and humidity (%), kg/m³: φ p M/(R T), p from psychrolib. */
const vapourOf = (temperatureC: number, percent: number): number =>
  ((percent / 100) * psychrolib.GetSatVapPres(temperatureC) * 0.018015268) / (8.314462618 * (temperatureC + 273.15));

/**
 * What an open bed can have gained, as mean water fraction, between the driest, coolest and the wettest, warmest air that
 * was measured meanwhile. Above: a rectangular isotherm of the wettest air's capacity (sharp front, exact). Below: a linear
 * isotherm through the driest air's capacity takes up at least √(4/π)/√2 = 0.80 of its sharp front (where the bed
 * controls; more where the air does), less by what the starting water holds against it.
 */
function limits(air: Air, jar: Jar, fromMs: number, untilMs: number): { low: number; high: number } {
  const temperatures = between(air.temperatures, fromMs, untilMs);
  const humidities = between(air.humidities, fromMs, untilMs);
  const { isotherm, density, voidFraction } = sorbents[jar.sorbent];
  const area = (Math.PI / 4) * (jar.innerDiameterMm / 1000) ** 2;
  const depthM = jar.dryGrams / 1000 / density / area;
  const seconds = (untilMs - fromMs) / 1000;
  const gained = (temperatureC: number, percent: number): number => {
    // Massman, Atmos. Environ. 32 (1998) 1111; Bruggeman's factor for the bed.
    const diffusivity = 2.178e-5 * (temperatureC / 273.15 + 1) ** 1.81;
    const resistance = 1 / 0.003 + (jar.heightMm / 1000 - depthM) / diffusivity;
    const held = density * isotherm(percent / 100);
    const front = frontM(
      held,
      diffusivity * voidFraction ** 1.5,
      resistance,
      vapourOf(temperatureC, percent) * seconds,
    );
    return (held * Math.min(front, depthM)) / (density * depthM);
  };
  const driest = Math.min(...humidities);
  const startActivity = startWaterFraction / (isotherm(0.01) / 0.01);
  const low =
    (Math.SQRT2 / Math.sqrt(Math.PI)) *
    (1 - startActivity / (driest / 100)) *
    gained(Math.min(...temperatures), driest);
  return { low, high: gained(Math.max(...temperatures), Math.max(...humidities)) };
}

const percent = (fraction: number): string => `${(100 * fraction).toFixed(2)} %`;

describe.each(airs)('the air of the $room', (air) => {
  it('comes in whole, once, and is what the file says', async () => {
    await act('addRoom', { name: air.room }, '__typename');
    let added = 0;
    for (const file of air.files) added += (await imported(file, air.room)).added;
    expect(added).toBe(air.temperatures.length + air.humidities.length);
    for (const file of air.files) expect((await imported(file, air.room)).added).toBe(0);
    const at = Date.parse(air.openedAt);
    const query = `query ($room: String!, $from: DateTime!, $until: DateTime!) { room(name: $room) {
      sensors { name setAsideWhy } air(from: $from, until: $until, points: 24) { temperatureC relativeHumidityPercent } } }`;
    const until = new Date(at + openHours * hourMs).toISOString();
    const { room } = await ask<{
      room: {
        sensors: { name: string; setAsideWhy: string | null }[];
        air: { temperatureC: number; relativeHumidityPercent: number }[];
      };
    }>(query, { room: air.room, from: air.openedAt, until });
    const temperatures = between(air.temperatures, at, at + openHours * hourMs);
    const humidities = between(air.humidities, at, at + openHours * hourMs);
    for (const point of room.air) {
      expect(point.temperatureC).toBeGreaterThanOrEqual(Math.min(...temperatures) - 0.01);
      expect(point.temperatureC).toBeLessThanOrEqual(Math.max(...temperatures) + 0.01);
      // A room's humidity is its vapour over saturation, so that where both move it may leave the readings' span a little.
      expect(point.relativeHumidityPercent).toBeGreaterThanOrEqual(Math.min(...humidities) - 1);
      expect(point.relativeHumidityPercent).toBeLessThanOrEqual(Math.max(...humidities) + 1);
    }
    lines.push(
      `${air.room}: ${added} values, ${room.sensors.map(({ name, setAsideWhy }) => name + (setAsideWhy ? ` (${setAsideWhy})` : '')).join(', ')}`,
    );
  });

  it.each(jars)('wets $dryGrams g of $sorbent as much as the two closed limits allow', async (jar) => {
    const at = Date.parse(air.openedAt);
    const instant = (hours: number) => new Date(at + hours * hourMs).toISOString();
    const { sorbent, dryGrams, innerDiameterMm, heightMm } = jar;
    const { containers } = await act<{ containers: { label: string }[] }>(
      'receiveLot',
      {
        sorbent,
        lotNumber: `${air.room} ${dryGrams}`,
        receivedAt: instant(-1),
        containers: [
          {
            kind: 'DRUM',
            room: air.room,
            grams: dryGrams,
            basis: 'DRY',
            startWaterFraction,
            innerDiameterMm,
            heightMm,
          },
        ],
      },
      '... on LotReceived { containers { label } }',
    );
    const label = containers[0]?.label ?? '';
    await act('openContainer', { label, at: instant(0) }, '__typename');
    await act('closeContainer', { label, at: instant(openHours), closure: 'TIGHT' }, '__typename');
    const query = `query ($label: String!, $from: DateTime!, $until: DateTime!) { container(label: $label) {
      exposure { state reason meanWaterFraction low high }
      waterOverTime(from: $from, until: $until, points: 49) { at meanWaterFraction low high scoopWaterFraction } } }`;
    const { container } = await ask<{
      container: {
        exposure: { state: string; reason: string; meanWaterFraction: number; low: number; high: number };
        waterOverTime: {
          at: string;
          meanWaterFraction: number;
          low: number;
          high: number;
          scoopWaterFraction: number;
        }[];
      };
    }>(query, { label, from: instant(0), until: instant(openHours) });
    const last = container.waterOverTime.at(-1);
    if (!last) throw new Error('no water over time');
    const gained = last.meanWaterFraction - startWaterFraction;
    const { low, high } = limits(air, jar, at, at + openHours * hourMs);
    lines.push(
      `  ${sorbent} ${dryGrams} g, ${openHours} h open: gained ${percent(gained)} (limits ${percent(low)} to ${percent(high)}), ` +
        `mean ${percent(last.meanWaterFraction)} (${percent(last.low)} to ${percent(last.high)}), next scoop ${percent(last.scoopWaterFraction)}`,
      `    now ${container.exposure.state}: ${container.exposure.reason}`,
    );
    expect(gained).toBeGreaterThanOrEqual(low);
    expect(gained).toBeLessThanOrEqual(high);
    expect(last.low).toBeLessThan(last.meanWaterFraction);
    expect(last.high).toBeGreaterThan(last.meanWaterFraction);
    expect(last.scoopWaterFraction).toBeGreaterThanOrEqual(last.meanWaterFraction);
    expect(container.exposure.reason).toMatch(/% RH/);
    // What the lid has let in since can only have added to what was in it when it was shut, or stayed.
    expect(container.exposure.meanWaterFraction).toBeGreaterThanOrEqual(last.meanWaterFraction - 1e-4);
  });
});

describe.each(airs.filter(({ files }) => files.length === 1))('a beaker left open in the $room', (air) => {
  it('is good at first and to be redried once the driest measured air must have spent it', async () => {
    const at = Date.parse(air.openedAt);
    const jar: Jar = { sorbent: 'Silica', dryGrams: 60, innerDiameterMm: 140, heightMm: 40 };
    const limitWaterFraction = limits(air, jar, at, at + openHours * hourMs).low / 2;
    const file = join(folder, 'scenario.json');
    const depthMm = (jar.dryGrams / 500 / ((Math.PI / 4) * jar.innerDiameterMm ** 2)) * 1e6;
    const report = [1 / 60, openHours].map((hours) => new Date(at + hours * hourMs).toISOString());
    writeFileSync(
      file,
      JSON.stringify({
        sorbent: 'silica',
        container: {
          bedDepthMm: depthMm,
          bedDiameterMm: jar.innerDiameterMm,
          headspaceMm: jar.heightMm - depthMm,
          mouthDiameterMm: jar.innerDiameterMm,
          volumeL: 0.6,
          closure: 'open',
        },
        start: { at: air.openedAt, waterFraction: startWaterFraction },
        climate: { file: join(data, air.files[0] ?? '') },
        limitWaterFraction,
        report,
      }),
    );
    const { code, stdout, stderr } = await command('estimate', [file]);
    expect(stderr).toBe('');
    expect(code).toBe(0);
    const { exposure } = JSON.parse(stdout) as {
      exposure: { state: string; hoursToLimit: number | null; reason: string }[];
    };
    lines.push(
      ...exposure.map(
        ({ state, reason }, index) => `  beaker in the ${air.room}, ${report[index]}: ${state}: ${reason}`,
      ),
    );
    expect(exposure[0]?.state).not.toBe('REDRY');
    expect(exposure[0]?.hoursToLimit).toBeGreaterThan(0);
    expect(exposure[1]?.state).toBe('REDRY');
    expect(exposure[1]?.hoursToLimit).toBe(0);
  });
});
