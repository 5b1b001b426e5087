// A list comes in whole or not at all, once, and can be taken back: through the API, on both engines.
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { receiveListFile } from '../../api/lists/upload.ts';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';
import { fixture } from './understood.ts';

const given = (answers: Record<string, string>) => ({
  given: Object.entries(answers).map(([question, answer]) => ({ question, answer })),
});
const silica = given({ 'name:SORBENT:silica 40 to 63 µm': 'is:Silica 40–63 µm' });
const heading = 'code\tsorbent\tlot\tamount\tin\treceived\topened\tlid\troom\n';

interface Received {
  list: string;
  already: boolean;
  containerCount: number;
  containers: {
    label: string;
    oldCode: string | null;
    dryGrams: number;
    isOpen: boolean;
    openedAt: string | null;
    closure: string;
    cameInAt: string;
  }[];
  notes: string[];
}
const receivedFields =
  'list already containerCount containers { label oldCode dryGrams isOpen openedAt closure cameInAt } notes';

describeEngines('a list', (on) => {
  let world: World;
  let server: Server;
  let address: string;
  beforeAll(async () => {
    world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
    server = createServer((request, response) => {
      void receiveListFile(world.app, request).then(({ status, body }) =>
        response.writeHead(status).end(JSON.stringify(body)),
      );
    });
    server.keepAliveTimeout = 600_000;
    await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
    address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  });
  afterAll(() => void server?.close());

  async function handIn(list: string | Uint8Array, name = 'stock.tsv'): Promise<string> {
    const body = typeof list === 'string' ? list : new Blob([new Uint8Array(list)]);
    const response = await fetch(address, { method: 'POST', headers: { 'x-file-name': name }, body });
    return ((await response.json()) as { id: string }).id;
  }
  const receive = (list: string, answers: object = {}) =>
    world.tell<Received>('receiveList', { list, answers }, receivedFields);
  const problemsOf = async (list: string, answers: object = {}) => {
    const query = `mutation ($input: ReceiveListInput!) { answer: receiveList(input: $input) { __typename ... on Refusal { message path problems { line column value expected } } } }`;
    return (
      await world.ask<{
        answer: {
          __typename: string;
          message: string;
          problems: { line: number | null; column: string | null; value: string }[];
        };
      }>(query, { input: { list, answers } })
    ).answer;
  };
  const counts = async () => {
    const where = { labId: world.app.lab.id };
    const { read } = world.database;
    return Promise.all([
      read.lot.count({ where }),
      read.container.count({ where }),
      read.event.count({ where }),
      read.vessel.count({ where }),
    ]);
  };

  it('with one bad line is refused whole, and everything wrong is named by line', async () => {
    const before = await counts();
    const id = await handIn(fixture('one-bad-line.tsv'));
    const refusal = await problemsOf(id, silica);
    expect(refusal.__typename).toBe('Refusal');
    expect(refusal.message).toMatch(
      /^invalid input\.list: stock\.tsv, 2 problems in 1 line; first line 3: invalid amount: a box/,
    );
    expect(refusal.problems.map(({ line, column, value }) => [line, column, value])).toEqual([
      [3, 'amount', 'a box'],
      [3, 'received', '2026-02-31'],
    ]);
    expect(await counts()).toEqual(before);
  });

  it('mended comes in: opened on its day, shut again unless its lid is off, found by the code it had', async () => {
    const list = `${heading}M-1\tSilica 40–63 µm\tK-9\t500 g\tjar 1 L\t2026-02-02\t2026-02-10\t\twet bench
M-2\tSilica 40–63 µm\tK-9\t500 g\tjar 1 L\t2026-02-02\t2026-02-10\topen\tcold store
M-3\tSilica 40–63 µm\tK-9\t500 g\tjar 1 L\t2026-02-02\t\t\twet bench\n`;
    const { containers, notes, already } = await receive(await handIn(list));
    expect(already).toBe(false);
    expect(containers.map(({ oldCode, isOpen, closure }) => [oldCode, isOpen, closure])).toEqual([
      ['M-1', false, 'WELL_CLOSED'],
      ['M-2', true, 'OPEN'],
      ['M-3', false, 'SEALED'],
    ]);
    // Noon in Helsinki in winter is 10:00 UTC.
    expect(containers[1]).toMatchObject({ openedAt: '2026-02-10T10:00:00.000Z', cameInAt: '2026-02-02T10:00:00.000Z' });
    expect(containers[0]?.dryGrams).toBeCloseTo(500 / 1.03, 6);
    expect(notes[0]).toContain('starting water of 3 containers is unknown');
    const { found } = await world.ask<{ found: { nodes: { label: string }[] } }>(
      '{ found: containers(filter: { search: "m-2" }) { nodes { label } } }',
    );
    expect(found.nodes.map(({ label }) => label)).toEqual([containers[1]?.label]);
    // As if told one by one: the timeline says what happened.
    const { container } = await world.ask<{ container: { timeline: { nodes: { type: string }[] } } }>(
      `{ container(label: "${containers[0]?.label}") { timeline(first: 9) { nodes { type } } } }`,
    );
    expect(container.timeline.nodes.map(({ type }) => type).sort()).toEqual(['CAME_IN', 'CLOSED', 'OPENED']);
  });

  it('that came in already adds nothing, handed in again or told again', async () => {
    const list = `${heading}\tSilica 40–63 µm\tK-10\t500 g\tjar 1 L\t\t\t\twet bench\n`;
    const id = await handIn(list);
    const first = await receive(id);
    const before = await counts();
    expect(await handIn(list)).toBe(id);
    const again = await receive(id);
    expect(again.already).toBe(true);
    expect(again.containers).toEqual(first.containers);
    expect(await counts()).toEqual(before);
    const codes = `${heading}M-1\tSilica 40–63 µm\tK-9\t500 g\tjar 1 L\t2026-02-02\t\t\twet bench\nM-4\tSilica 40–63 µm\tK-9\t500 g\tjar 1 L\t2026-02-02\t\t\twet bench\n`;
    expect((await receive(await handIn(codes))).containers.map(({ oldCode }) => oldCode)).toEqual(['M-4']);
  });

  it('with the headings of one that came in is matched as that one was, and asks nothing again', async () => {
    const head = 'Stoff\tLos\tWieviel\tRaum\n';
    const columns = [
      { column: 0, field: 'SORBENT' },
      { column: 1, field: 'LOT_NUMBER' },
      { column: 2, field: 'AMOUNT' },
      { column: 3, field: 'ROOM' },
    ];
    const answers = {
      columns,
      ...given({
        'unit:AMOUNT': 'g',
        'vessel:250': 'is:jar 500 mL',
        'name:SORBENT:kg 60': 'make:silica',
        'name:ROOM:labor 2': 'make:ROOM',
      }),
    };
    const first = await receive(await handIn(`${head}KG 60\tQ-1\t250\tLabor 2\n`), answers);
    expect(first.containerCount).toBe(1);
    const id = await handIn(`${head}KG 60\tQ-2\t250\tLabor 2\n`);
    const { stockList } = await world.ask<{
      stockList: { isRemembered: boolean; rowCount: number; questions: unknown[] };
    }>(`{ stockList(id: "${id}") { isRemembered rowCount questions { question } } }`);
    expect(stockList).toEqual({ isRemembered: true, rowCount: 1, questions: [] });
    expect((await receive(id)).containerCount).toBe(1);
  });

  it('is taken back whole while nothing happened since, and can come in again', async () => {
    const list = `${heading}T-1\tSilica 40–63 µm\tK-20\t500 g\tjar 1 L\t2026-02-02\t2026-02-10\t\twet bench\nT-2\tSilica 40–63 µm\tK-20\t500 g\tjar 1 L\t2026-02-02\t\t\twet bench\n`;
    const id = await handIn(list);
    const { containers } = await receive(id);
    const [one] = containers;
    const opened = await world.tell('openContainer', { label: one?.label });
    const refusal = await world.refused('takeListBack', { list: id });
    expect(refusal.message).toMatch(
      new RegExp(`^invalid input\\.list: stock\\.tsv, something happened since to ${one?.label}:`),
    );
    await world.tell('correctEvent', { event: opened.event.id, void: true });
    // What was taken back is as if it had never happened.
    expect(await world.tell('takeListBack', { list: id }, 'containerCount')).toMatchObject({ containerCount: 2 });

    const other = await handIn(list.replaceAll('T-', 'U-').replaceAll('K-20', 'K-21'));
    const gone = await receive(other);
    expect(await world.tell('takeListBack', { list: other }, 'containerCount')).toEqual({
      __typename: 'ListTakenBack',
      containerCount: 2,
    });
    const { container } = await world.ask<{ container: unknown }>(
      `{ container(label: "${gone.containers[0]?.label}") { label } }`,
    );
    expect(container).toBeNull();
    const again = await receive(await handIn(list.replaceAll('T-', 'U-').replaceAll('K-20', 'K-21')));
    expect(again.already).toBe(false);
    expect(again.containerCount).toBe(2);
  });

  it('of three hundred lines comes in whole', async () => {
    const rows = Array.from(
      { length: 300 },
      (_, at) => `L-${at}\tSilica 40–63 µm\tL-${at % 40}\t500 g\tjar 1 L\t2026-02-02\t2026-02-10\t\twet bench`,
    );
    const { containerCount } = await receive(await handIn(heading + rows.join('\n')));
    expect(containerCount).toBe(300);
  });
});
