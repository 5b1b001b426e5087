// Two dyes a day on a chart, and what their spread goes with.
import { beforeEach, expect, it } from 'vitest';
import { newWorld, type World } from '../support/world.ts';
import { describeEngines } from '../support/engines.ts';
import { normal } from '../science/support/normal.ts';
import type { Database } from '../../api/database/database.ts';

const sorbent = 'Silica 40–63 µm';
const day = 24 * 60;

interface Charted {
  sentence: string;
  tooFewForLimits: boolean;
  fewestForLimits: number;
  restsOn: number;
  values: { low: number; centre: number; high: number } | null;
  ranges: { centre: number; high: number } | null;
  lots: { lot: { lotNumber: string }; from: number; to: number }[];
  points: {
    value: number;
    isValueOutside: boolean;
    isAverageOutside: boolean;
    run: { id: string; lot: { lotNumber: string } };
  }[];
}
const chartFields = `sentence tooFewForLimits fewestForLimits restsOn values { low centre high } ranges { low centre high }
  lots { lot { lotNumber } from to } points { value average range isValueOutside isAverageOutside run { id lot { lotNumber } } }`;

describeEngines('the daily check', (on) => {
  let database: Database;
  let world: World;
  let label: string;

  beforeEach(async () => {
    database ??= await on.fresh();
    world = await newWorld(database);
    await world.furnished();
    ({ label } = await world.drum(2000, {}, { lotNumber: 'F-117', receivedAt: world.ago(90 * day) }));
  });

  const chart = async (compound: string, more = ''): Promise<Charted> =>
    (
      await world.ask<{ chart: Charted }>(
        `query ($sorbent: String!, $compound: String!) { chart(sorbent: $sorbent, compound: $compound${more}) { ${chartFields} } }`,
        { sorbent, compound },
      )
    ).chart;

  it('is a label and two numbers; sorbent, lot, water and air follow from the container', async () => {
    const { runs } = await world.tell<{ runs: Record<string, unknown>[] }>(
      'recordDailyCheck',
      {
        label,
        spots: [
          { compound: 'Sudan red', value: 0.41 },
          { compound: 'Sudan yellow', value: 0.6 },
        ],
      },
      'runs { sorbent { name } lot { lotNumber } check { id } isAirFilled humidityPercent spots { compound value } }',
    );
    expect(runs).toEqual([
      {
        sorbent: { name: sorbent },
        lot: { lotNumber: 'F-117' },
        check: null,
        isAirFilled: true,
        humidityPercent: 45,
        spots: [
          { compound: 'Sudan red', value: 0.41 },
          { compound: 'Sudan yellow', value: 0.6 },
        ],
      },
    ]);
    const { dailyChecks } = await world.ask<{ dailyChecks: unknown[] }>('{ dailyChecks { id } }');
    expect(dailyChecks).toHaveLength(1);
    expect(
      await world.refused('recordDailyCheck', { label, spots: [{ compound: 'Sudan red', value: 41 }] }),
    ).toMatchObject({
      path: 'input.spots.0.value',
    });
    expect((await world.refused('recordDailyCheck', { spots: [{ compound: 'Sudan red', value: 0.4 }] })).path).toBe(
      'input.label',
    );
  });

  it('knows how its plate was prepared at that time, whatever was done to the box since', async () => {
    const [box] = await world.came([{ kind: 'PLATE_BOX', plates: 50 }], {
      lotNumber: 'P-1',
      receivedAt: world.ago(40 * day),
    });
    await world.tell('activatePlates', { label: box?.label, temperatureC: 110, minutes: 30, at: world.ago(20 * day) });
    await world.tell('activatePlates', { label: box?.label, temperatureC: 110, minutes: 30, at: world.ago(2 * day) });
    const of = async (days: number) => {
      const { runs } = await world.tell<{ runs: { regime: string | null; hoursPrepared: number | null }[] }>(
        'recordDailyCheck',
        { label: box?.label, at: world.ago(days * day), spots: [{ compound: 'Sudan red', value: 0.41 }] },
        'runs { regime hoursPrepared }',
      );
      return runs[0];
    };
    expect(await of(30)).toEqual({ regime: null, hoursPrepared: null });
    const then = await of(10);
    expect(then?.regime).toBe('DRY_UNTIL_SPOTTED');
    expect(then?.hoursPrepared).toBeCloseTo(240, 0);
    expect((await of(1))?.hoursPrepared).toBeCloseTo(24, 0);
  });

  it('makes the handbook’s chart of the handbook’s values (NIST/SEMATECH 6.3.2.2), as Rf', async () => {
    // Flow rates of the example, a hundredth of them: limits scale alike.
    const flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
    const rows = flow.map((value, i) => `2026-02-${String(10 + i)},F-117,${(value / 100).toFixed(3)}`);
    await world.tell('recordDailyChecks', { sorbent, table: ['date,lot,Sudan red', ...rows].join('\n') }, '__typename');
    const { values, ranges, restsOn, sentence } = await chart('sudan RED');
    expect(restsOn).toBe(10);
    expect(values?.centre).toBeCloseTo(0.5081, 10);
    expect(values?.high).toBeCloseTo(0.558041, 5);
    expect(values?.low).toBeCloseTo(0.458159, 5);
    expect(ranges?.centre).toBeCloseTo(0.018778, 5);
    expect(sentence).toBe(
      '10 values, none outside 0.46 to 0.56 Rf about 0.51. Limits rest on 10 values yet and will still move.',
    );
  });

  it('says from how many values on its limits hold still', async () => {
    const days = (from: number, to: number): string =>
      Array.from({ length: to - from }, (_, i) => `2026-02-${10 + from + i},F-117,0.4${(from + i) % 3}`).join('\n');
    const record = (from: number, to: number) =>
      world.tell('recordDailyChecks', { sorbent, table: `date,lot,Sudan red\n${days(from, to)}` }, '__typename');
    expect(await chart('Sudan red')).toMatchObject({ tooFewForLimits: true, points: [] });
    await record(0, 11);
    const { fewestForLimits, ...early } = await chart('Sudan red');
    expect(early.tooFewForLimits).toBe(true);
    expect(early.sentence).toContain('will still move');
    await record(11, fewestForLimits);
    const late = await chart('Sudan red');
    expect(late.tooFewForLimits).toBe(false);
    expect(late.sentence).not.toContain('will still move');
  });

  it('is of one compound however its name is written', async () => {
    const spots = (compound: string, value: number) => ({ label, spots: [{ compound, value }] });
    await world.tell('recordDailyCheck', spots('Sudan red', 0.4), '__typename');
    await world.tell('recordDailyCheck', spots('SUDAN  Red ', 0.42), '__typename');
    const both = [
      { compound: 'sudan red', value: 0.44 },
      { compound: 'Sudan red', value: 0.46 },
    ];
    await world.tell('recordDailyCheck', { label, spots: both }, '__typename');
    const values = (await chart('sudan red')).points.map(({ value }) => value);
    expect(values.map((value) => Number(value.toFixed(6))).sort()).toEqual([0.4, 0.42, 0.45]);
    const { referenceCompounds } = await world.ask<{ referenceCompounds: { runs: number }[] }>(
      '{ referenceCompounds { compound runs } }',
    );
    expect(referenceCompounds.map(({ runs }) => runs)).toEqual([3]);
  });

  it('keeps plates of one time and lot in the order in which they were written', async () => {
    await world.drum(2000, {}, { lotNumber: 'F-116', receivedAt: world.ago(90 * day) });
    const values = Array.from({ length: 24 }, (_, i) => 0.3 + i / 100);
    const rows = values.map((value, i) => `2026-02-10\t${i % 3 === 0 ? 'F-116' : 'F-117'}\t${value.toFixed(2)}`);
    await world.tell(
      'recordDailyChecks',
      { sorbent, table: ['date\tlot\tSudan red', ...rows].join('\n') },
      '__typename',
    );
    const { points, lots } = await chart('Sudan red');
    expect(lots).toHaveLength(2);
    for (const lot of ['F-116', 'F-117']) {
      const shown = points.filter(({ run }) => run.lot.lotNumber === lot).map(({ value }) => value);
      expect(shown).toEqual([...shown].sort((one, other) => one - other));
    }
  });

  it('finds the last values of a compound behind hundreds of runs of others', async () => {
    const table = (compound: string, rows: number, lot = 'F-117'): string =>
      [
        `date,lot,${compound}`,
        ...Array.from(
          { length: rows },
          (_, i) => `2026-02-0${compound === 'azobenzene' ? 1 : 2},${lot},0.${40 + (i % 9)}`,
        ),
      ].join('\n');
    await world.tell('recordDailyChecks', { sorbent, table: table('azobenzene', 5) }, '__typename');
    await world.tell('recordDailyChecks', { sorbent, table: table('Sudan red', 200) }, '__typename');
    await world.tell('recordDailyChecks', { sorbent, table: table('Sudan red', 110) }, '__typename');
    expect((await chart('azobenzene')).points).toHaveLength(5);
    expect((await chart('azobenzene', ', last: 2')).points).toHaveLength(2);
    expect((await chart('Sudan red', ', last: 300')).points).toHaveLength(300);
  });

  it('marks where one lot ends and the next begins, and what left the limits of the first', async () => {
    await world.drum(2000, {}, { lotNumber: 'F-118', receivedAt: world.ago(30 * day) });
    const value = (i: number): number => 0.41 + ([0, 0.01, -0.01, 0.005, -0.005][i % 5] ?? 0) + (i < 20 ? 0 : 0.08);
    const rows = Array.from({ length: 24 }, (_, i) => {
      const on = new Date(world.ago((25 - i) * day)).toISOString().slice(0, 10);
      return `${on}\t${i < 20 ? 'F-117' : 'F-118'}\t${value(i).toFixed(3)}`;
    });
    await world.tell(
      'recordDailyChecks',
      { sorbent, table: ['date\tlot\tSudan red', ...rows].join('\n') },
      '__typename',
    );
    const shown = await chart('Sudan red');
    expect(shown.lots.map(({ lot, from, to }) => [lot.lotNumber, from, to])).toEqual([
      ['F-117', 0, 19],
      ['F-118', 20, 23],
    ]);
    expect(shown.points.map(({ isValueOutside }) => isValueOutside).lastIndexOf(false)).toBe(19);
    expect(shown.sentence).toMatch(/4 outside .* drifts up/);
    const last = shown.points.at(-1)?.run.id;
    await world.tell('takeRunBack', { run: last }, '__typename');
    expect((await chart('Sudan red')).points).toHaveLength(23);
  });

  it('has no chart of one value, and none of a compound nobody ran', async () => {
    await world.tell('recordDailyCheck', { label, spots: [{ compound: 'Sudan red', value: 0.41 }] }, '__typename');
    expect(await chart('Sudan red')).toMatchObject({ values: null, sentence: 'One value; limits need two.' });
    expect(await chart('azobenzene')).toMatchObject({ points: [], sentence: 'Nothing was run of it yet.' });
  });

  it('is asked whether it is the lot, the person or the air: from twenty plates on, and not before', async () => {
    await world.tell('addPerson', { shortName: 'AB', role: 'bench' }, '__typename');
    await world.tell('addPerson', { shortName: 'CD', role: 'bench' }, '__typename');
    const draw = normal(5);
    const row = (i: number): string => {
      const water = 0.02 + (0.05 * ((i * 7) % 10)) / 10;
      const value = 0.5 - 2 * water + 0.005 * draw();
      const on = new Date(world.ago((60 - i) * day)).toISOString().slice(0, 10);
      return [
        on,
        'F-117',
        i % 2 === 0 ? 'AB' : 'CD',
        30 + ((i * 3) % 7),
        (100 * water).toFixed(2),
        value.toFixed(4),
      ].join('\t');
    };
    const record = (from: number, to: number) =>
      world.tell(
        'recordDailyChecks',
        {
          sorbent,
          table: ['date\tlot\tby\thumidity\twater %\tSudan red']
            .concat(Array.from({ length: to - from }, (_, i) => row(from + i)))
            .join('\n'),
        },
        '__typename',
      );
    const asked = async () => {
      const { explained } = await world.ask<{
        explained: {
          sentence: string;
          plates: number;
          leftOut: string[];
          unexplained: number | null;
          each: {
            name: string;
            told: string;
            sentence: string;
            share: { value: number; low: number; high: number | null };
          }[];
        };
      }>(
        `query ($sorbent: String!) { explained(sorbent: $sorbent, compound: "Sudan red") { sentence plates leftOut unexplained
          each { name told sentence share { value low high } } spread { sources { name told share { value } } } } }`,
        { sorbent },
      );
      return explained;
    };
    await record(0, 12);
    const early = await asked();
    expect(early).toMatchObject({ plates: 12, each: [] });
    expect(early.sentence).toBe('12 plates so far: from about 20 on it can be said what the values go with.');
    await record(12, 40);
    const late = await asked();
    const told = Object.fromEntries(late.each.map(({ name, ...one }) => [name, one]));
    expect(told['water']).toMatchObject({ told: 'SEEN' });
    expect(told['water']?.share.value).toBeGreaterThan(0.9);
    expect(told['user']?.told).toBe('LITTLE');
    expect(late.sentence).toMatch(/^It is the water at use\./);
    expect(late.leftOut).toContain('the lot: the same on all plates');
    // Plates without a regime were not prepared: that is known of them, and the same of all.
    expect(late.leftOut).toContain('the activation: the same on all plates');
  });
});
