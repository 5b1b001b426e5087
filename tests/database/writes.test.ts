// One writer at a time, readers beside it, nothing half done. The same on both engines.
import { expect, it } from 'vitest';
import type { Transaction } from '../../api/database/client.ts';
import { describeEngines } from '../support/engines.ts';

const labOf = (id: string) => ({
  id,
  name: id,
  timeZone: 'UTC',
  settings: {},
  createdAt: new Date('2026-03-02T08:00:00.123Z'),
});
const addOne = async (tx: Transaction) => {
  const before = await tx.counter.findUniqueOrThrow({ where: { labId_name: { labId: 'lab', name: 'grams' } } });
  await tx.counter.update({
    where: { labId_name: { labId: 'lab', name: 'grams' } },
    data: { value: before.value + 1 },
  });
};

describeEngines('writing', (on) => {
  it('two hundred writers who each read before they write lose nothing', async () => {
    const database = await on.fresh();
    await database.write((tx) => tx.counter.create({ data: { labId: 'lab', name: 'grams', value: 0 } }));
    await Promise.all(Array.from({ length: 200 }, () => database.write(addOne)));
    expect(await database.read.counter.findFirst()).toMatchObject({ value: 200 });
  });

  it('what fails is undone whole, its reason reaches the caller, and the next one is served', async () => {
    const database = await on.fresh();
    const failing = database.write(async (tx) => {
      await tx.lab.create({ data: labOf('gone') });
      throw new Error('the drum is empty');
    });
    const next = database.write((tx) => tx.lab.create({ data: labOf('kept') }));
    await expect(failing).rejects.toThrow('the drum is empty');
    await next;
    expect(await database.read.lab.findMany()).toEqual([{ ...labOf('kept'), isDemo: false }]);
  });

  it('a reader sees nothing of a write that is not finished', async () => {
    const database = await on.fresh();
    const seen = await database.write(async (tx) => {
      await tx.lab.create({ data: labOf('later') });
      return { inside: await tx.lab.count(), outside: await database.read.lab.count() };
    });
    expect(seen).toEqual({ inside: 1, outside: 0 });
    expect(await database.read.lab.count()).toBe(1);
  });

  it('the reader cannot write', async () => {
    const database = await on.fresh();
    await expect(database.read.lab.create({ data: labOf('no') })).rejects.toThrow(/read-?only/i);
    expect(await database.read.lab.count()).toBe(0);
  });

  it('a write inside a write is refused instead of waiting for itself', async () => {
    const database = await on.fresh();
    const nested = database.write(() => database.write((tx) => tx.lab.create({ data: labOf('inner') })));
    await expect(nested).rejects.toThrow('a write inside a write');
    await database.write((tx) => tx.lab.create({ data: labOf('after') }));
    expect(await database.read.lab.count()).toBe(1);
  });

  it('a process with much to write still answers others in between', async () => {
    const database = await on.fresh();
    let answers = 0;
    const asking = setInterval(() => (answers += 1), 0);
    const writes = Array.from({ length: 50 }, (_, index) =>
      database.write((tx) => tx.counter.create({ data: { labId: 'lab', name: `n${index}`, value: index } })),
    );
    await Promise.all(writes);
    clearInterval(asking);
    expect(answers).toBeGreaterThan(10);
  });

  it('a row that points nowhere is refused', async () => {
    const database = await on.fresh();
    const orphan = { id: 'person', labId: 'nowhere', role: 'Analyst', shortName: 'AN' };
    await expect(database.write((tx) => tx.person.create({ data: orphan }))).rejects.toMatchObject({ code: 'P2003' });
  });

  it('statements are counted one by one, begin and commit apart', async () => {
    const database = await on.fresh();
    const { texts } = await database.statements.during(() =>
      database.write((tx) => tx.lab.createMany({ data: [labOf('a'), labOf('b')] })),
    );
    expect(texts).toHaveLength(1);
    const before = database.statements.total();
    await database.read.lab.findMany();
    await database.select('select "id" from "Lab"');
    expect(database.statements.total() - before).toBe(2);
  });
});
