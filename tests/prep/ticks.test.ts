// From a need for plates to tonight's sheet and tomorrow's ticks: each tick records its event, and can be taken back.
import { beforeAll, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type Seen, type World } from '../support/world.ts';
import { needFields, type SeenNeed, type SeenStep } from './seen.ts';

interface Line {
  since: string | null;
  step: SeenStep;
}

interface Sheet {
  steps: Line[];
  gone: { sentence: string }[];
  solvents: { solvent: string; ml: number }[];
  waste: { stream: string; ml: number }[];
}

describeEngines('the prep sheet', (on) => {
  let world: World;
  let box: Seen;
  let need: SeenNeed;
  beforeAll(async () => {
    world = await newWorld(await on.fresh());
    await world.furnished();
    box = await world.plates(25);
  });

  const sheet = async (day: string, part: string): Promise<Sheet> => {
    const { prepSheet } = await world.ask<{ prepSheet: Sheet }>(
      `query ($day: String, $part: PrepPart) { prepSheet(on: $day, part: $part) {
        steps { since step { id kind startAt endAt doneAt place sentence closedBecause } } gone { sentence: sentence }
        solvents { solvent ml } waste { stream ml } } }`,
      { day, part },
    );
    return prepSheet;
  };
  const read = async (): Promise<SeenNeed> =>
    (
      await world.ask<{ node: SeenNeed }>(`query ($id: ID!) { node(id: $id) { ... on Need { ${needFields} } } }`, {
        id: need.id,
      })
    ).node;
  const stepOf = async (kind: string): Promise<SeenStep> => {
    const found = (await read()).steps.find((step) => step.kind === kind && !step.doneAt);
    if (!found) throw new Error(`no open ${kind}`);
    return found;
  };
  const types = async (label: string): Promise<string[]> => {
    const { container } = await world.ask<{ container: { timeline: { nodes: { type: string }[] } } }>(
      `{ container(label: "${label}") { timeline { nodes { type } } } }`,
    );
    return container.timeline.nodes.map(({ type }) => type);
  };

  it('tonight: the washes in order, with solvents and waste', async () => {
    const input = { kind: 'PLATES', sorbent: 'Silica 40–63 µm', plates: 10, forWhom: 'alkaloid screen' };
    const at = new Date('2026-03-03T14:00:00+02:00');
    need = (await world.tell<{ need: SeenNeed }>('addNeed', { ...input, at }, `need { ${needFields} }`)).need;
    const { steps, solvents, waste } = await sheet('2026-03-02', 'EVENING');
    expect(steps.map(({ step }) => step.kind)).toEqual(['PRE_WASH', 'PRE_WASH', 'AIR_DRY']);
    expect(solvents).toEqual([
      { solvent: 'methanol', ml: 200 },
      { solvent: 'chloroform', ml: 200 },
    ]);
    expect(waste).toEqual([{ stream: 'HALOGENATED', ml: 400 }]);
  });

  it('leads on to the sheet on which somebody takes them out of the hood, where nothing begins', async () => {
    const ends = new Date((await stepOf('AIR_DRY')).endAt);
    const begins = new Date((await stepOf('OVEN')).startAt);
    // The evening of that day begins between the two: at the oven, on the clock of Helsinki.
    const eveningFrom = new Date(begins.getTime() + 2 * 3_600_000).toISOString().slice(11, 16);
    await world.tell('setPrepSettings', { eveningFrom }, '__typename');
    const query = `{ prepSheet(on: "2026-03-02") { next { on part } } }`;
    const { prepSheet } = await world.ask<{ prepSheet: { next: object } }>(query);
    await world.tell('setPrepSettings', { eveningFrom: null }, '__typename');
    expect(ends < begins).toBe(true);
    expect(prepSheet.next).toEqual({ on: '2026-03-03', part: 'MORNING' });
  });

  it('marks what changed since it was printed', async () => {
    await world.tell('notePrinted', { on: '2026-03-02', part: 'EVENING' }, 'on');
    expect((await sheet('2026-03-02', 'EVENING')).steps.map(({ since }) => since)).toEqual([null, null, null]);
    await world.tell('setPrepSettings', { tankMl: 250 }, '__typename');
    const marks = (await sheet('2026-03-02', 'EVENING')).steps.map(({ since }) => since);
    expect(marks).toEqual(['CHANGED', 'CHANGED', null]);
    await world.tell('setPrepSettings', { tankMl: null }, '__typename');
  });

  it('a tick records the wash on a box of its own, and the oven stays closed while it is wet', async () => {
    world.later(5 * 60);
    const evening = await sheet('2026-03-02', 'EVENING');
    const ids = evening.steps.filter(({ step }) => step.kind === 'PRE_WASH').map(({ step }) => step.id);
    await world.tell('tickSteps', { ids }, 'steps { id doneAt } notes');
    const after = await read();
    expect(after.state).toBe('BEGUN');
    const [kept] = after.kept;
    expect(kept?.plates).toBe(10);
    expect(kept?.container.label).not.toBe(box.label);
    expect(await types(kept?.container.label ?? '')).toContain('PRE_WASHED');
    expect((await world.look(box.label)).plates).toBe(15);
    const oven = await stepOf('OVEN');
    expect(oven.closedBecause).toMatch(/wet with solvent/);
    expect((await world.refused('tickStep', { id: oven.id })).message).toMatch(/air-dry first/);
  });

  it('the morning: taken from the hood, into the oven, cooled, handed over', async () => {
    const early = await world.refused('tickStep', { id: (await stepOf('AIR_DRY')).id });
    expect(early.message).toMatch(/^invalid input/);
    world.later(14 * 60);
    await world.tell('tickStep', { id: (await stepOf('AIR_DRY')).id }, 'notes');
    const label = (await read()).kept[0]?.container.label ?? '';
    const { dryingRequests } = await world.ask<{ dryingRequests: { nodes: { container: { label: string } }[] } }>(
      '{ dryingRequests { nodes { container { label } } } }',
    );
    expect(dryingRequests.nodes.map(({ container }) => container.label)).toEqual([label]);
    world.later(3 * 60);
    await world.tell('tickStep', { id: (await stepOf('OVEN')).id }, 'notes');
    expect(await types(label)).toContain('DRIED');
    world.later(30);
    const handOver = await stepOf('HAND_OVER');
    await world.tell('tickStep', { id: handOver.id }, 'notes');
    expect((await read()).state).toBe('MET');
    expect((await read()).kept).toEqual([]);
    await world.tell('untickStep', { id: handOver.id }, 'notes');
    expect((await read()).state).not.toBe('MET');
  });
});
