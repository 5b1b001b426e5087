// The import command as a person calls it: what it shows, what it writes, and how it refuses.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { askedOf } from '../../../api/commands/import/options.ts';
import { openDatabase } from '../../../api/database/database.ts';
import { command } from '../../support/command.ts';
import { emptyLab, room } from '../lab.ts';

const fixture = (name: string): string => fileURLToPath(new URL(`../../../fixtures/loggers/${name}`, import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'drumkeep-import-'));
const env = { DRUMKEEP_DATA: join(folder, 'data'), DRUMKEEP_TIME_ZONE: 'Europe/Berlin' };
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('a dry run', () => {
  test('prints as JSON what was understood, with no database', async () => {
    const { code, stdout, stderr } = await command('import', [fixture('events.csv'), '--dry-run', '--json'], env);
    expect([code, stderr]).toEqual([0, '']);
    expect(JSON.parse(stdout)).toEqual({
      series: [
        {
          sensor: 'events',
          column: 'Temperature (°C)',
          quantity: 'temperature',
          unit: '°C',
          readings: 6,
          missing: 0,
          first: '2026-03-14T21:30:00Z',
          last: '2026-03-15T00:00:00Z',
          min: 20.9,
          max: 21.7,
          mean: 21.383333,
        },
        {
          sensor: 'events',
          column: 'Humidity (%)',
          quantity: 'relative humidity',
          unit: '%',
          readings: 6,
          missing: 0,
          first: '2026-03-14T21:30:00Z',
          last: '2026-03-15T00:00:00Z',
          min: 43.7,
          max: 46.2,
          mean: 44.95,
        },
      ],
      leftOut: [
        { line: 4, why: 'no reading: "2026-03-14 23:10 button pressed"' },
        { line: 5, why: 'no reading: "2026-03-14 23:12 logging paused"' },
        { line: 8, why: 'no reading: "*** battery changed ***"' },
      ],
      questions: [],
    });
  });

  test('tells a person the sentence, the series, the lines left out and how to answer', async () => {
    const { code, stdout } = await command('import', [fixture('spring.csv'), '--dry-run'], env);
    expect(code).toBe(0);
    expect(stdout.split('\n')[0]).toMatch(/^comma-separated UTF-8 text, .* 1 left out; 1 question open\.$/);
    expect(stdout).toContain('  line 3: 2026-03-29 02:30 was skipped in Europe/Berlin: clocks went forward\n');
    expect(stdout).toContain('(--zone Europe/Berlin or --zone UTC+01:00)');
  });

  test('calls a picture a picture in one line and ends with 1', async () => {
    const { code, stdout, stderr } = await command('import', [fixture('picture.csv'), '--dry-run', '--json'], env);
    expect([code, stdout]).toEqual([1, '']);
    expect(stderr).toMatch(/^invalid FILE: .*picture\.csv, it is a PNG picture; expected .*\n$/);
  });
});

describe('an import', () => {
  const ambiguous = join(folder, 'ambiguous.csv');
  writeFileSync(ambiguous, 'time,T °C,RH %\n03/04/2017 08:00,20.5,45\n03/04/2017 08:10,20.6,46\n');
  const answered = [ambiguous, '--room', 'wet bench', '--dates', 'day-first'];

  test('stops at an open question before anything is written, adds all once it is answered, and nothing twice', async () => {
    const database = await openDatabase({ dataFolder: env.DRUMKEEP_DATA, databaseUrl: undefined });
    await room(await emptyLab(database), 'wet bench');
    const counts = async () => [
      await database.read.sensor.count(),
      await database.read.readingDay.count(),
      await database.read.import.count(),
    ];
    try {
      const open = await command('import', answered.slice(0, 3), env);
      expect([open.code, open.stdout]).toEqual([1, '']);
      expect(open.stderr).toContain(
        'missing --dates, is 03/04/2017 day first or month first? one of day-first, month-first',
      );
      expect(await counts()).toEqual([0, 0, 0]);
      const first = await command('import', answered, env);
      expect([first.code, first.stdout]).toEqual([
        0,
        expect.stringContaining('\n4 readings added to wet bench; 0 were there already.'),
      ]);
      expect(await counts()).toEqual([1, 2, 1]);
      const again = await command('import', answered, env);
      expect([again.code, again.stdout]).toEqual([
        0,
        expect.stringContaining('\n0 readings added to wet bench; 4 were there already.'),
      ]);
      expect((await counts()).slice(0, 2)).toEqual([1, 2]);
      const elsewhere = await command('import', answered.with(2, 'attic'), env);
      expect([elsewhere.code, elsewhere.stderr]).toEqual([1, expect.stringContaining('unknown --room: attic, ')]);
    } finally {
      await database.close();
    }
  }, 300_000);
});

describe('words', () => {
  test('that are answers are taken as such', () => {
    expect(
      askedOf([
        'air.csv',
        '--dry-run',
        '--unit',
        'f',
        '--quantity',
        'humidity,temperature',
        '--start',
        '2026-03-02T08:00',
        '--every',
        '300',
      ]),
    ).toMatchObject({
      file: 'air.csv',
      room: null,
      json: false,
      answers: { unit: 'F', quantity: ['humidity', 'temperature'], start: '2026-03-02T08:00', everySeconds: 300 },
    });
  });

  test.each([
    [[], 'missing FILE, '],
    [['a.csv'], 'missing --room, '],
    [['a.csv', '--room', 'x', '--json'], 'missing --dry-run, '],
    [['a.csv', 'b.csv', '--dry-run'], 'unknown word: b.csv, '],
    [['a.csv', '--colour', 'red'], 'unknown option: --colour, one of --room, '],
    [['a.csv', '--dry-run', '--dates', 'middle'], 'unknown --dates: middle, one of day-first, '],
    [['a.csv', '--dry-run', '--unit', 'R'], 'unknown --unit: R, one of C, F, K'],
    [['a.csv', '--dry-run', '--zone', 'Nowhere'], 'unknown --zone: Nowhere, '],
    [['a.csv', '--dry-run', '--every', 'often'], 'invalid --every: often, '],
    [['a.csv', '--dry-run', '--every', '60'], 'missing --start, '],
    [['a.csv', '--room'], 'invalid --room: nothing, '],
  ])('%j are refused in one line: %s', (words, message) => {
    expect(() => askedOf(words)).toThrow(message);
  });
});
