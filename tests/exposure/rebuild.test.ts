// Timelines are the truth, exposures are derived: however they came about, the same history gives the same digits, to the
// last bit. (Architecture paper, "Rules that keep it true"; exposure model, section 3, numerics 9.)
import { expect, it } from 'vitest';
import type { Database } from '../../api/database/database.ts';
import { bringForward, rebuildExposures } from '../../api/exposure/service.ts';
import { describeEngines } from '../support/engines.ts';
import { type Book, day, estimatesStored, hour, openBook, poured, start } from './book.ts';

const end = start + 12 * day + 7 * hour;

async function all(database: Database, book: Book): Promise<string[]> {
  return (await database.read.container.findMany({ where: { labId: book.labId } })).map(({ id }) => id);
}

/** Everything that is stored when all of it is dropped and made anew. */
async function afterRebuild(database: Database, book: Book, at: number) {
  await rebuildExposures(database, book.lab, at);
  return estimatesStored(database, book.labId);
}

const instants = ({ checkpoints }: Awaited<ReturnType<typeof estimatesStored>>) => checkpoints.length;

describeEngines('stored exposures', (on) => {
  it('brought forward hour by hour they are what a rebuild gives', async () => {
    const database = await on.fresh();
    const book = await openBook(database, 14);
    const drum = await book.shelve();
    await book.cameIn(drum, start + hour);
    await book.tell(drum, { type: 'OPENED', at: start + 2 * day });
    await book.tell(drum, { type: 'MOVED', at: start + 3 * day + hour, detail: { roomId: book.store } });
    await book.tell(drum, { type: 'CLOSED', at: start + 4 * day, detail: { closure: 'TIGHT' } });
    for (let at = start + 2 * hour; at < end; at += 11 * hour) await bringForward(database, book.lab, [drum], at);
    await bringForward(database, book.lab, [drum], end);
    const step = await estimatesStored(database, book.labId);
    expect(step.exposures[0]).toMatchObject({ state: 'GOOD', staleFrom: null });
    expect(instants(step)).toBeGreaterThan(8);
    expect(await afterRebuild(database, book, end)).toEqual(step);
  });

  it('a late event rewinds to before it happened', async () => {
    const database = await on.fresh();
    const book = await openBook(database, 14);
    const drum = await book.shelve();
    await book.cameIn(drum, start + hour);
    await bringForward(database, book.lab, [drum], end);
    const closed = (await estimatesStored(database, book.labId)).exposures[0];
    await book.tell(drum, { type: 'OPENED', at: start + 9 * day + 16 * hour });
    await bringForward(database, book.lab, [drum], end);
    const late = await estimatesStored(database, book.labId);
    expect(late.exposures[0]?.meanWaterFraction).toBeGreaterThan(closed?.meanWaterFraction ?? 1);
    expect(await afterRebuild(database, book, end)).toEqual(late);
  });

  it('a portion begins with the water of what was poured, and follows when its source is put right', async () => {
    const database = await on.fresh();
    const book = await openBook(database, 14);
    const [drum, beaker, vial] = [
      await book.shelve(),
      await book.shelve({ kind: 'PORTION' }),
      await book.shelve({ kind: 'PORTION' }),
    ];
    await book.cameIn(drum, start + hour);
    await book.tell(drum, { type: 'OPENED', at: start + day });
    const pour = { dryGrams: 100, detail: poured(book.bench) };
    await book.tell(drum, { type: 'PORTION_TAKEN', at: start + 5 * day, other: beaker, ...pour });
    await book.tell(beaker, {
      type: 'PORTION_TAKEN',
      at: start + 6 * day,
      other: vial,
      dryGrams: 20,
      detail: poured(book.bench, 'TIGHT'),
    });
    await bringForward(database, book.lab, await all(database, book), end);
    const before = await estimatesStored(database, book.labId);
    expect(before.parcels).toHaveLength(2);
    expect(before.exposures.every(({ staleFrom, state }) => staleFrom === null && state !== 'UNKNOWN')).toBe(true);

    // The drum was dried a day before anybody poured from it, and that was written down last.
    const detail = { temperatureC: 130, minutes: 60, vacuum: false, waterFraction: 0.001 };
    await book.tell(drum, { type: 'DRIED', at: start + 4 * day, detail });
    await bringForward(database, book.lab, [drum], end);
    const after = await estimatesStored(database, book.labId);
    const waterOf = (id: string, of: typeof after) =>
      of.exposures.find(({ containerId }) => containerId === id)?.meanWaterFraction ?? NaN;
    for (const id of [drum, beaker, vial]) expect(waterOf(id, after)).toBeLessThan(waterOf(id, before));
    expect(after.exposures.every(({ staleFrom }) => staleFrom === null)).toBe(true);
    expect(await afterRebuild(database, book, end)).toEqual(after);
  });

  it('trays emptied back into a jar bring their water with them', async () => {
    const database = await on.fresh();
    const book = await openBook(database, 14);
    const [jar, tray] = [await book.shelve(), await book.shelve({ kind: 'PORTION' })];
    await book.cameIn(jar, start + hour);
    await book.tell(jar, {
      type: 'PORTION_TAKEN',
      at: start + day,
      other: tray,
      dryGrams: 100,
      detail: poured(book.bench),
    });
    const detail = {
      grams: 100,
      basis: 'DRY',
      bookedWaterFraction: 0.05,
      waterAssumed: false,
      openMinutes: 5,
      leftOpen: false,
    };
    await book.tell(tray, { type: 'COMBINED', at: start + 4 * day, other: jar, dryGrams: 100, detail });
    await bringForward(database, book.lab, [jar, tray], end);
    const after = await estimatesStored(database, book.labId);
    expect(after.parcels).toHaveLength(2);
    const jarNow = after.exposures.find(({ containerId }) => containerId === jar);
    // A quarter of it stood open for three days; the rest was at 1 %.
    expect(jarNow?.meanWaterFraction).toBeGreaterThan(0.015);
    expect(jarNow?.meanWaterFraction).toBeLessThan(0.05);
    expect(await afterRebuild(database, book, end)).toEqual(after);
  });

  it('what an oven left is reckoned from the water that went in, with the same digits whenever it is reckoned', async () => {
    const database = await on.fresh();
    const book = await openBook(database, 14);
    const [drum, box, tray] = [
      await book.shelve(),
      await book.shelve({ kind: 'PLATE_BOX' }),
      await book.shelve({ kind: 'PORTION' }),
    ];
    await book.cameIn(drum, start + hour);
    await book.cameIn(box, start + hour);
    await book.tell(drum, { type: 'OPENED', at: start + 2 * hour });
    const pour = { dryGrams: 100, detail: poured(book.bench) };
    await book.tell(drum, { type: 'PORTION_TAKEN', at: start + 3 * day, other: tray, ...pour });
    const oven = { temperatureC: 120, vacuum: false, waterFraction: null };
    const half = { ...oven, minutes: 40, depthMm: 25, fan: true, minutesToClosed: 20 };
    await book.tell(drum, { type: 'DRIED', at: start + 4 * day + 7 * hour, detail: half });
    await book.tell(box, { type: 'DRIED', at: start + 4 * day, detail: { ...oven, minutes: 30, depthMm: null } });
    await book.tell(tray, { type: 'DRIED', at: start + 5 * day, detail: { ...oven, minutes: 90, depthMm: 12 } });
    // Written down before anybody asked for the depth: what the temperature leaves, as ever.
    await book.tell(tray, { type: 'DRIED', at: start + 9 * day, detail: { ...oven, minutes: 90 } });
    const ids = await all(database, book);
    for (let at = start + 2 * hour; at < end; at += 17 * hour) await bringForward(database, book.lab, ids, at);
    await bringForward(database, book.lab, ids, end);
    const step = await estimatesStored(database, book.labId);
    expect(step.exposures.every(({ staleFrom }) => staleFrom === null)).toBe(true);
    expect(await afterRebuild(database, book, end)).toEqual(step);
  });

  it('an estimate made before its inputs changed is thrown away', async () => {
    const database = await on.fresh();
    const book = await openBook(database, 14);
    const drum = await book.shelve();
    await book.cameIn(drum, start + hour);
    const { estimatesOf } = await import('../../api/exposure/estimate.ts');
    const { groundsOf } = await import('../../api/exposure/ground.ts');
    const { storeEstimates } = await import('../../api/exposure/store.ts');
    const grounds = await groundsOf(database, book.lab);
    const early = await estimatesOf([drum], { reader: database, grounds, asOfMs: end, asked: new Set() });
    await book.tell(drum, { type: 'OPENED', at: start + 2 * day });
    const { stale } = await database.write((tx) => storeEstimates(tx, on.engine, early));
    expect(stale).toEqual([drum]);
    const [exposure] = (await estimatesStored(database, book.labId)).exposures;
    expect(exposure).toMatchObject({ state: 'UNKNOWN', staleFrom: new Date(start + hour) });
  });
});
