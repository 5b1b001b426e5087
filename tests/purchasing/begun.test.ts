// A campaign over its life: it stays on the lot it began with, keeps nothing of a rejected one, and lets go as its weeks pass.
import { beforeAll, beforeEach, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type Seen, type World } from '../support/world.ts';
import { buyingOf, silica } from './lab.ts';

describeEngines('a campaign’s lot', (on) => {
  let world: World;
  let buying: ReturnType<typeof buyingOf>;
  let drum: Seen;
  let made = 0;
  beforeAll(async () => {
    world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
    buying = buyingOf(world);
  });
  beforeEach(async () => {
    made += 1;
    drum = await world.drum(1000, {}, { lotNumber: lot() });
  });

  const lot = () => `B-${made}`;
  const unchecked = { takeUnchecked: true };
  const friday = new Date('2026-03-06T10:00:00+02:00');
  const kept = async () => {
    const { campaign } = await buying.keep(await buying.campaign(), lot(), unchecked);
    return campaign;
  };
  const need = async (campaign: string, dryGrams: number) => {
    const said = { kind: 'SORBENT', sorbent: silica, dryGrams, at: friday, forWhom: 'somebody', campaign };
    return (
      await world.tell<{ need: { id: string; kept: { dryGrams: number }[] } }>(
        'addNeed',
        said,
        'need { id kept { dryGrams } }',
      )
    ).need;
  };
  const rejected = () =>
    world.tell(
      'decideLot',
      { sorbent: silica, lotNumber: lot(), outcome: 'REJECTED', why: 'the second dye runs higher' },
      '__typename',
    );
  const words = async () =>
    (await world.ask<{ container: { keptWords: string[] } }>(`{ container(label: "${drum.label}") { keptWords } }`))
      .container.keptWords;
  const free = async () => (await world.look(drum.label)).freeDryGrams;

  it('is the one that it began with, also after that was let go of', async () => {
    const campaign = await kept();
    await need(campaign.id, 100);
    // Handed over, as a tick of its last step says it.
    await world.database.write((tx) =>
      tx.need.updateMany({ where: { forWhom: 'somebody', metAt: null }, data: { metAt: world.now() } }),
    );
    await world.tell('letLotGo', { id: campaign.id }, '__typename');
    await world.drum(1000, {}, { lotNumber: `${lot()}-new` });
    const other = { campaign: campaign.id, lotNumber: `${lot()}-new`, ...unchecked };
    expect((await world.refused('keepLot', other)).expected).toBe(
      'the lot that it began with: all of a campaign is of one lot',
    );
    expect((await buying.keep(campaign, null, unchecked)).campaign.lot).toEqual({ lotNumber: lot() });
  });

  it('keeps nothing once it was rejected, and every line of it says so', async () => {
    const campaign = await kept();
    await rejected();
    expect(await words()).toEqual([`kept for ${campaign.name}, but rejected by its check`]);
    await world.tell('dropCampaign', { id: campaign.id }, '__typename');
    const { notes } = await world.tell<{ notes: string[] }>('restoreCampaign', { id: campaign.id }, 'notes');
    expect(notes).toEqual([`${lot()} was rejected by its check: nothing of it is kept`]);
    expect(await free()).toBeCloseTo(1000, 6);
  });

  it('gives a need more than its share where that is free, and has back no more than its uses take', async () => {
    const campaign = await kept();
    const large = await need(campaign.id, 600);
    expect(large.kept).toEqual([{ dryGrams: 600 }]);
    expect(await free()).toBeCloseTo(400, 6);
    await world.tell('dropNeed', { id: large.id }, '__typename');
    expect(await free()).toBeCloseTo(500, 6);
  });

  it('is free for everybody, and said to be kept for nobody, when its weeks are over', async () => {
    const campaign = await kept();
    expect(await words()).toEqual([`kept for ${campaign.name}, lasts until 13 March`]);
    world.later(7 * 24 * 60);
    // Whoever looks what is to do: nobody asks for campaigns.
    await world.ask('{ day { nextPrepStep { id } } }');
    expect(await words()).toEqual([`kept for ${campaign.name}, lasts until 13 March`]);
    expect(await free()).toBeCloseTo(700, 6);
    world.later(7 * 24 * 60);
    expect(await words()).toEqual([]);
    await world.ask('{ day { nextPrepStep { id } } }');
    expect(await free()).toBeCloseTo(1000, 6);
  });
});
