// Runs from a pasted table: what is read, what is refused and where, and the way back of all of them.
import { beforeEach, expect, it } from 'vitest';
import { newWorld, type World } from '../support/world.ts';
import { describeEngines } from '../support/engines.ts';
import type { Database } from '../../api/database/database.ts';
import { newId } from '../../api/work.ts';

const sorbent = 'Silica 40–63 µm';
const day = 24 * 60;

describeEngines('a table of runs', (on) => {
  let database: Database;
  let world: World;
  let label: string;

  beforeEach(async () => {
    database ??= await on.fresh();
    world = await newWorld(database);
    await world.furnished();
    ({ label } = await world.drum(2000, {}, { lotNumber: 'F-117', receivedAt: world.ago(90 * day) }));
    await world.drum(5000, {}, { lotNumber: 'F-118', receivedAt: world.ago(5 * day) });
  });

  const daily = async (): Promise<unknown[]> =>
    (await world.ask<{ dailyChecks: unknown[] }>('{ dailyChecks { id } }')).dailyChecks;

  it('is refused by its lines, with what is wrong there', async () => {
    const refused = await world.refused('recordLotCheck', {
      ...{ sorbent, oldLotNumber: 'F-117', newLotNumber: 'F-118' },
      table: 'lot\tfront mm\tSudan red mm\nold\t80\t34\nnew\t80\t85\nnew\t80\tfar',
    });
    expect(refused.path).toBe('input.table');
    // What is wrong is the front, which lies below the spot.
    expect(refused.message).toMatch(
      /^invalid input\.table: line 3, front mm: 80 cannot be with Sudan red mm 85, at least as far as the spot/,
    );
    const words = async (head: string, row: string): Promise<string> =>
      (
        await world.refused('recordLotCheck', {
          ...{ sorbent, oldLotNumber: 'F-117', newLotNumber: 'F-118' },
          table: `lot\t${head}\nold\t${row}`,
        })
      ).message.replace('invalid input.table: ', '');
    expect(await words('Sudan red', 'far')).toBe('line 2, Sudan red: far is no number, an Rf from 0 to 1');
    expect(await words('Sudan red mm', '34')).toBe(
      'line 2, front mm: nothing beside Sudan red mm 34, how far the front ran, mm',
    );
    expect(await words('front mm\tSudan red mm', 'up\t34')).toBe(
      'line 2, front mm: up is no number, how far the front ran, mm',
    );
    expect(await words('water %\tSudan red', '450\t0.4')).toBe(
      'line 2, water %: 450 cannot be, 0 to 100 % of the dry mass',
    );
    expect(await words('humidity\tSudan red', '45 %\t1.3')).toMatch(/^line 2, Sudan red: 1\.3 cannot be, 1 or less/);
    expect(await words('lined\tSudan red', 'perhaps\t0.4')).toBe('line 2, lined: perhaps cannot be, yes or no');
    expect(await words('tank\tSudan red', 'A\t')).toBe('line 2: no value of any compound, one value or more');
    expect(await words('by\tSudan red', 'XY\t0.4')).toMatch(/^line 2, by: XY cannot be, there is no person yet/);
    const other = await world.refused('recordLotCheck', {
      ...{ sorbent, oldLotNumber: 'F-117', newLotNumber: 'F-118' },
      table: 'lot\tSudan red\nF-119\t0.4',
    });
    expect(other.message).toBe('invalid input.table: line 2, lot: F-119 cannot be, old (F-117) or new (F-118)');
  });

  it('is of today and earlier days, not of days to come or days that may be two', async () => {
    // 08:00 in Helsinki: noon lies ahead.
    const early = new Date('2026-03-02T06:00:00Z');
    world = await newWorld(database, { now: early });
    await world.furnished();
    await world.drum(2000, {}, { lotNumber: 'F-117', receivedAt: world.ago(90 * day) });
    const rows = (...days: string[]) => ({
      sorbent,
      table: ['date\tlot\tSudan red', ...days.map((one) => `${one}\tF-117\t0.42`)].join('\n'),
    });
    const { runs } = await world.tell<{ runs: { at: string }[] }>(
      'recordDailyChecks',
      rows('2026-03-02', '1.3.2026', '2026-02-28 09:30', '28 Feb 2026', '2026-02-27T09:30:00Z'),
      'runs { at }',
    );
    expect(runs.map(({ at }) => at)).toEqual([
      early.toISOString(),
      '2026-03-01T10:00:00.000Z',
      '2026-02-28T07:30:00.000Z',
      '2026-02-28T10:00:00.000Z',
      '2026-02-27T09:30:00.000Z',
    ]);
    const ahead = await world.refused('recordDailyChecks', rows('2026-03-01', '2026-03-03'));
    expect(ahead.message).toBe('invalid input.table: line 3, date: 2026-03-03 cannot be, a day that is not ahead');
    const two = await world.refused('recordDailyChecks', rows('2026-03-01', '01/03/2026'));
    expect(two.message).toContain('line 3, date: 01/03/2026 may be two days, such as 2026-03-02');
    expect((await world.refused('recordDailyChecks', rows('13 o’clock'))).message).toContain(
      'line 2, date: 13 o’clock cannot be, a day such as 2026-03-02',
    );
  });

  it('is refused for all rows that name what is not there, each by its line', async () => {
    await world.tell('addSorbent', { name: 'Alumina', sorbentClass: 'alumina' }, '__typename');
    const other = await world.drum(500, {}, { sorbent: 'Alumina' });
    const rows = [`${label}\t\t0.4`, `${other.label}\t\t0.4`, `${label}\tF-999\t0.4`, `\t\t0.4`];
    const { answer } = await world.ask<{ answer: { message: string; problems: { line: number; message: string }[] } }>(
      `mutation ($input: RecordDailyChecksInput!) { answer: recordDailyChecks(input: $input) { __typename
        ... on Refusal { message problems { line column value message expected } } } }`,
      { input: { sorbent, table: ['container\tlot\tSudan red', ...rows].join('\n') } },
    );
    expect(answer.problems).toMatchObject([
      { line: 3, column: 'container', value: other.label, expected: `a container of ${sorbent}` },
      { line: 4, column: 'lot', value: 'F-999', message: 'F-999 cannot be' },
      { line: 5, column: 'lot', value: '', message: 'nothing is given' },
    ]);
    expect(answer.message).toBe(
      `invalid input.table: line 3, container: ${other.label} cannot be, a container of ${sorbent}`,
    );
    expect(await daily()).toEqual([]);
  });

  it('is taken back whole, or not at all', async () => {
    const rows = ['2026-02-10\tF-117\t0.42', '2026-02-11\tF-117\t0.41', '2026-02-12\tF-117\t0.43'];
    const { runs } = await world.tell<{ runs: { id: string }[] }>(
      'recordDailyChecks',
      { sorbent, table: ['date\tlot\tSudan red', ...rows].join('\n') },
      'runs { id }',
    );
    const ids = runs.map(({ id }) => id);
    const gone = Buffer.from(`RetentionRun:${newId()}`).toString('base64');
    expect(await world.refused('takeRunsBack', { runs: [...ids.slice(0, 2), gone] })).toMatchObject({
      path: 'input.runs.2',
    });
    expect(await daily()).toHaveLength(3);
    const back = await world.tell<{ runs: { takenBackAt: string | null }[] }>(
      'takeRunsBack',
      { runs: ids },
      'runs { takenBackAt }',
    );
    expect(back.runs.map(({ takenBackAt }) => takenBackAt !== null)).toEqual([true, true, true]);
    expect(await daily()).toHaveLength(0);
    await world.tell('restoreRuns', { runs: ids }, '__typename');
    expect(await daily()).toHaveLength(3);
    expect((await world.refused('takeRunsBack', { runs: [] })).path).toBe('input.runs');
  });
});
