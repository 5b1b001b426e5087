// Dry grams neither appear nor vanish, whatever is told, put right or told late.
import fc from 'fast-check';
import { beforeAll, expect, it } from 'vitest';
import { amount } from '../support/amount.ts';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type Recorded, type World } from '../support/world.ts';
import { across, shelfAfter, type Act } from './ledger.ts';

/** One thing that somebody does: which act, on which of the containers that are there, how much, when. */
const doing = fc.record({
  what: fc.constantFrom('poured', 'poured', 'used', 'lost', 'combined', 'counted', 'discarded', 'void', 'regram'),
  which: fc.nat(20),
  other: fc.nat(20),
  grams: fc.integer({ min: 1, max: 700 }),
  minutesAgo: fc.integer({ min: 0, max: 400 }),
});
type Doing = Parameters<Parameters<typeof doing.map>[0]>[0];

const mutations = {
  poured: 'takePortion',
  used: 'takePortion',
  lost: 'recordLoss',
  combined: 'combineContainers',
  counted: 'recordCount',
  discarded: 'discardContainer',
} as const;

/** What of an act was said, first to last. */
interface Version {
  id: string;
  grams: number;
}

const weighable: ReadonlySet<Act['kind']> = new Set(['poured', 'used', 'lost', 'counted']);
const vessel = { innerDiameterMm: 80, heightMm: 120 };
const zeroAt = 24 * 60;

describeEngines('dry grams', (on) => {
  let world: World;
  let lotsMade = 0;
  beforeAll(async () => {
    world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
  });

  /** Says that it was otherwise, or takes back what was said last: before a correction, that is how it was first. */
  async function corrected(doing: Doing, wrong: Act, acts: Act[], versions: Version[]): Promise<void> {
    const isVoid = doing.what === 'void';
    if (!isVoid && !weighable.has(wrong.kind)) return;
    const next = isVoid ? versions.slice(0, -1) : [...versions, { id: '', grams: doing.grams }];
    const now = next.at(-1);
    const change = now ? { grams: now.grams } : { isVoid: true };
    const event = versions.at(-1)?.id;
    const input = isVoid ? { event, void: true } : { event, replacement: { grams: doing.grams, basis: 'DRY' } };
    if (shelfAfter(acts.map((act) => (act === wrong ? { ...act, ...change } : act))) === null) {
      await world.refused('correctEvent', input);
      return;
    }
    const { event: correction } = await world.tell('correctEvent', input);
    Object.assign(wrong, change);
    if (now && !isVoid) now.id = correction.id;
    versions.splice(0, versions.length, ...next);
  }

  /** Does it, and puts it into the ledger; or sees it refused, where the ledger says that it cannot be true. */
  async function done(doing: Doing, acts: Act[], labels: string[], events: Map<Act, Version[]>): Promise<void> {
    const of = labels[doing.which % labels.length] ?? '';
    const into = labels[doing.other % labels.length] ?? '';
    const at = zeroAt - doing.minutesAgo;
    const stays = acts.filter((act) => events.has(act) && !act.isVoid);
    const wrong = stays[doing.which % Math.max(stays.length, 1)];
    if (doing.what === 'void' || doing.what === 'regram') {
      if (wrong) await corrected(doing, wrong, acts, events.get(wrong) ?? []);
      return;
    }
    if (doing.what === 'combined' && of === into) return;
    const before = shelfAfter(acts.filter((act) => act.at <= at))?.get(of) ?? 0;
    const grams = doing.what === 'combined' ? before : doing.grams;
    const child = doing.what === 'poured' ? `portion ${acts.length}` : doing.what === 'combined' ? into : undefined;
    const act: Act = { at, place: acts.length, kind: doing.what, of, grams, ...(child && { into: child }) };
    const input = {
      label: of,
      at: world.ago(doing.minutesAgo),
      ...(doing.what !== 'discarded' && doing.what !== 'combined' && { grams, basis: 'DRY' }),
      ...(doing.what === 'poured' && vessel),
      ...(doing.what === 'combined' && { into }),
    };
    if (shelfAfter([...acts, act]) === null) {
      await world.refused(mutations[doing.what], input);
      return;
    }
    const recorded: Recorded = await world.tell(mutations[doing.what], input);
    if (doing.what === 'poured') {
      const label = recorded.made?.label ?? '';
      Object.assign(act, { into: label });
      labels.push(label);
    }
    acts.push(act);
    events.set(act, [{ id: recorded.event.id, grams }]);
  }

  it('are conserved, container by container and lot by lot, over every list of acts, corrections and late entries', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(doing, { minLength: 4, maxLength: 14 }), async (doings) => {
        lotsMade += 1;
        const lotNumber = `lot ${lotsMade}`;
        const drums = await world.came(
          [1000, 400].map((grams) => ({ kind: 'DRUM', grams, basis: 'DRY', ...vessel })),
          { lotNumber },
        );
        const labels = drums.map(({ label }) => label);
        const acts: Act[] = labels.map((of, place) => ({
          at: -1e6,
          place,
          kind: 'came',
          of,
          grams: place === 0 ? 1000 : 400,
        }));
        const events = new Map<Act, Version[]>();
        for (const each of doings) {
          await done(each, acts, labels, events);
          const expected = shelfAfter(acts) ?? new Map<string, number>();
          const { lots } = await world.ask<{
            lots: {
              nodes: { lotNumber: string; dryGrams: number; containers: { label: string; dryGrams: number }[] }[];
            };
          }>('{ lots(first: 200) { nodes { lotNumber dryGrams containers { label dryGrams } } } }');
          const lot = lots.nodes.find((one) => one.lotNumber === lotNumber);
          for (const { label, dryGrams } of lot?.containers ?? [])
            expect(dryGrams, label).toBeCloseTo(expected.get(label) ?? 0, 6);
          expect(lot?.dryGrams).toBeCloseTo(
            [...expected.values()].reduce((sum, grams) => sum + grams, 0),
            6,
          );
        }
        const plain = acts.every(({ kind, isVoid }) => isVoid || (kind !== 'counted' && kind !== 'discarded'));
        if (plain) {
          const sum = [...(shelfAfter(acts) ?? new Map<string, number>()).values()].reduce(
            (all, grams) => all + grams,
            0,
          );
          expect(sum).toBeCloseTo(across(acts), 6);
        }
      }),
      { numRuns: amount(15, 120), seed: 20_260_302 },
    );
  }, 600_000);

  it('come out right when fifty take from one drum at once', async () => {
    const drum = await world.drum(1000, { basis: 'DRY' });
    const take = () =>
      world.post(
        `mutation ($input: TakePortionInput!) { takePortion(input: $input) { ... on Recorded { container { dryGrams } made { dryGrams } } ... on Refusal { path } } }`,
        { input: { label: drum.label, grams: 30, basis: 'DRY', innerDiameterMm: 60, heightMm: 80 } },
      );
    const answers = await Promise.all(Array.from({ length: 50 }, take));
    const texts = answers.map(({ data, errors }) => JSON.stringify(data ?? errors));
    // 33 times 30 g fit into 1000 g.
    expect(texts.filter((text) => text.includes('"made":{"dryGrams":30}'))).toHaveLength(33);
    expect(texts.filter((text) => text.includes('input.grams'))).toHaveLength(17);
    const { dryGrams } = await world.look(drum.label);
    expect(dryGrams).toBeCloseTo(10, 6);
    const { container } = await world.ask<{ container: { lot: { dryGrams: number } } }>(
      `{ container(label: "${drum.label}") { lot { dryGrams } } }`,
    );
    expect(container.lot.dryGrams).toBeCloseTo(1000, 6);
  });
});
