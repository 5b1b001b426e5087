// Will a lot last? A chance that counts what is opened as what is left of it, and says what would make it last.
import { beforeAll, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';
import { buyingOf, silica } from './lab.ts';

interface Coverage {
  chance: number;
  likelyUntil: string | null;
  surelyUntil: string | null;
  amount: number;
  opened: number;
  unusable: number;
  usable: number;
  keptForCampaigns: number;
  keptForOthers: number;
  free: number;
  older: number;
  weekly: number;
  sentence: string;
  remedies: { what: string; sentence: string; chance: number; packs: number | null }[];
}

const fields = `chance likelyUntil surelyUntil amount opened unusable usable keptForCampaigns keptForOthers free older weekly
  sentence remedies { what sentence chance packs }`;

describeEngines('whether a lot lasts', (on) => {
  let world: World;
  let buying: ReturnType<typeof buyingOf>;
  let touched: string;
  beforeAll(async () => {
    world = await newWorld(await on.fresh());
    await world.furnished();
    buying = buyingOf(world);
    await world.drum(1000, {}, { lotNumber: 'F-1', receivedAt: world.ago(20 * 24 * 60) });
    touched = (await world.drum(300, {}, { lotNumber: 'F-1', receivedAt: world.ago(20 * 24 * 60) })).label;
    await world.drum(700, {}, { lotNumber: 'F-2' });
    await world.tell('setStockItem', { sorbent: silica, weeklyUse: 100 }, '__typename');
  });

  const ask = (lot: string, until: string) =>
    world.ask<{ coverage: Coverage & { message?: string } }>(
      `query ($lot: String!, $until: String!) { coverage(sorbent: "${silica}", lot: $lot, until: $until) {
        ... on Coverage { ${fields} } ... on Refusal { message } } }`,
      { lot, until },
    );
  const coverage = async (lot: string, until: string): Promise<Coverage> => (await ask(lot, until)).coverage;

  it('is answered with a chance that falls the further one asks', async () => {
    const soon = await coverage('F-1', '2026-03-16');
    const late = await coverage('F-1', '2026-06-15');
    expect(soon.weekly).toBe(100);
    expect(soon.chance).toBeGreaterThan(0.95);
    expect(late.chance).toBeLessThan(soon.chance);
    expect(soon.sentence).toMatch(/^lot F-1 lasts until 16 March/);
    // Thirteen weeks of a hundred grams, said by somebody: an even chance about there.
    expect(late.likelyUntil && late.likelyUntil > '2026-05-01' && late.likelyUntil < '2026-06-15').toBe(true);
    expect((late.surelyUntil ?? '') < (late.likelyUntil ?? '')).toBe(true);
  });

  it('leaves out what touched solvent, and takes older lots first', async () => {
    const before = await coverage('F-1', '2026-05-11');
    await world.tell('recordSolvent', { label: touched, what: 'crude extract' });
    const now = await coverage('F-1', '2026-05-11');
    expect(before.usable - now.usable).toBeCloseTo(300, 3);
    expect(now).toMatchObject({ unusable: expect.closeTo(300, 3), amount: expect.closeTo(1300, 3) });
    expect(now.chance).toBeLessThan(before.chance);
    const newer = await coverage('F-2', '2026-05-11');
    expect(newer.older).toBeCloseTo(now.free, 3);
    expect(newer.chance).toBeGreaterThan(now.chance);
  });

  it('counts what is kept for a campaign as gone for everybody else, and says what would help', async () => {
    const free = await coverage('F-1', '2026-04-27');
    const campaign = await buying.campaign({ name: 'long', uses: [{ day: '2026-05-05', amount: 600 }] });
    await buying.keep(campaign, 'F-1', { takeUnchecked: true });
    await buying.offer();
    const kept = await coverage('F-1', '2026-04-27');
    expect(kept.keptForCampaigns).toBeCloseTo(600, 3);
    expect(kept.free).toBeCloseTo(free.free - 600, 3);
    expect(kept.chance).toBeLessThan(free.chance);
    const helps = Object.fromEntries(kept.remedies.map((remedy) => [remedy.what, remedy]));
    expect(Object.keys(helps).sort()).toEqual(['BUY_NOW', 'OTHER_LOT', 'POSTPONE']);
    for (const { chance } of kept.remedies) expect(chance).toBeGreaterThan(kept.chance);
    // Without the campaign it is as it was.
    expect(helps['POSTPONE']?.chance).toBeCloseTo(free.chance, 6);
    expect(helps['POSTPONE']?.sentence).toBe(
      'keep a lot bought now for long instead: it is checked by 23 March, and long begins on 5 May',
    );
    expect(helps['OTHER_LOT']?.sentence).toMatch(/take everyday use from lot F-2, which is not checked yet: 700 g/);
    expect(helps['BUY_NOW']?.sentence).toMatch(/^buy \d packs? of 1 kg now: checked by 23 March/);
  });

  it('says of a campaign that begins sooner to postpone it, and of one that has begun nothing', async () => {
    const uses = [{ day: '2026-03-10', amount: 100 }];
    const campaign = await buying.campaign({ name: 'soon', uses });
    await buying.keep(campaign, 'F-1', { takeUnchecked: true });
    const postponed = async () =>
      (await coverage('F-1', '2026-04-27')).remedies.flatMap(({ what, sentence }) =>
        what === 'POSTPONE' && sentence.includes('soon') ? [sentence] : [],
      );
    expect(await postponed()).toEqual(['postpone soon until 23 March, when a lot bought now is checked']);
    const need = { kind: 'SORBENT', sorbent: silica, dryGrams: 40, forWhom: 'somebody', campaign: campaign.id };
    await world.tell('addNeed', { ...need, at: new Date('2026-03-10T10:00:00+02:00') }, '__typename');
    // Handed over, as a tick of its last step says it: all of it is of that lot.
    await world.database.write((tx) =>
      tx.need.updateMany({ where: { forWhom: 'somebody', metAt: null }, data: { metAt: world.now() } }),
    );
    expect(await postponed()).toEqual([]);
    await world.tell('dropCampaign', { id: campaign.id }, '__typename');
  });

  it('is not known, and said so, where nobody knows what a week uses', async () => {
    await world.tell('addSorbent', { name: 'Fine silica', sorbentClass: 'SILICA' }, '__typename');
    await world.tell(
      'receiveLot',
      { sorbent: 'Fine silica', lotNumber: 'C-1', containers: [{ kind: 'DRUM', room: 'wet bench', grams: 500, innerDiameterMm: 120, heightMm: 250 }] }, // prettier-ignore
      '__typename',
    );
    const { coverage: of } = await world.ask<{ coverage: Coverage }>(
      `{ coverage(sorbent: "Fine silica", lot: "C-1", until: "2026-04-27") { ... on Coverage { ${fields} } } }`,
    );
    expect(of.sentence).toBe(
      'whether lot C-1 lasts until 27 April is not known: too little history; say what a week uses',
    );
    // Nothing is used that anybody knows of: no end is made up.
    expect([of.likelyUntil, of.surelyUntil]).toEqual([null, null]);
  });

  it('says that it almost surely does not, in that order', async () => {
    expect((await coverage('F-1', '2027-02-26')).sentence).toMatch(
      /^lot F-1 almost surely does not last until 26 February 2027; it ends about/,
    );
  });

  it('asks for a weekly figure where the history is too short', async () => {
    await world.plates(12, {});
    const { stockItems } = await world.ask<{ stockItems: { name: string; asksForWeekly: boolean; free: number }[] }>(
      '{ stockItems { name asksForWeekly free } }',
    );
    const plates = stockItems.find(({ name }) => name === `${silica}, plates on glass`);
    expect(plates).toMatchObject({ asksForWeekly: true, free: 12 });
    expect(stockItems.find(({ name }) => name === silica)?.asksForWeekly).toBe(false);
  });

  it('says which lots there are when one is not', async () => {
    expect((await ask('F-9', '2026-04-27')).coverage.message).toMatch(/^unknown coverage.lot: F-9, one of: F-1, F-2/);
    expect((await ask('F-1', '2026-02-30')).coverage.message).toMatch(/^invalid coverage.until: 2026-02-30, a day/);
  });
});
