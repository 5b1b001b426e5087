// The list of containers: filters, orders, pages and what they cost.
import { beforeAll, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';

const sizes = { innerDiameterMm: 100, heightMm: 200 };

interface Page {
  totalCount: number;
  nodes: { label: string }[];
  pageInfo: { hasNextPage: boolean; hasPreviousPage: boolean; startCursor: string; endCursor: string };
}

describeEngines('the list of containers', (on) => {
  let world: World;
  let labels: string[];
  beforeAll(async () => {
    world = await newWorld(await on.fresh());
    await world.furnished();
    await world.tell('addSorbent', { name: 'Alumina, neutral', sorbentClass: 'alumina' }, '__typename');
    const silica = await world.came([{ kind: 'DRUM', grams: 800, count: 9, ...sizes }], { lotNumber: 'F-1' });
    const alumina = await world.came(
      [{ kind: 'DRUM', room: 'cold store', grams: 800, count: 4, closure: 'OPEN', ...sizes }],
      {
        sorbent: 'Alumina, neutral',
        lotNumber: 'A-1',
      },
    );
    labels = [...silica, ...alumina].map(({ label }) => label);
    await world.tell('openContainer', { label: labels[0], at: world.ago(5 * 24 * 60) });
    await world.tell('openContainer', { label: labels[1], at: world.ago(60) });
    await world.tell('finishContainer', { label: labels[8] });
  });

  const list = async (args: string): Promise<Page> => {
    const answer = await world.ask<{ containers: Page }>(
      `{ containers(${args}) { totalCount nodes { label } pageInfo { hasNextPage hasPreviousPage startCursor endCursor } } }`,
    );
    return answer.containers;
  };
  const found = async (filter: string) =>
    (await list(`first: 200, filter: { ${filter} }`)).nodes.map(({ label }) => label).sort();
  const some = (...at: number[]) => at.map((index) => labels[index]).sort();

  it('is narrowed by what people say of a container, in any case', async () => {
    expect(await found('isOpen: true')).toEqual(some(0, 1, 9, 10, 11, 12));
    expect(await found('sorbent: "ALUMINA"')).toEqual(some(9, 10, 11, 12));
    expect(await found('sorbent: "40–63"')).toEqual(some(0, 1, 2, 3, 4, 5, 6, 7, 8));
    expect(await found('lot: "a-1"')).toEqual(some(9, 10, 11, 12));
    expect(await found('room: "Cold Store", isOpen: false')).toEqual([]);
    expect(await found('inUse: false')).toEqual(some(8));
    expect(await found('closure: [SEALED], inUse: true')).toEqual(some(2, 3, 4, 5, 6, 7));
    expect(await found('kind: [COLUMN]')).toEqual([]);
    expect(await found('search: "f-1"')).toEqual(some(0, 1, 2, 3, 4, 5, 6, 7, 8));
    expect(await found('state: []')).toEqual([]);
  });

  it('is searched by a part of a label, with or without its dash', async () => {
    const label = labels[3] ?? '';
    expect(await found(`search: "${label.toLowerCase()}"`)).toEqual([label]);
    expect(await found(`search: "${label.replace('-', '').slice(0, 5)}"`)).toContain(label);
  });

  it('shows the alumina that stands open before the sealed silica, and the longest open first when asked', async () => {
    const urgent = await list('first: 200, orderBy: MOST_URGENT');
    const { containers } = await world.ask<{ containers: { nodes: { exposure: { state: string } }[] } }>(
      '{ containers(first: 200) { nodes { exposure { state } } } }',
    );
    const rank = ['REDRY', 'USE_SOON', 'TOO_DRY', 'UNKNOWN', 'GOOD'];
    const ranks = containers.nodes.map(({ exposure }) => rank.indexOf(exposure.state));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(urgent.nodes).toHaveLength(13);
    const openFor = (await list('first: 200, orderBy: OPENED_AT')).nodes.map(({ label }) => label);
    expect(openFor.slice(0, 4).sort()).toEqual(some(9, 10, 11, 12));
    expect(openFor.slice(4, 6)).toEqual([labels[0], labels[1]]);
  });

  it.each(['MOST_URGENT', 'LABEL', 'OPENED_AT', 'RECEIVED_AT', 'WETTEST'])(
    'by %s is the same read forwards and backwards in pages as at once',
    async (order) => {
      const whole = (await list(`first: 200, orderBy: ${order}`)).nodes;
      const forwards: { label: string }[] = [];
      for (
        let page = await list(`first: 4, orderBy: ${order}`);
        ;
        page = await list(`first: 4, orderBy: ${order}, after: "${page.pageInfo.endCursor}"`)
      ) {
        forwards.push(...page.nodes);
        expect(page.totalCount).toBe(13);
        if (!page.pageInfo.hasNextPage) break;
      }
      expect(forwards).toEqual(whole);
      const backwards: { label: string }[] = [];
      for (
        let page = await list(`last: 5, orderBy: ${order}`);
        ;
        page = await list(`last: 5, orderBy: ${order}, before: "${page.pageInfo.startCursor}"`)
      ) {
        backwards.unshift(...page.nodes);
        if (!page.pageInfo.hasPreviousPage) break;
      }
      expect(backwards).toEqual(whole);
    },
  );

  it('neither repeats nor hides a row when another one leaves between two pages', async () => {
    const filter = 'filter: { isOpen: true }, orderBy: LABEL';
    const first = await list(`first: 2, ${filter}`);
    const gone = first.nodes[0]?.label;
    const expected = (await list(`first: 200, ${filter}`)).nodes.slice(2);
    await world.tell('closeContainer', { label: gone });
    const second = await list(`first: 200, ${filter}, after: "${first.pageInfo.endCursor}"`);
    await world.tell('openContainer', { label: gone });
    expect(second.nodes).toEqual(expected);
  });

  const whole =
    '{ nodes { __typename label isOpen openedAt closure dryGrams asReceivedGrams sorbent { name } lot { lotNumber supplier { name } } room { name } holds { forWhat } exposure { state scoopWaterFraction hoursToLimit reason } } }';

  it('with sorbent, lot, room and exposure costs the same few statements whatever its length', async () => {
    const statements = async (first: number) =>
      (await world.database.statements.during(() => world.ask(`{ containers(first: ${first}) ${whole} }`))).texts
        .length;
    await statements(2);
    const few = await statements(2);
    expect(await statements(13)).toBe(few);
    expect(few).toBeLessThanOrEqual(8);
  });

  it('of timelines costs the same few statements whatever their length', async () => {
    const timeline = `{ container(label: "${labels[2]}") { timeline(first: 50) { nodes { sentence by { role } correctedBy { id } } } } }`;
    const cost = async () => (await world.database.statements.during(() => world.ask(timeline))).texts.length;
    await world.tell('moveContainer', { label: labels[2], room: 'cold store' });
    const short = await cost();
    for (const room of ['wet bench', 'cold store', 'wet bench'])
      await world.tell('moveContainer', { label: labels[2], room });
    expect(await cost()).toBe(short);
  });

  it.each([
    ['first: 201', 'invalid first: 201, from 0 to 200 a page'],
    ['first: -1', 'invalid first: -1, from 0 to 200 a page'],
    ['first: 2, last: 2', 'invalid last: 2, first or last, not both'],
    ['first: 2, after: "nonsense"', 'invalid after: nonsense, a cursor of this list in this order'],
  ])('asked for with %s is refused in words', async (args, message) => {
    const { errors } = await world.post(`{ containers(${args}) { nodes { label } } }`);
    expect(errors?.[0]?.message).toBe(message);
    expect(errors?.[0]?.extensions).toMatchObject({ code: 'REFUSED' });
  });

  it('does not take a cursor of another order', async () => {
    const { pageInfo } = await list('first: 2, orderBy: LABEL');
    const { errors } = await world.post(
      `{ containers(first: 2, orderBy: RECEIVED_AT, after: "${pageInfo.endCursor}") { totalCount } }`,
    );
    expect(errors?.[0]?.message).toMatch(/^invalid after: .+, a cursor of this list in this order$/);
  });

  it('is found again by id, one and many, each as what it is', async () => {
    const container = await world.look(labels[0] ?? '');
    const { node, nodes } = await world.ask<{ node: object; nodes: object[] }>(
      'query ($id: ID!, $ids: [ID!]!) { node(id: $id) { __typename ... on Container { label } } nodes(ids: $ids) { id } }',
      { id: container.id, ids: [container.id, Buffer.from('Lot:nowhere').toString('base64')] },
    );
    expect(node).toEqual({ __typename: 'Drum', label: labels[0] });
    expect(nodes).toEqual([{ id: container.id }, null]);
    const asPortion = Buffer.from(Buffer.from(container.id, 'base64').toString().replace('Drum', 'Portion')).toString(
      'base64',
    );
    expect(await world.ask('query ($id: ID!) { node(id: $id) { id } }', { id: asPortion })).toEqual({ node: null });
  });

  it('counts the lab', async () => {
    const { lab } = await world.ask<{ lab: object }>(
      '{ lab { timeZone isDemo now counts { containers open lots sorbents } } }',
    );
    expect(lab).toMatchObject({
      timeZone: 'Europe/Helsinki',
      isDemo: false,
      counts: { containers: 12, open: 6, lots: 2, sorbents: 2 },
    });
  });

  it('asked too deep is turned away with the limit', async () => {
    const deep = `{ containers(first: 1) { nodes ${'{ takenFrom '.repeat(14)}{ label }${' }'.repeat(14)} } }`;
    const { errors } = await world.post(deep);
    expect(errors?.[0]?.message).toMatch(/depth.*12/i);
  });
});
