// Two processes with one database, as when a file is imported by command while the server runs.
import { spawn } from 'node:child_process';
import { expect, it } from 'vitest';
import type { Transaction } from '../../api/database/client.ts';
import { openDatabase } from '../../api/database/database.ts';
import { describeEngines } from '../support/engines.ts';

const turns = 40;
const key = { labId_name: { labId: 'lab', name: 'grams' } };
const addOne = async (tx: Transaction) => {
  const { value } = await tx.counter.findUniqueOrThrow({ where: key });
  await tx.counter.update({ where: key, data: { value: value + 1 } });
};

const other = `
  import { openDatabase } from ${JSON.stringify(new URL('../../api/database/database.ts', import.meta.url).href)};
  const database = await openDatabase(JSON.parse(process.argv[1]));
  const key = ${JSON.stringify(key)};
  console.log('ready');
  for (let turn = 0; turn < ${turns}; turn += 1) await database.write(${addOne.toString()});
  await database.close();
`;

describeEngines('two processes', (on) => {
  it('both write at once, and nothing that either wrote is lost', async () => {
    const place = await on.place();
    const database = await openDatabase(place);
    await database.write((tx) => tx.counter.create({ data: { labId: 'lab', name: 'grams', value: 0 } }));
    const child = spawn(
      process.execPath,
      ['--import', 'tsx', '--input-type=module', '-e', other, JSON.stringify(place)],
      {
        stdio: ['ignore', 'pipe', 'inherit'],
      },
    );
    const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
    await new Promise((ready) => child.stdout.once('data', ready));
    for (let turn = 0; turn < turns; turn += 1) await database.write(addOne);
    expect(await ended).toBe(0);
    expect(await database.read.counter.findFirst()).toMatchObject({ value: 2 * turns });
    await database.close();
  });
});
