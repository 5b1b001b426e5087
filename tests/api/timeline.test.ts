// What happens to stock, told through the API.
import { beforeAll, beforeEach, expect, it } from 'vitest';
import { eventTypes } from '../../api/stock/details.ts';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type Seen, type World } from '../support/world.ts';

const jar = { innerDiameterMm: 80, heightMm: 120 };

describeEngines('what happens to stock', (on) => {
  let world: World;
  let drum: Seen;
  beforeAll(async () => {
    world = await newWorld(await on.fresh());
    await world.furnished();
    await world.tell('addPerson', { role: 'night shift', shortName: 'night' }, '__typename');
  });
  beforeEach(async () => {
    drum = await world.drum(1000);
  });

  const timeline = async (label: string) => {
    const { container } = await world.ask<{
      container: { timeline: { nodes: { type: string; sentence: string; counts: boolean; note: string | null }[] } };
    }>(
      `query ($label: String!) { container(label: $label) { timeline(first: 50) { nodes { type sentence counts note } } } }`,
      { label },
    );
    return container.timeline.nodes;
  };

  it('stood open since yesterday, said today', async () => {
    const { container, event } = await world.tell('openContainer', {
      label: drum.label,
      at: world.ago(20 * 60),
      note: 'found it so',
    });
    expect(container).toMatchObject({ isOpen: true, openedAt: world.ago(20 * 60).toISOString(), closure: 'OPEN' });
    expect(event.sentence).toBe('opened');
    expect(await timeline(drum.label)).toMatchObject([{ type: 'OPENED', note: 'found it so' }, { type: 'CAME_IN' }]);
  });

  it('closed without a word is closed as usual, and twice is no harm', async () => {
    await world.tell('openContainer', { label: drum.label });
    expect((await world.tell('closeContainer', { label: drum.label })).container.closure).toBe('WELL_CLOSED');
    const again = await world.tell('closeContainer', { label: drum.label });
    expect(again.notes).toEqual(['it was closed already']);
  });

  it('is found by a label in small letters, without its dash, with one sign smudged', async () => {
    const spoken = drum.label.toLowerCase().replace('-', '');
    expect((await world.look(spoken)).id).toBe(drum.id);
    expect((await world.look(`${drum.label.slice(0, 6)}?`)).id).toBe(drum.id);
    const refusal = await world.refused('openContainer', {
      label: `${drum.label.slice(1, 3)}${drum.label[0]}${drum.label.slice(3)}`,
    });
    expect(refusal).toMatchObject({ path: 'input.label' });
    expect(refusal.message).toMatch(/^invalid input\.label: .*a sign is wrong/);
  });

  it('poured into a jar makes a portion that knows where it came from', async () => {
    const { event, container, made } = await world.tell('takePortion', {
      label: drum.label,
      grams: 210,
      closure: 'TIGHT',
      ...jar,
    });
    expect(event.sentence).toBe(`210 g poured into ${made?.label}`);
    expect(container.dryGrams).toBeCloseTo(790, 3);
    expect(made).toMatchObject({ closure: 'TIGHT', isOpen: false });
    const answer = await world.ask(
      `query ($label: String!) { container(label: $label) { __typename takenFrom { label } lot { lotNumber } } }`,
      { label: made?.label },
    );
    expect(answer).toMatchObject({ container: { __typename: 'Portion', takenFrom: { label: drum.label } } });
    expect(await timeline(made?.label ?? '')).toMatchObject([{ type: 'PORTION_TAKEN' }]);
  });

  it('taken for use at once leaves no container behind', async () => {
    const { made, event } = await world.tell('takePortion', { label: drum.label, grams: 30 });
    expect(made).toBeNull();
    expect(event.sentence).toBe('30 g taken');
  });

  it('said as received is booked dry, with the water at that moment', async () => {
    const [moist] = await world.came([
      { kind: 'DRUM', grams: 1100, innerDiameterMm: 120, heightMm: 250, startWaterFraction: 0.1 },
    ]);
    expect(moist?.dryGrams).toBeCloseTo(1000, 6);
    const { container } = await world.tell('takePortion', { label: moist?.label, grams: 110 });
    expect(container.dryGrams).toBeCloseTo(900, 3);
    const { container: seen } = await world.ask<{
      container: { timeline: { nodes: { detail: { bookedWaterFraction: number }; dryGrams: number }[] } };
    }>(`{ container(label: "${moist?.label}") { timeline(first: 1) { nodes { detail dryGrams } } } }`);
    expect(seen.timeline.nodes[0]?.detail.bookedWaterFraction).toBeCloseTo(0.1, 4);
    expect(seen.timeline.nodes[0]?.dryGrams).toBeCloseTo(100, 3);
  });

  it('pours out all that the screen shows, to the last rounding', async () => {
    const [bit] = await world.came([{ kind: 'PORTION', grams: 99.97, basis: 'DRY', ...jar }]);
    const { container, notes } = await world.tell('takePortion', { label: bit?.label, grams: 100, basis: 'DRY' });
    expect(container).toMatchObject({ dryGrams: 0, finishedAt: world.now().toISOString() });
    expect(notes).toEqual(['that was all of it: 100 g (dry)']);
  });

  it('packs a column by its bed where nobody weighed it: 500 kg/m³ of silica', async () => {
    const { made, event } = await world.tell('packColumn', {
      label: drum.label,
      innerDiameterMm: 20,
      bedLengthMm: 150,
    });
    // A bed of 20 mm and 150 mm: 47.1 mL, at 0.5 g/mL.
    expect(made?.dryGrams).toBeCloseTo(((Math.PI / 4) * 20 ** 2 * 150 * 1e-3) / 2, 6);
    expect(event.sentence).toBe(`23.6 g (dry) packed into column ${made?.label}`);
    await world.tell('conditionColumn', { label: made?.label, mobilePhase: 'hexane', columnVolumes: 3 });
    const { container } = await world.ask<{ container: { isWetted: boolean } }>(
      `{ container(label: "${made?.label}") { ... on Column { isWetted } } }`,
    );
    expect(container.isWetted).toBe(true);
  });

  it('takes plates into a box of their own', async () => {
    const box = await world.plates(25);
    // 0.1 kg/m² on 0.04 m² is 4 g a plate.
    expect(box).toMatchObject({ plates: 25, dryGrams: 100 });
    const { made, container, event } = await world.tell('takePlates', {
      label: box.label,
      plates: 6,
      room: 'cold store',
    });
    expect(container).toMatchObject({ plates: 19, dryGrams: 76 });
    expect(made).toMatchObject({ plates: 6, dryGrams: 24 });
    expect(event.sentence).toBe(`6 plates taken into ${made?.label}`);
    expect((await world.refused('takePlates', { label: box.label, plates: 20 })).expected).toBe(
      'at most 19 plates; if more is there, count it first',
    );
    expect((await world.refused('takePortion', { label: box.label, grams: 4 })).message).toMatch(/it is a plate box/);
  });

  it('goes back into one jar from its trays, of the same lot only', async () => {
    const trays = await Promise.all(
      [1, 2].map(() => world.tell('takePortion', { label: drum.label, grams: 100, basis: 'DRY', ...jar })),
    );
    const [first, second] = trays.map(({ made }) => made?.label);
    const { container, made } = await world.tell('combineContainers', { label: first, into: second });
    expect(container).toMatchObject({ dryGrams: 0, finishedAt: world.now().toISOString() });
    expect(made?.dryGrams).toBeCloseTo(200, 6);
    const stranger = await world.drum(10);
    expect((await world.refused('combineContainers', { label: second, into: stranger.label })).expected).toMatch(
      /same lot/,
    );
  });

  it('is counted by its gross weight, once the tare is known', async () => {
    expect(await world.refused('recordCount', { label: drum.label, grossGrams: 1500 })).toMatchObject({
      path: 'input.tareGrams',
    });
    const { container, notes } = await world.tell('recordCount', {
      label: drum.label,
      grossGrams: 1500,
      tareGrams: 600,
    });
    expect(container.dryGrams).toBeCloseTo(900, 3);
    expect(notes[0]).toMatch(/the book said 1000 g \(dry\), the shelf says 900 g: 100 g less/);
  });

  it('says who wrote it down', async () => {
    const query = `mutation ($input: MoveContainerInput!) { moveContainer(input: $input) { ... on Recorded { event { sentence by { role } } } } }`;
    const answer = await world.post(
      query,
      { input: { label: drum.label, room: 'Cold Store' } },
      { 'drumkeep-person': 'night' },
    );
    expect(answer.data).toEqual({
      moveContainer: { event: { sentence: 'moved to cold store', by: { role: 'night shift' } } },
    });
  });

  it('knows every type of event, each as a sentence', async () => {
    const box = await world.plates(10);
    const { made } = await world.tell('packColumn', { label: drum.label, innerDiameterMm: 20, bedLengthMm: 150 });
    const tray = await world.tell('takePortion', { label: drum.label, grams: 20, ...jar });
    const acts: [string, object][] = [
      ['openContainer', {}],
      ['closeContainer', { closure: 'TIGHT' }],
      ['moveContainer', { room: 'cold store' }],
      ['mixContainer', {}],
      ['recordDrying', { temperatureC: 140, minutes: 45, vacuum: true, waterFraction: 0.004 }],
      ['recordEquilibration', { humidityPercent: 33 }],
      ['recordWeighing', { method: 'LOSS_ON_DRYING', temperatureC: 150, of: 'SCOOP', waterFraction: 0.04 }],
      ['recordCount', { grams: 900 }],
      ['setHabit', { timesADay: 3, minutes: 10 }],
      ['setScooping', { scooping: 'SIDE' }],
      ['recordLoss', { grams: 5, why: 'spilt' }],
      ['spendOnCheck', { grams: 1, what: 'two dyes' }],
      ['recordSolvent', { what: 'ethyl acetate' }],
      ['recordNotFound', { why: 'behind the oven?' }],
    ];
    for (const [mutation, input] of acts) await world.tell(mutation, { label: drum.label, ...input });
    await world.tell('combineContainers', { label: tray.made?.label, into: drum.label });
    await world.tell('discardContainer', { label: drum.label, grams: 2, why: 'wet' });
    const { event } = await world.tell('openContainer', { label: drum.label });
    await world.tell('correctEvent', { event: event.id, void: true });
    await world.tell('finishContainer', { label: drum.label });
    await world.tell('preWash', { label: box.label, at: world.ago(13 * 60) });
    for (const act of ['solventGone', 'interrupt']) await world.tell(act, { label: box.label });
    await world.tell('takePlates', { label: box.label, plates: 1 });
    await world.tell('conditionColumn', { label: made?.label });
    const rows = await Promise.all([drum.label, box.label, made?.label ?? ''].map(timeline));
    const told = rows.flat();
    expect(new Set(told.map(({ type }) => type))).toEqual(new Set(eventTypes));
    expect(told.map(({ sentence }) => sentence)).toEqual(
      expect.arrayContaining([
        'dried at 140 °C under vacuum for 45 min to 0.4 % water (dry basis)',
        'equilibrated at 33 % RH, 25 °C',
        'a scoop weighed: 4 % water (as received; loss on drying at 150 °C)',
        'opened 3 times a day for 10 min from now on',
        'scooped from the side',
        '5 g lost: spilt',
        '1 g spent on a check: two dyes',
        'touched ethyl acetate',
        'looked for and not found: behind the oven?',
        'used up',
      ]),
    );
  });

  it('cannot lie ahead by more than five minutes', async () => {
    await world.tell('openContainer', { label: drum.label, at: new Date(world.now().getTime() + 4 * 60_000) });
    const refusal = await world.refused('closeContainer', {
      label: drum.label,
      at: new Date(world.now().getTime() + 6 * 60_000),
    });
    expect(refusal).toMatchObject({ path: 'input.at' });
  });

  it('refuses with what would be right', async () => {
    expect(await world.refused('moveContainer', { label: drum.label, room: 'attic' })).toMatchObject({
      message: 'unknown input.room: attic, one of: cold store, wet bench',
      path: 'input.room',
    });
    expect((await world.refused('takePortion', { label: drum.label, grams: -1 })).message).toBe(
      'invalid input.grams: -1, more than 0 g',
    );
    expect((await world.refused('takePortion', { label: drum.label })).message).toBe(
      'missing input.grams, the grams on the balance',
    );
    await world.tell('finishContainer', { label: drum.label });
    expect((await world.refused('openContainer', { label: drum.label })).message).toMatch(/it was used up at/);
  });
});
