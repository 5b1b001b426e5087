// Logger files brought into a room: whole or not at all, and nothing twice.
import { expect, it } from 'vitest';
import { airOf } from '../../api/climate/air.ts';
import { importFile, importReadings } from '../../api/climate/import-readings.ts';
import { storedLoggerFile } from '../../api/climate/stored-file.ts';
import type { Context } from '../../api/context.ts';
import { Refused } from '../../api/errors.ts';
import { newId } from '../../api/work.ts';
import { describeEngines } from '../support/engines.ts';
import { day, labsOf, room, start } from './lab.ts';

const bytesOf = (text: string) => new TextEncoder().encode(text);

/** Two days, every ten minutes, in the written form of an ISO instant with its offset. */
const rows = Array.from(
  { length: 288 },
  (_, i) => `${new Date(start + i * 600_000).toISOString()},21.${i % 10},4${i % 10}.0`,
);
const plain = ['Time,Temperature (°C),Humidity (%)', ...rows, ''].join('\n');
/** 3 April or 4 March: nobody can tell. */
const ambiguous = [
  'Time,Temperature (°C),Humidity (%)',
  '03/04/2026 10:00,21.0,45',
  '03/04/2026 10:10,21.1,46',
  '',
].join('\n');

async function handedIn({ database, lab }: Context, name: string, text: string): Promise<string> {
  const bytes = bytesOf(text);
  const row = {
    id: newId(),
    labId: lab.id,
    name,
    sha256: name,
    sizeBytes: bytes.length,
    bytes,
    receivedAt: new Date(start),
  };
  await database.write((tx) => tx.storedFile.create({ data: row }));
  return row.id;
}

const counts = async ({ database: { read }, lab }: Context) => {
  const where = { labId: lab.id };
  return {
    sensors: await read.sensor.count({ where }),
    readingDays: await read.readingDay.count({ where }),
    roomDays: await read.roomDay.count({ where }),
    imports: await read.import.count({ where }),
  };
};

const refusalOf = (work: Promise<unknown>) =>
  work.then(
    () => expect.unreachable('it should be refused'),
    (error: unknown) => {
      if (error instanceof Refused) return error;
      throw error;
    },
  );

describeEngines('importing', (on) => {
  const newLab = labsOf(on);
  it('a file is imported once, and a second time adds nothing', async () => {
    const lab = await newLab();
    const id = await room(lab, 'wet bench');
    const file = await handedIn(lab, 'bench.csv', plain);
    const done = await importReadings(lab, { file, room: 'wet bench' });
    expect(done).toMatchObject({ added: 576, repeated: 0, disagreeing: 0 });
    const [air] = await airOf(lab.database, id, start / day, start / day + 1);
    expect(air?.uncertain.every((doubt) => doubt === 0)).toBe(true);
    const before = await counts(lab);

    const again = await importReadings(lab, { file, room: 'wet bench' });
    expect(again).toMatchObject({ importId: done.importId, added: 0, repeated: 576 });
    const other = await handedIn(lab, 'bench.csv', plain);
    expect(await importReadings(lab, { file: other, room: 'wet bench' })).toMatchObject({ added: 0, repeated: 576 });
    expect(await counts(lab)).toEqual({ ...before, imports: before.imports + 1 });
  });

  it('an open question is refused with its choices, before anything is written', async () => {
    const lab = await newLab();
    await room(lab, 'wet bench');
    const file = await handedIn(lab, 'odd.csv', ambiguous);
    const refused = await refusalOf(importReadings(lab, { file, room: 'wet bench' }));
    expect(refused).toMatchObject({ path: 'input.answers.dates', expected: 'one of day-first, month-first' });
    expect(refused.message).toMatch(/^missing input\.answers\.dates, /);
    expect(await counts(lab)).toEqual({ sensors: 0, readingDays: 0, roomDays: 0, imports: 0 });

    expect((await storedLoggerFile(lab, file, {}))?.questions).toHaveLength(1);
    const answered = await storedLoggerFile(lab, file, { dates: 'month-first' });
    expect(answered?.questions).toEqual([]);
    // Month first it is the 4th of March, 10:00 in Helsinki in winter.
    expect(answered?.series[0]?.firstRows[0]).toEqual({ line: 2, at: '2026-03-04T08:00:00.000Z', value: 21 });
    await importReadings(lab, { file, room: 'wet bench', answers: { dates: 'month-first' } });
    expect(await counts(lab)).toMatchObject({ sensors: 1, readingDays: 2, imports: 1 });
  });

  it('what is no logger file, or is meant for no room, leaves nothing behind', async () => {
    const lab = await newLab();
    await room(lab, 'wet bench');
    const page = await handedIn(lab, 'page.html', '<!doctype html><html><body><p>Hello</p></body></html>');
    expect((await refusalOf(importReadings(lab, { file: page, room: 'wet bench' }))).message).toMatch(
      /^invalid input\.file: page\.html, it is /,
    );
    const file = await handedIn(lab, 'bench.csv', plain);
    const lost = await refusalOf(importReadings(lab, { file, room: 'dry bench' }));
    expect(lost.message).toBe('unknown input.room: dry bench, one of wet bench');
    expect(await counts(lab)).toEqual({ sensors: 0, readingDays: 0, roomDays: 0, imports: 0 });
  });

  it('rows from the future are a clock that ran ahead: they are left out by line', async () => {
    const lab = await newLab(new Date(start + day));
    await room(lab, 'wet bench');
    const { imported, told } = await importFile(lab, {
      bytes: bytesOf(plain),
      fileName: 'bench.csv',
      room: 'wet bench',
      answers: {},
    });
    expect(imported.added).toBe(2 * 145);
    expect(told.leftOut[0]).toEqual({ line: 147, why: '2026-03-03T00:10:00.000Z is in the future' });
  });

  it('another value for an instant that is there is counted and named, and the first stays', async () => {
    const lab = await newLab();
    await room(lab, 'wet bench');
    const bring = (text: string) =>
      importFile(lab, { bytes: bytesOf(text), fileName: 'bench.csv', room: 'wet bench', answers: {} });
    await bring(plain);
    const { imported, told } = await bring(plain.replace(',21.3,43.0', ',29.3,43.0'));
    expect(imported).toMatchObject({ added: 0, repeated: 575, disagreeing: 1 });
    expect(told.notes[0]).toBe('2026-03-02T00:30:00.000Z has 21.3 °C already and keeps it; it disagrees with 29.3 °C');
  });

  it('temperature and humidity from two files are one sensor and one air', async () => {
    const lab = await newLab();
    const id = await room(lab, 'wet bench');
    const seconds = (of: (i: number) => string, shift: number) =>
      Array.from({ length: 150 }, (_, i) => `${start / 1000 + i * 600 + shift}\t${of(i)}`).join('\n') + '\n';
    const bring = (fileName: string, text: string) =>
      importFile(lab, { bytes: bytesOf(text), fileName, room: 'wet bench', answers: {} });
    await bring(
      'bench-temperature.tsv',
      seconds((i) => (21 + (i % 3) / 10).toFixed(1), 0),
    );
    await bring(
      'bench-humidity.tsv',
      seconds((i) => String(45 + (i % 2)), 217),
    );
    expect(await counts(lab)).toMatchObject({ sensors: 1 });
    const [air] = await airOf(lab.database, id, start / day, start / day + 1);
    expect(air?.uncertain.every((doubt) => doubt === 0)).toBe(true);
  });
});
