// A new lot against the last one: recorded by form, table or script, judged, decided, and offered or not.
import { beforeEach, expect, it } from 'vitest';
import { newWorld, type World } from '../support/world.ts';
import { describeEngines } from '../support/engines.ts';
import type { Database } from '../../api/database/database.ts';
import { checkFields, table, type Kept } from './plates.ts';

const sorbent = 'Silica 40–63 µm';
const day = 24 * 60;

describeEngines('a lot check', (on) => {
  let database: Database;
  let world: World;

  beforeEach(async () => {
    database ??= await on.fresh();
    world = await newWorld(database);
    await world.furnished();
    await world.drum(2000, {}, { lotNumber: 'F-117', receivedAt: world.ago(90 * day) });
    await world.drum(5000, {}, { lotNumber: 'F-118', receivedAt: world.ago(5 * day) });
  });

  const begin = (input: Record<string, unknown>) =>
    world.tell<Kept>(
      'recordLotCheck',
      { sorbent, oldLotNumber: 'F-117', newLotNumber: 'F-118', ...input },
      checkFields,
    );
  const standing = async (): Promise<Record<string, [string, string]>> => {
    const { sorbents } = await world.ask<{
      sorbents: { nodes: { lots: { lotNumber: string; standing: string; standingWords: string }[] }[] };
    }>('{ sorbents { nodes { lots { lotNumber standing standingWords } } } }');
    const lots = sorbents.nodes.flatMap((one) => one.lots);
    return Object.fromEntries(lots.map((lot) => [lot.lotNumber, [lot.standing, lot.standingWords]]));
  };
  const offered = async (dryGrams = 500, more: Record<string, unknown> = {}) => {
    const { needPreview } = await world.ask<{
      needPreview: {
        can: boolean;
        obstacle: { sentence: string } | null;
        from: { container: { lot: { lotNumber: string } } }[];
      };
    }>(
      `query ($input: NeedPreviewInput!) { needPreview(input: $input) { ... on Available { can obstacle { sentence }
        from { container { lot { lotNumber } } } } } }`,
      { input: { kind: 'SORBENT', sorbent, dryGrams, at: world.ago(-3 * day), forWhom: 'column 4', ...more } },
    );
    return {
      lots: needPreview.from.map(({ container }) => container.lot.lotNumber),
      why: needPreview.obstacle?.sentence ?? null,
    };
  };

  it('accepts a lot that runs like the last, with every figure down to its plates', async () => {
    const { check } = await begin({ table: table(0.002) });
    const { verdict } = check;
    expect(verdict).toMatchObject({ outcome: 'ACCEPTED', margin: 0.03, isMarginDefault: true, more: null });
    expect(verdict.sentence).toBe('F-118 behaves like F-117: every difference lies surely within ±0.03 Rf.');
    expect(verdict.quantities.map(({ name }) => name)).toEqual([
      'Sudan red',
      'Sudan yellow',
      'Sudan red against Sudan yellow',
    ]);
    const [red] = verdict.quantities;
    expect(red?.difference).toBeCloseTo(0.002, 10);
    expect(red).toMatchObject({ oldPlates: 9, newPlates: 9 });
    const mean = (isNew: boolean): number => {
      const values = red?.values.filter((one) => one.isNew === isNew).map(({ value }) => value) ?? [];
      return values.reduce((sum, value) => sum + value, 0) / values.length;
    };
    expect(mean(true) - mean(false)).toBeCloseTo(red?.difference ?? NaN, 10);
    expect(new Set(red?.values.map(({ run }) => run.id)).size).toBe(18);
  });

  it('rejects one that runs far off, and says what lies apart', async () => {
    const { verdict } = (await begin({ table: table(0.08) })).check;
    expect(verdict.outcome).toBe('REJECTED');
    expect(verdict.sentence).toBe(
      'F-118 does not behave like F-117: Sudan red and Sudan yellow lie surely more than 0.03 Rf apart.',
    );
    // Both moved alike: how far they stand apart did not.
    expect(verdict.quantities.map(({ outcome }) => outcome)).toEqual(['REJECTED', 'REJECTED', 'ACCEPTED']);
  });

  it('says too few, never a verdict, of two plates a lot, and how many more of each', async () => {
    const few = table(0.002).split('\n').slice(0, 5).join('\n');
    const { check } = await begin({ table: few });
    expect(check.verdict.outcome).toBe('TOO_FEW');
    expect(check.verdict.more).toBeGreaterThan(0);
    expect(check.verdict.sentence).toMatch(/^Too few for a verdict\. About \d+ more plates? of each lot decide/);
    const rest = [table(0.002).split('\n')[0], ...table(0.002).split('\n').slice(5)].join('\n');
    const more = await world.tell<Kept>('recordLotCheck', { check: check.id, table: rest }, checkFields);
    expect(more.check.id).toBe(check.id);
    expect(more.check.verdict.outcome).toBe('ACCEPTED');
  });

  it('has nothing to compare where the lots never shared a tank', async () => {
    const rows = [
      'lot;tank;Sudan red',
      'old;A;0,41',
      'old;A;0,42',
      'old;A;0,40',
      'new;B;0,41',
      'new;B;0,42',
      'new;B;0,40',
    ];
    const { verdict } = (await begin({ table: rows.join('\r\n') })).check;
    expect(verdict).toMatchObject({ outcome: 'TOO_FEW', more: null });
    expect(verdict.sentence).toContain('Run plates of both lots in one tank on one day');
  });

  it('takes column volumes above 1 on columns, by a margin of their own', async () => {
    const run = (lotNumber: string, value: number) => ({ lotNumber, spots: [{ compound: 'caffeine', value }] });
    const { check } = await begin({
      retention: 'COLUMN_VOLUMES',
      runs: [2.3, 2.32, 2.28, 2.31].flatMap((value) => [run('old', value), run('new', value + 0.02)]),
    });
    expect(check.verdict).toMatchObject({ outcome: 'ACCEPTED', margin: 0.3 });
    await world.tell('setCheckSettings', { marginColumn: 0.01 }, '__typename');
    const { lotChecks } = await world.ask<{ lotChecks: Kept['check'][] }>(
      '{ lotChecks { id verdict { outcome margin isMarginDefault } } }',
    );
    expect(lotChecks[0]?.verdict).toMatchObject({ margin: 0.01, isMarginDefault: false });
    expect(lotChecks[0]?.verdict.outcome).not.toBe('ACCEPTED');
  });

  it('refuses what no plate can show, with where and why, and writes nothing', async () => {
    const wrong = (spot: Record<string, unknown>) =>
      world.refused('recordLotCheck', {
        ...{ sorbent, oldLotNumber: 'F-117', newLotNumber: 'F-118' },
        runs: [
          { lotNumber: 'old', spots: [{ compound: 'Sudan red', value: 0.4 }] },
          { lotNumber: 'new', spots: [spot] },
        ],
      });
    expect(await wrong({ compound: 'Sudan red', value: 1.2 })).toMatchObject({
      path: 'input.runs.1.spots.0.value',
      message: expect.stringMatching(/^invalid input\.runs\.1\.spots\.0\.value: 1\.2, 1 or less/) as string,
    });
    expect(await wrong({ compound: 'Sudan red', value: -0.1 })).toMatchObject({ path: 'input.runs.1.spots.0.value' });
    expect(await wrong({ compound: 'Sudan red', spotMm: 48, frontMm: 45 })).toMatchObject({
      path: 'input.runs.1.spots.0.frontMm',
      message: expect.stringContaining('the front cannot lie below it') as string,
    });
    expect(await wrong({ compound: 'Sudan red', spotMm: 48 })).toMatchObject({
      message: 'missing input.runs.1.spots.0.frontMm, how far the front ran, mm',
    });
    const { lotChecks } = await world.ask<{ lotChecks: unknown[] }>('{ lotChecks { id } }');
    expect(lotChecks).toEqual([]);
  });

  it('compares one compound, however its name is written', async () => {
    const { check } = await begin({ table: table(0.002) });
    const more = await world.tell<Kept>(
      'recordLotCheck',
      { check: check.id, table: 'lot\ttank\tsudan RED\nold\tT1\t0.42\nnew\tT1\t0.42' },
      checkFields,
    );
    const [red, ...others] = more.check.verdict.quantities;
    expect(red).toMatchObject({ name: 'Sudan red', oldPlates: 10, newPlates: 10 });
    expect(others.map(({ name }) => name)).toEqual(['Sudan yellow', 'Sudan red against Sudan yellow']);
  });

  it('takes a margin that an Rf can have', async () => {
    expect(
      await world.refused('recordLotCheck', { sorbent, oldLotNumber: 'F-117', newLotNumber: 'F-118', margin: 0.6 }),
    ).toMatchObject({
      path: 'input.margin',
      expected: 'at most 0.5: it is a difference of Rf',
    });
    const { check } = await begin({ retention: 'COLUMN_VOLUMES', margin: 0.6 });
    expect(check.verdict.margin).toBe(0.6);
    const { verdict } = (await begin({ margin: 0.05 })).check;
    expect(verdict.margin).toBe(0.05);
  });

  it('is gone on with: its note is written anew, and other lots than its own are refused', async () => {
    const { check } = await begin({ note: 'first' });
    const go = (input: Record<string, unknown>) => ({ check: check.id, ...input });
    const noted = await world.tell<{ check: { note: string } }>(
      'recordLotCheck',
      go({ note: 'the plates were old', sorbent, newLotNumber: 'f-118' }),
      'check { note }',
    );
    expect(noted.check.note).toBe('the plates were old');
    const kept = await world.tell<{ check: { note: string } }>(
      'recordLotCheck',
      go({ table: table(0).split('\n').slice(0, 3).join('\n') }),
      'check { note }',
    );
    expect(kept.check.note).toBe('the plates were old');
    expect(await world.refused('recordLotCheck', go({ newLotNumber: 'F-117' }))).toMatchObject({
      path: 'input.newLotNumber',
      expected: 'F-118, as the check was begun',
    });
    expect((await world.refused('recordLotCheck', go({ sorbent: 'Alumina' }))).path).toBe('input.sorbent');
  });

  it('says where the spread of its plates comes from, compound by compound', async () => {
    const { check } = await begin({ table: table(0.2) });
    const ask = async () =>
      (
        await world.ask<{
          node: {
            spread: { compound: string; plates: number; sources: { name: string; told: string; share: null }[] }[];
          };
        }>(
          `query ($id: ID!) { node(id: $id) { ... on LotCheck { spread { compound plates sources { name told share { value } } } } } }`,
          { id: check.id },
        )
      ).node.spread;
    const spread = await ask();
    expect(spread.map(({ compound, plates }) => [compound, plates])).toEqual([
      ['Sudan red', 18],
      ['Sudan yellow', 18],
    ]);
    // Of one spot a plate, plates and what lies within them are one; below twenty nothing is told of shares.
    const told = Object.fromEntries(spread[0]?.sources.map(({ name, told: what }) => [name, what]) ?? []);
    expect(told).toMatchObject({
      'between people': 'ONE_LEVEL',
      'between lots': 'TOO_FEW',
      'between plates': 'SAME_AS_ANOTHER',
    });
    expect(await ask()).toEqual(spread);
  });

  it('fills in the water, the room and its air when a container is named', async () => {
    const drum = await world.drum(800, {}, { lotNumber: 'F-119', receivedAt: world.ago(3 * day) });
    await world.tell('openContainer', { label: drum.label, at: world.ago(2 * day) });
    const early = world.ago(2 * day - 60);
    const kept = await world.tell<Kept>(
      'recordLotCheck',
      {
        ...{ sorbent, oldLotNumber: 'F-118', newLotNumber: 'F-119' },
        runs: [early, world.now()].map((at) => ({
          at,
          label: drum.label,
          spots: [{ compound: 'Sudan red', value: 0.4 }],
        })),
      },
      checkFields,
    );
    const [first, last] = kept.runs;
    expect(first).toMatchObject({
      isWaterFilled: true,
      isAirFilled: true,
      humidityPercent: 45,
      lot: { lotNumber: 'F-119' },
    });
    // Open in a room at 45 %: it takes water up meanwhile.
    expect(last?.waterFraction).toBeGreaterThan((first?.waterFraction ?? NaN) + 0.0005);
  });

  it('offers a rejected lot to nobody until that is taken back, and an unchecked one with a mark', async () => {
    expect(await standing()).toEqual({
      'F-117': ['FIRST', 'the first lot, with none before it to compare'],
      'F-118': ['UNCHECKED', 'not checked against the last lot'],
    });
    expect((await offered(3000)).lots).toEqual(['F-118']);
    const { check } = await begin({ table: table(0.08) });
    expect((await standing())['F-118']).toEqual(['IN_CHECK', 'its check is not decided yet']);
    const why = 'runs 0.08 higher than F-117';
    const { decision } = await world.tell<{ decision: { id: string } }>(
      'decideLot',
      { sorbent, lotNumber: 'F-118', outcome: 'REJECTED', why, check: check.id },
      'decision { id } lot { standing }',
    );
    expect((await standing())['F-118']).toEqual(['REJECTED', `rejected: ${why}`]);
    expect((await offered(500)).lots).toEqual(['F-117']);
    const none = await offered(3000);
    expect(none.lots).toEqual([]);
    const named = await offered(300, { lotNumber: 'F-118' });
    expect(named).toEqual({ lots: [], why: expect.stringContaining('was rejected in its check') as string });
    await world.tell('takeLotDecisionBack', { decision: decision.id }, '__typename');
    expect((await offered(3000)).lots).toEqual(['F-118']);
    await world.tell(
      'decideLot',
      { sorbent, lotNumber: 'F-118', outcome: 'ACCEPTED', why: 'nine plates' },
      '__typename',
    );
    expect((await standing())['F-118']).toEqual(['ACCEPTED', 'checked and accepted: nine plates']);
  });

  it('lets go of what a need was given of a lot that is rejected later', async () => {
    await world.tell(
      'addNeed',
      { kind: 'SORBENT', sorbent, dryGrams: 900, lotNumber: null, at: world.ago(-2 * day), forWhom: 'column 4' },
      '__typename',
    );
    const given = async () => {
      const { needs } = await world.ask<{ needs: { lot: { lotNumber: string; standing: string } | null }[] }>(
        '{ needs { lot { lotNumber standing } } }',
      );
      return needs[0]?.lot?.lotNumber;
    };
    expect(await given()).toBe('F-117');
    await world.tell(
      'decideLot',
      { sorbent, lotNumber: 'F-117', outcome: 'REJECTED', why: 'smells of toluene' },
      '__typename',
    );
    expect(await given()).toBe('F-118');
  });

  it('is taken back whole or plate by plate, and counts again', async () => {
    const { check, runs } = await begin({ table: table(0.002) });
    const count = async () => {
      const { lotChecks } = await world.ask<{ lotChecks: { runs: unknown[] }[] }>('{ lotChecks { runs { id } } }');
      return lotChecks.map((one) => one.runs.length);
    };
    await world.tell('takeRunBack', { run: runs[0]?.id }, '__typename');
    expect(await count()).toEqual([17]);
    await world.tell('restoreRun', { run: runs[0]?.id }, '__typename');
    await world.tell('takeLotCheckBack', { check: check.id }, '__typename');
    expect(await count()).toEqual([]);
    expect((await world.refused('recordLotCheck', { check: check.id, table: table(0) })).path).toBe('input.check');
    const decided = { sorbent, lotNumber: 'F-118', outcome: 'ACCEPTED', why: 'by this check', check: check.id };
    expect((await world.refused('decideLot', decided)).path).toBe('input.check');
    await world.tell('restoreLotCheck', { check: check.id }, '__typename');
    expect(await count()).toEqual([18]);
  });
});
