// The day in figures, and a whole list as labels: both say what the lines themselves say.
import { beforeAll, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';

interface Day {
  inUse: number;
  open: number;
  redry: number;
  useSoon: number;
  weighFirst: number;
  tooDry: number;
  good: number;
  platesReady: number;
  platesReadyUntil: string | null;
  platesToRedry: number;
  waiting: number;
}
interface Node {
  label: string;
  kind: string;
  closure: string;
  plates?: number;
  exposure: { state: string; asOf: string; hoursToLimit: number | null };
}

describeEngines('the day', (on) => {
  let world: World;
  let nodes: Node[];
  let day: Day;

  async function look(): Promise<void> {
    const answer = await world.ask<{ day: Day; containers: { nodes: Node[] } }>(`{
      day { inUse open redry useSoon weighFirst tooDry good platesReady platesReadyUntil platesToRedry waiting }
      containers(first: 200, filter: { inUse: true }) {
        nodes { label kind closure ... on PlateBox { plates } exposure { state asOf hoursToLimit } } } }`);
    day = answer.day;
    nodes = answer.containers.nodes;
  }

  beforeAll(async () => {
    world = await newWorld(await on.fresh());
    await world.furnished();
    const drum = { kind: 'DRUM', grams: 500, innerDiameterMm: 90, heightMm: 150 };
    const came = await world.came([
      { ...drum, count: 3 },
      { ...drum, closure: 'OPEN' },
      { ...drum, closure: 'WELL_CLOSED' },
      { kind: 'PLATE_BOX', plates: 25, startWaterFraction: 0.005 },
      { kind: 'PLATE_BOX', plates: 20 },
      { kind: 'PLATE_BOX', plates: 10, closure: 'OPEN', startWaterFraction: 0.005 },
    ]);
    await world.tell('requestDrying', { label: came[3]?.label, why: 'for Friday' }, '__typename');
    await world.tell('finishContainer', { label: came[0]?.label });
    await look();
  });

  it('counts each open container once, in the state its own line says', () => {
    const open = nodes.filter(({ closure }) => closure !== 'SEALED');
    const inState = (state: string) => open.filter(({ exposure }) => exposure.state === state).length;
    expect(nodes.length).toBe(7);
    expect(day).toMatchObject({
      inUse: 7,
      open: open.length,
      redry: inState('REDRY'),
      useSoon: inState('USE_SOON'),
      weighFirst: inState('UNKNOWN'),
      tooDry: inState('TOO_DRY'),
      good: inState('GOOD'),
      waiting: 1,
    });
    expect(day.open).toBe(3);
  });

  it('counts plates, not boxes, and says until when the first of them is ready', () => {
    const boxes = nodes.filter(({ kind }) => kind === 'PLATE_BOX');
    const ready = boxes.filter(({ exposure }) => ['GOOD', 'USE_SOON'].includes(exposure.state));
    const sum = (some: Node[]) => some.reduce((all, { plates }) => all + (plates ?? 0), 0);
    expect(boxes).toHaveLength(3);
    expect(day.platesReady).toBe(sum(ready));
    expect(day.platesReady + day.platesToRedry).toBeGreaterThan(0);
    expect(day.platesToRedry).toBe(sum(boxes.filter(({ exposure }) => exposure.state === 'REDRY')));
    const ends = ready.flatMap(({ exposure: { asOf, hoursToLimit } }) =>
      hoursToLimit === null ? [] : [Date.parse(asOf) + hoursToLimit * 3_600_000],
    );
    const until = day.platesReadyUntil === null ? null : Date.parse(day.platesReadyUntil);
    if (ends.length === 0) expect(until).toBeNull();
    else expect(Math.abs((until ?? 0) - Math.min(...ends))).toBeLessThan(2);
  });

  it('costs one statement', async () => {
    const ask = () => world.ask('{ day { open platesReady waiting } }');
    const { texts } = await world.database.statements.during(ask);
    expect(texts.length).toBe(1);
  });

  it('an empty lab has a day of noughts', async () => {
    const empty = await newWorld(await on.fresh());
    const answer = await empty.ask<{ day: Day; containersByState: unknown[] }>(
      '{ day { inUse open platesReady platesReadyUntil } containersByState { state } }',
    );
    expect(answer).toEqual({
      day: { inUse: 0, open: 0, platesReady: 0, platesReadyUntil: null },
      containersByState: [],
    });
  });

  it.each([
    'inUse: true',
    'inUse: true, closure: [OPEN, WELL_CLOSED]',
    'kind: [PLATE_BOX]',
    'room: "Wet Bench"',
    'sorbent: "silica"',
    'lot: "nobody has this"',
    'state: [REDRY, GOOD]',
    'search: "silica"',
    'isOpen: true',
  ])('a list of labels by state is the list itself in its order: %s', async (filter) => {
    const { containersByState, containers } = await world.ask<{
      containersByState: { state: string; labels: string[] }[];
      containers: { nodes: Node[] };
    }>(`{ containersByState(filter: { ${filter} }) { state labels }
          containers(first: 200, filter: { ${filter} }) { nodes { label exposure { state } } } }`);
    expect(containersByState.flatMap(({ labels, state }) => labels.map((label) => ({ label, state })))).toEqual(
      containers.nodes.map(({ label, exposure }) => ({ label, state: exposure.state })),
    );
    expect(new Set(containersByState.map(({ state }) => state)).size).toBe(containersByState.length);
  });

  it('lines are asked by their labels, in any number, and unknown ones are left out', async () => {
    const some = nodes.slice(2, 5).map(({ label }) => label);
    const { containers } = await world.ask<{ containers: { nodes: Node[] } }>(
      `query ($labels: [String!]) { containers(first: 200, filter: { labels: $labels }) { nodes { label } } }`,
      { labels: [...some, 'AAA-AAA'] },
    );
    expect(containers.nodes.map(({ label }) => label)).toEqual(some);
  });

  it('the number of the last change stays while nothing is written, and moves when something is', async () => {
    const last = async () =>
      (await world.ask<{ lab: { lastChange: number } }>('{ lab { lastChange } }')).lab.lastChange;
    const before = await last();
    expect(await last()).toBe(before);
    await world.tell('openContainer', { label: nodes[0]?.label });
    expect(await last()).toBeGreaterThan(before);
  });
});
