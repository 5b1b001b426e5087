// Many rows in one statement arrive as Prisma itself would have written them. The same on both engines.
import { expect, it } from 'vitest';
import { type BulkRows, insertRows } from '../../api/database/bulk.ts';
import { describeEngines } from '../support/engines.ts';

const columns = {
  id: 'text',
  name: 'text',
  timeZone: 'text',
  isDemo: 'boolean',
  settings: 'json',
  createdAt: 'time',
} as const;
type Labs = BulkRows<keyof typeof columns>;
const labs = (rows: Labs['rows'], more: Partial<Labs> = {}): Labs => ({ table: 'Lab', columns, rows, ...more });

const row = {
  id: 'lab',
  name: `O'Hare "north" µ 😀`,
  timeZone: 'UTC',
  isDemo: true,
  settings: { limit: 0.1, words: ['a', null, true], deep: { empty: {} } },
  createdAt: new Date('2026-03-02T08:00:00.123Z'),
};

describeEngines('rows in bulk', (on) => {
  it('every kind of value reads back as it was given', async () => {
    const database = await on.fresh();
    await database.write((tx) => insertRows(tx, on.engine, labs([row])));
    expect(await database.read.lab.findMany()).toEqual([row]);
  });

  it('a bulk row equals one that Prisma wrote', async () => {
    const database = await on.fresh();
    await database.write((tx) => insertRows(tx, on.engine, labs([{ ...row, id: 'bulk', name: 'bulk' }])));
    await database.write((tx) => tx.lab.create({ data: { ...row, id: 'prisma', name: 'prisma' } }));
    const kept = await database.select<Record<string, unknown>>(
      'select "timeZone", "isDemo", "settings", "createdAt" from "Lab"',
    );
    expect(kept).toHaveLength(2);
    expect(kept[0]).toEqual(kept[1]);
    expect(kept[0]?.['createdAt']).toBe(row.createdAt.getTime());
  });

  it('bytes come back as they were, also as a view into a larger buffer', async () => {
    const database = await on.fresh();
    const all = Uint8Array.from({ length: 256 }, (_, byte) => byte);
    const rows = [all, all.subarray(3, 7), new Uint8Array(0)].map((data, index) => ({
      labId: 'lab',
      eventId: `e${index}`,
      fromContainerId: 'a',
      toContainerId: 'b',
      at: row.createdAt,
      data,
    }));
    const columns = {
      labId: 'text',
      eventId: 'text',
      fromContainerId: 'text',
      toContainerId: 'text',
      at: 'time',
      data: 'bytes',
    } as const;
    await database.write((tx) => insertRows(tx, on.engine, { table: 'Parcel', columns, rows }));
    const kept = await database.read.parcel.findMany({ orderBy: { eventId: 'asc' } });
    expect(kept.map(({ data }) => [...data])).toEqual(rows.map(({ data }) => [...data]));
  });

  it('ten thousand rows are one statement, and none is lost', async () => {
    const database = await on.fresh();
    const many = Array.from({ length: 10_000 }, (_, index) => ({ labId: 'lab', name: `n${index}`, value: index }));
    const bulk = { table: 'Counter', columns: { labId: 'text', name: 'text', value: 'integer' } as const, rows: many };
    const { result, texts } = await database.statements.during(() =>
      database.write((tx) => insertRows(tx, on.engine, bulk)),
    );
    expect(result).toBe(10_000);
    expect(texts).toHaveLength(1);
    const kept = await database.select('select count(*) as "rows", sum("value") as "sum" from "Counter"');
    expect(kept).toEqual([{ rows: 10_000, sum: 49_995_000 }]);
  });

  it('a row that is there already stays, or is replaced, as told', async () => {
    const database = await on.fresh();
    const changed = { ...row, timeZone: 'Europe/Helsinki' };
    await database.write((tx) => insertRows(tx, on.engine, labs([row])));
    expect(await database.write((tx) => insertRows(tx, on.engine, labs([changed], { key: ['id'] })))).toBe(0);
    expect(await database.read.lab.findMany()).toEqual([row]);
    await database.write((tx) => insertRows(tx, on.engine, labs([changed], { key: ['id'], replace: ['timeZone'] })));
    expect(await database.read.lab.findMany()).toEqual([changed]);
    await expect(database.write((tx) => insertRows(tx, on.engine, labs([changed])))).rejects.toThrow();
  });

  it('no rows cost no statement', async () => {
    const database = await on.fresh();
    const { result, texts } = await database.statements.during(() =>
      database.write((tx) => insertRows(tx, on.engine, labs([]))),
    );
    expect({ result, texts }).toEqual({ result: 0, texts: [] });
  });
});
