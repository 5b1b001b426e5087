// A drum whose closure leaks twice as much as its class, told to the lab by its balance; truths from another solver.
import { beforeAll, expect, it } from 'vitest';
import type { Database } from '../../api/database/database.ts';
import { rebuildExposures } from '../../api/exposure/service.ts';
import { estimatesStored } from '../exposure/book.ts';
import { describeEngines } from '../support/engines.ts';
import type { Recorded, Seen } from '../support/world.ts';
import { learningLab, since } from './lab.ts';

type Lab = Awaited<ReturnType<typeof learningLab>>;

describeEngines('a drum whose closure leaks twice as much as assumed', (on) => {
  let database: Database;
  let lab: Lab;
  let drum: Seen;
  let beside: Seen;
  let assumed: { mean: number; besideWidth: number };
  const leak = 2;
  const width = ({ low, high }: { low: number; high: number }): number => high / low;

  const weigh = (days: number, waterFraction: number): Promise<Recorded> =>
    lab.tell('recordWeighing', {
      label: drum.label,
      at: lab.on(days),
      method: 'KARL_FISCHER',
      of: 'WHOLE',
      waterFraction,
      basis: 'DRY',
    });
  const everything = async () => {
    const { exposures } = await estimatesStored(database, lab.app.lab.id);
    const factors = await database.read.learnedFactor.findMany({
      where: { labId: lab.app.lab.id },
      orderBy: [{ version: 'desc' }, { factor: 'asc' }],
    });
    const newest = factors.filter(({ version }) => version === factors[0]?.version);
    return { exposures, factors: newest.map(({ factor, lnValue, lnSd }) => ({ factor, lnValue, lnSd })) };
  };

  beforeAll(async () => {
    database = await on.fresh();
    lab = await learningLab(database);
    drum = await lab.shut();
    beside = await lab.shut();
    for (const days of [15, 30, 45]) await weigh(days, lab.truth(days, leak));
    assumed = {
      mean: (await lab.water(drum.label)).meanWaterFraction,
      besideWidth: width(await lab.water(beside.label)),
    };
    await lab.learn();
  });

  it('is estimated right the fourth time, and surer of it', async () => {
    const truth = lab.truth(since, leak);
    const { meanWaterFraction, low, high } = await lab.water(drum.label);
    expect(truth).toBeGreaterThan(low);
    expect(truth).toBeLessThan(high);
    expect(Math.abs(meanWaterFraction - truth)).toBeLessThan(0.2 * Math.abs(assumed.mean - truth));
    expect(Math.abs(meanWaterFraction / truth - 1)).toBeLessThan(0.01);
  });

  it('is said in words, with what it rests on', async () => {
    const own = (await lab.learned()).find(({ name }) => name.startsWith('container:'));
    expect(own?.sentence).toMatch(
      new RegExp(
        `^${drum.label} lets in about 1\\.\\d of what its kind of closure does \\([^)]* to [^)]*\\), from 3 weighings\\.$`,
      ),
    );
    const { learned } = await lab.ask<{
      learned: {
        kind: string;
        priorValue: number;
        priorSd: number;
        sd: number;
        low: number;
        value: number;
        high: number;
        weighings: { counts: string; sigmas: number }[];
      }[];
    }>('{ learned { kind priorValue priorSd sd low value high weighings { counts sigmas } } }');
    const closure = learned.find(({ kind }) => kind === 'CLOSURE');
    expect(closure).toMatchObject({ priorValue: 1, priorSd: 0.25 });
    expect(closure?.sd).toBeLessThan(0.25);
    expect(closure?.weighings.map(({ counts }) => counts)).toEqual(['USED', 'USED', 'USED']);
    for (const { sigmas } of closure?.weighings ?? []) expect(Math.abs(sigmas)).toBeLessThan(4);
  });

  it('teaches about the drum beside it, which nobody weighed', async () => {
    const now = await lab.water(beside.label);
    expect(width(now)).toBeLessThan(0.97 * assumed.besideWidth);
    expect(now.meanWaterFraction).toBeGreaterThan(lab.truth(since, 1));
  });

  it('is reckoned anew from nothing to the same digits', async () => {
    const before = await everything();
    expect(await lab.learn()).toBe(false);
    await database.write(async (tx) => {
      await tx.learnedFactor.deleteMany({ where: { labId: lab.app.lab.id } });
      await tx.learnedWeighing.deleteMany({ where: { labId: lab.app.lab.id } });
    });
    expect(await lab.learn()).toBe(true);
    await rebuildExposures(database, lab.app.lab, lab.now().getTime());
    expect(await everything()).toEqual(before);
  });

  it('a gross error is shown and left out until somebody confirms it, and what was said can be taken back', async () => {
    const before = await everything();
    const { event } = await weigh(50, 0.03 + lab.truth(50, leak));
    await lab.learn();
    const [wild] = await lab.weighings(drum.label);
    expect(wild).toMatchObject({ counts: 'LEFT_OUT', event: { id: event.id } });
    expect(wild?.sigmas).toBeGreaterThan(4);
    expect((await everything()).factors).toEqual(before.factors);
    const without = await lab.water(drum.label);

    const say = (isRight: boolean | null) =>
      lab.tell<{ before: boolean | null }>('confirmWeighing', { event: event.id, isRight }, 'before');
    await say(true);
    await lab.learn();
    expect((await lab.weighings(drum.label))[0]).toMatchObject({ counts: 'CONFIRMED', isRight: true });
    expect((await lab.water(drum.label)).meanWaterFraction).toBeGreaterThan(1.2 * without.meanWaterFraction);

    expect((await say(false)).before).toBe(true);
    await lab.learn();
    expect((await lab.weighings(drum.label))[0]).toMatchObject({ counts: 'REFUSED', isRight: false });
    expect(await lab.water(drum.label)).toEqual(without);

    await say(null);
    await lab.learn();
    expect((await lab.weighings(drum.label))[0]).toMatchObject({ counts: 'LEFT_OUT', isRight: null });
    expect(await lab.water(drum.label)).toEqual(without);
    await lab.tell('correctEvent', { event: event.id, void: true });
    await lab.learn();
    expect(await everything()).toEqual(before);
  });

  it('a weighing that is taken back takes back what was learned from it', async () => {
    const before = await everything();
    const { event } = await weigh(55, lab.truth(55, leak));
    await lab.learn();
    expect((await lab.learned()).find(({ name }) => name.startsWith('container:'))?.weighingCount).toBe(4);
    expect((await everything()).factors).not.toEqual(before.factors);
    await lab.tell('correctEvent', { event: event.id, void: true });
    await lab.learn();
    expect(await everything()).toEqual(before);
  });

  it('many weighings come in at once, all or none, and everything that is wrong is said by its line', async () => {
    const line = (waterFraction: number, more: object = {}) => ({
      label: drum.label,
      at: lab.on(52),
      method: 'KARL_FISCHER',
      of: 'WHOLE',
      waterFraction,
      ...more,
    });
    const before = (await lab.weighings(drum.label)).length;
    const wrong = [line(0.03), line(1.5), { label: drum.label, grossGrams: 900 }, line(0.03, { label: 'nothing' })];
    const { answer } = await lab.ask<{ answer: { path: string; problems: { line: number; column: string }[] } }>(
      'mutation ($input: RecordWeighingsInput!) { answer: recordWeighings(input: $input) { ... on Refusal { path problems { line column } } } }',
      { input: { weighings: wrong } },
    );
    expect(answer.path).toBe('input.weighings.1.waterFraction');
    expect(answer.problems.map(({ line: at, column }) => [at, column])).toEqual([
      [2, 'waterFraction'],
      [3, 'grossGrams'],
      [4, 'label'],
    ]);
    expect(await lab.weighings(drum.label)).toHaveLength(before);
    const recorded = await lab.tell<{ weighings: { counts: string }[] }>(
      'recordWeighings',
      { weighings: [line(0.02), { label: drum.label, grossGrams: 1230 }] },
      'weighings { counts }',
    );
    expect(recorded.weighings.map(({ counts }) => counts)).toEqual(['WAITING', 'WAITING']);
    expect(await lab.weighings(drum.label)).toHaveLength(before + 2);
  });
});
