// A hand-written statement gives the same rows inside a transaction as outside, and inside it sees what is not committed yet.
import { expect, it } from 'vitest';
import { readerInside } from '../../api/database/inside.ts';
import { instantsIn } from '../../api/database/reader.ts';
import { describeEngines } from '../support/engines.ts';

const at = new Date('2026-03-02T08:00:00.123Z');
const row = (eventId: string) => ({
  eventId,
  labId: 'lab',
  fromContainerId: 'a',
  toContainerId: 'b',
  at,
  data: Uint8Array.from([0, 1, 255]),
});

describeEngines('reading inside a transaction', (on) => {
  it('gives rows of the same shape as reading outside', async () => {
    const database = await on.fresh();
    await database.write((tx) => tx.parcel.create({ data: row('one') }));
    const statement = `select p.*, count(*) over () as "count" from ${instantsIn(on.engine, '$2')} wanted
      join "Parcel" p on p."fromContainerId" = wanted."id" and p."at" >= wanted."ms" where p."labId" = $1`;
    const values = ['lab', JSON.stringify([['a', at.getTime()]])];
    const outside = await database.select<Record<string, unknown>>(statement, values);
    const inside = await database.write((tx) => readerInside(tx).select<Record<string, unknown>>(statement, values));
    const shown = (rows: Record<string, unknown>[]) =>
      rows.map((one) => ({ ...one, data: [...(one['data'] as Uint8Array)] }));
    expect(shown(inside)).toEqual(shown(outside));
    expect(shown(inside)).toEqual([{ ...row('one'), at: at.getTime(), data: [0, 1, 255], count: 1 }]);
  });

  it('sees what its transaction wrote, which others do not', async () => {
    const database = await on.fresh();
    const ids = 'select "eventId" from "Parcel"';
    await database.write(async (tx) => {
      await tx.parcel.create({ data: row('fresh') });
      expect(await readerInside(tx).select(ids)).toEqual([{ eventId: 'fresh' }]);
      expect(await database.select(ids)).toEqual([]);
    });
    expect(await database.select(ids)).toEqual([{ eventId: 'fresh' }]);
  });
});
