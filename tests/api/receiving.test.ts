// Deliveries: all or nothing, booked dry, once.
import { beforeAll, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, seen, type Seen, type World } from '../support/world.ts';

const sizes = { innerDiameterMm: 120, heightMm: 250 };
const one = { kind: 'DRUM', room: 'wet bench', grams: 1000, ...sizes };

describeEngines('a delivery', (on) => {
  let world: World;
  beforeAll(async () => {
    world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
  });

  const receive = (lotNumber: string, more: object = {}, containers: object[] = [one]) =>
    world.tell<{ lot: { id: string; dryGrams: number }; containers: Seen[]; notes: string[] }>('receiveLot', {
      sorbent: 'silica 40–63 µm',
      supplier: 'marlpit chemicals',
      lotNumber,
      containers,
      ...more,
    });

  const counts = async () => {
    const labId = world.app.lab.id;
    const { read } = world.database;
    return Promise.all([
      read.lot.count({ where: { labId } }),
      read.container.count({ where: { labId } }),
      read.event.count({ where: { labId } }),
      read.change.count({ where: { labId } }),
    ]);
  };

  it('brings a lot with several containers, the same of one kind by their count', async () => {
    const { containers, lot } = await receive('A-1', { certificateWaterPercent: 0 }, [
      { ...one, count: 3 },
      { kind: 'PLATE_BOX', room: 'cold store', plates: 20 },
    ]);
    expect(containers).toHaveLength(4);
    expect(new Set(containers.map(({ label }) => label)).size).toBe(4);
    expect(lot.dryGrams).toBeCloseTo(3 * 1000 + 20 * 4, 6);
  });

  it('with water on its certificate is booked by it: 2 % as received is 2.04 % of the dry mass', async () => {
    const { containers } = await receive('A-2', { certificateWaterPercent: 2 });
    expect(containers[0]?.dryGrams).toBeCloseTo(980, 6);
    expect(containers[0]?.dryGramsAssumed).toBe(false);
  });

  it('with unknown water is booked at the certificate’s maximum, else at 3 %, and marked as assumed', async () => {
    const { containers, notes } = await receive('A-3', { certificateMaxWaterPercent: 5, certificateBasis: 'DRY' });
    expect(containers[0]?.dryGrams).toBeCloseTo(1000 / 1.05, 6);
    expect(containers[0]?.dryGramsAssumed).toBe(true);
    expect(notes).toEqual(['starting water unknown: dry grams are booked at 5 % (dry basis), assumed until weighed']);
    expect((await receive('A-4')).containers[0]?.dryGrams).toBeCloseTo(1000 / 1.03, 6);
  });

  it('stays assumed when it is weighed, says so, and is known once it is counted', async () => {
    const [drum] = (await receive('A-11')).containers;
    const weighing = { method: 'KARL_FISCHER', of: 'WHOLE', waterFraction: 0.02 };
    const { notes, container } = await world.tell('recordWeighing', { label: drum?.label, ...weighing });
    expect(notes[0]).toMatch(/rest on an assumed starting water still: count it/);
    expect(container.dryGramsAssumed).toBe(true);
    const counted = await world.tell('recordCount', { label: drum?.label, grams: 980, basis: 'DRY' });
    expect(counted.container).toMatchObject({ dryGrams: 980, dryGramsAssumed: false });
  });

  it('of a lot that is there already adds to it', async () => {
    const first = await receive('A-5', { certificateWaterPercent: 0 });
    const second = await receive('A-5', { certificateWaterPercent: 4 });
    expect(second.lot.id).toBe(first.lot.id);
    expect(second.lot.dryGrams).toBeCloseTo(2000, 6);
    expect(second.notes).toHaveLength(2);
  });

  it('is all or nothing: one wrong container and none came in', async () => {
    const before = await counts();
    const refusal = await world.refused('receiveLot', {
      sorbent: 'Silica 40–63 µm',
      lotNumber: 'A-6',
      containers: [one, one, { ...one, room: 'attic' }],
    });
    expect(refusal).toMatchObject({
      path: 'input.containers.2.room',
      message: 'unknown input.containers.2.room: attic, one of: cold store, wet bench',
    });
    expect(await counts()).toEqual(before);
  });

  it.each([
    [{ containers: [] }, 'input.containers'],
    [{ containers: [{ ...one, grams: undefined }] }, 'input.containers.0.grams'],
    [{ containers: [{ kind: 'DRUM', room: 'wet bench', grams: 5 }] }, 'input.containers.0.vessel'],
    [{ containers: [{ kind: 'PLATE_BOX', room: 'wet bench' }] }, 'input.containers.0.plates'],
    [{ containers: [{ ...one, kind: 'COLUMN' }] }, 'input.containers.0.kind'],
    [{ sorbent: 'sand', containers: [one] }, 'input.sorbent'],
    [{ receivedAt: new Date('2026-03-03T12:00:00Z'), containers: [one] }, 'input.receivedAt'],
    [{ certificateWaterPercent: 120, containers: [one] }, 'input.certificateWaterPercent'],
  ])('with %j is refused, naming %s', async (input, path) => {
    const refusal = await world.refused('receiveLot', { sorbent: 'Silica 40–63 µm', lotNumber: 'A-7', ...input });
    expect(refusal.path).toBe(path);
    expect(refusal.message).toMatch(/^(invalid|unknown|missing) input\./);
    expect(refusal.expected).not.toBe('');
  });

  it('said twice with one key came in once', async () => {
    const input = {
      sorbent: 'Silica 40–63 µm',
      lotNumber: 'A-8',
      containers: [one],
      clientKey: 'a phone in a basement',
    };
    const fields = `lot { id } containers { ${seen} }`;
    const first = await world.tell('receiveLot', input, fields);
    const before = await counts();
    expect(await world.tell('receiveLot', input, fields)).toEqual(first);
    expect(await counts()).toEqual(before);
    const other = await world.refused('receiveLot', { ...input, lotNumber: 'A-9' });
    expect(other.path).toBe('input.clientKey');
    expect(await counts()).toEqual(before);
  });

  it('into a listed vessel takes its sizes', async () => {
    await world.tell(
      'addVessel',
      { name: 'jar 1 L', innerDiameterMm: 95, heightMm: 150, mouthDiameterMm: 80, volumeMl: 1000 },
      '__typename',
    );
    const { containers } = await receive('A-10', {}, [
      { kind: 'DRUM', room: 'wet bench', grams: 400, vessel: 'Jar 1 L' },
    ]);
    const seenIt = await world.ask(
      `{ container(label: "${containers[0]?.label}") { mouthDiameterMm volumeMl vessel { name } } }`,
    );
    expect(seenIt).toEqual({ container: { mouthDiameterMm: 80, volumeMl: 1000, vessel: { name: 'jar 1 L' } } });
  });
});
