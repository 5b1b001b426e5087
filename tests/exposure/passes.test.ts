// The background pass: a thread of its own estimates, the one write queue stores, and a server that was off catches up.
import { afterEach, expect, it } from 'vitest';
import type { DatabaseSettings } from '../../api/database/database.ts';
import { openDatabase } from '../../api/database/database.ts';
import { type Passes, startPasses } from '../../api/exposure/passes.ts';
import { progressOf } from '../../api/exposure/progress.ts';
import { rebuildExposures } from '../../api/exposure/service.ts';
import { readSettings } from '../../api/settings.ts';
import { describeEngines } from '../support/engines.ts';
import { day, estimatesStored, hour, openBook, poured, start } from './book.ts';

const end = start + 12 * day + 7 * hour;
const running: Passes[] = [];
afterEach(async () => {
  for (const passes of running.splice(0)) await passes.stop();
});

async function opened(place: DatabaseSettings) {
  const database = await openDatabase(place);
  const book = await openBook(database, 14);
  let clock = end;
  const lab = await database.read.lab.findUniqueOrThrow({ where: { id: book.labId } });
  const settings = { ...readSettings({}), ...place, databaseUrl: place.databaseUrl };
  const app = { settings, database, lab, now: () => new Date(clock) };
  return { database, book, app, setClock: (at: number) => (clock = at) };
}

describeEngines('a background pass', (on) => {
  it('gives the same digits as the main thread, through poured and emptied back', async () => {
    const { database, book, app } = await opened(await on.place());
    const [jar, tray, vial] = [
      await book.shelve(),
      await book.shelve({ kind: 'PORTION' }),
      await book.shelve({ kind: 'PORTION' }),
    ];
    await book.cameIn(jar, start + hour);
    await book.tell(jar, {
      type: 'PORTION_TAKEN',
      at: start + day,
      other: tray,
      dryGrams: 100,
      detail: poured(book.bench),
    });
    const back = {
      grams: 80,
      basis: 'DRY',
      bookedWaterFraction: 0.05,
      waterAssumed: false,
      openMinutes: 5,
      leftOpen: false,
    };
    await book.tell(tray, {
      type: 'PORTION_TAKEN',
      at: start + 2 * day,
      other: vial,
      dryGrams: 20,
      detail: poured(book.bench),
    });
    await book.tell(tray, { type: 'COMBINED', at: start + 4 * day, other: jar, dryGrams: 80, detail: back });
    const passes = startPasses(app);
    running.push(passes);
    await passes.now();
    const passed = await estimatesStored(database, book.labId);
    expect(passed.exposures).toHaveLength(3);
    expect(
      passed.exposures.every(({ staleFrom, reason }) => staleFrom === null && reason !== 'not estimated yet'),
    ).toBe(true);
    expect(progressOf(database)).toMatchObject({ running: false, startedAt: new Date(end), finishedAt: new Date(end) });
    expect(progressOf(database).done).toBeGreaterThanOrEqual(3);
    await rebuildExposures(database, book.lab, end);
    expect(await estimatesStored(database, book.labId)).toEqual(passed);
    await running.pop()?.stop();
    await database.close();
  });

  it('after thirty days off everything is brought up to now, by the typical day where nobody measured', async () => {
    const { database, book, app, setClock } = await opened(await on.place());
    const drum = await book.shelve({ closure: 'OPEN' });
    await book.cameIn(drum, start + hour, 'OPEN');
    const passes = startPasses(app);
    running.push(passes);
    await passes.now();
    const before = (await estimatesStored(database, book.labId)).exposures[0];
    setClock(end + 30 * day);
    await passes.now();
    const after = (await estimatesStored(database, book.labId)).exposures[0];
    expect(after?.asOf).toEqual(new Date(end + 30 * day));
    expect(after?.meanWaterFraction).toBeGreaterThan(before?.meanWaterFraction ?? 1);
    expect(after?.uncertainAirFraction).toBeGreaterThan(0.9);
    await running.pop()?.stop();
    await database.close();
  });
});
