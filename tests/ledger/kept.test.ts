// The ledger as it is kept and asked for: it says what the containers say, whatever is told, put right or told late.
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import type { AddressInfo } from 'node:net';
import { beforeAll, expect, it } from 'vitest';
import { serverOf } from '../../api/http.ts';
import { weeklyUse } from '../../api/ledger/service.ts';
import { amount } from '../support/amount.ts';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';

const figures = 'opening cameIn filled taken packed usedUp putBack used writtenOff lost spentOnChecks counted onHand';
interface Figures {
  opening: number;
  cameIn: number;
  filled: number;
  taken: number;
  packed: number;
  putBack: number;
  used: number;
  writtenOff: number;
  lost: number;
  spentOnChecks: number;
  counted: number;
  onHand: number;
}
interface Stock {
  kind: string;
  asReceivedPerDry: number | null;
  shelf: Figures;
  takenOut: Figures;
  whole: Figures;
  weeks: { week: string; shelf: Figures; whole: Figures }[];
  reasons: { account: string; why: string | null; amount: number; events: number }[];
  lines: { nodes: { account: string; dryGrams: number; event: { id: string; sentence: string } }[] };
}

const query = `query ($lot: String, $from: String, $until: String) { ledger(lot: $lot, from: $from, until: $until) {
  totalCount nodes { kind asReceivedPerDry shelf { ${figures} } takenOut { ${figures} } whole { ${figures} }
    weeks { week shelf { ${figures} } whole { ${figures} } } reasons { account why amount events }
    lines(first: 200) { nodes { account dryGrams event { id sentence } } } } } }`;

const vessel = { innerDiameterMm: 80, heightMm: 120 };
const balanceOf = (of: Figures): number =>
  of.opening + of.cameIn + of.filled - of.used - of.writtenOff - of.lost - of.spentOnChecks + of.counted;

const acts = [
  'takePortion',
  'keepPortion',
  'packColumn',
  'recordLoss',
  'spendOnCheck',
  'recordCount',
  'combineContainers',
  'discardContainer',
  'takePlates',
  'void',
  'regram',
] as const;
type What = (typeof acts)[number];

/** What somebody does, on which container, with how much, how long ago. */
const doing = (what: fc.Arbitrary<What>) =>
  fc.record({
    what,
    which: fc.nat(20),
    other: fc.nat(20),
    grams: fc.integer({ min: 1, max: 300 }),
    daysAgo: fc.integer({ min: 0, max: 40 }),
  });
/** Every kind of act once in random order, and some more of any. */
const doings = fc
  .tuple(
    fc.shuffledSubarray([...acts], { minLength: acts.length }),
    fc.array(doing(fc.constantFrom(...acts)), { maxLength: 5 }),
  )
  .chain(([each, more]) => fc.tuple(...each.map((what) => doing(fc.constant(what)))).map((all) => [...all, ...more]));

describeEngines('the ledger', (on) => {
  let world: World;
  beforeAll(async () => {
    world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
  });

  const stocksOf = async (lot: string, span: { from?: string; until?: string } = {}): Promise<Stock[]> =>
    (await world.ask<{ ledger: { nodes: Stock[] } }>(query, { lot, ...span })).ledger.nodes;
  const stockOf = async (lot: string, span = {}): Promise<Stock> => {
    const [stock] = await stocksOf(lot, span);
    if (!stock) throw new Error(`no lot ${lot} in the ledger`);
    return stock;
  };
  const drumOf = (lotNumber: string, grams = 1000, more = {}) =>
    world.drum(grams, { basis: 'DRY' }, { lotNumber, receivedAt: world.ago(60 * 24 * 60), ...more });
  const daysAgo = (days: number): Date => world.ago(days * 24 * 60);

  it('says what the containers hold, sorbent and plates, over lists of acts, corrections and late entries', async () => {
    let lots = 0;
    const [asked, taken] = [new Map<string, number>(), new Map<string, number>()];
    const more = (of: Map<string, number>, what: string) => of.set(what, (of.get(what) ?? 0) + 1);
    await fc.assert(
      fc.asyncProperty(doings, async (list) => {
        const lotNumber = `random ${(lots += 1)}`;
        const labels = [(await drumOf(lotNumber)).label, (await drumOf(`${lotNumber} `.trim())).label];
        const boxLot = `${lotNumber} plates`;
        const received = { lotNumber: boxLot, receivedAt: daysAgo(60) };
        const [box] = await world.came([{ kind: 'PLATE_BOX', plates: 100 }], received);
        const told: string[] = [];
        for (const { what, which, other, grams, daysAgo: ago } of list) {
          const [label, into] = [labels[which % labels.length], labels[other % labels.length]];
          const at = daysAgo(ago);
          const about = { label, at, grams, basis: 'DRY' };
          const [mutation, input] =
            what === 'void'
              ? (['correctEvent', { event: told[which % told.length] ?? '', void: true }] as const)
              : what === 'regram'
                ? ([
                    'correctEvent',
                    { event: told[which % told.length] ?? '', replacement: { grams, basis: 'DRY' } },
                  ] as const)
                : what === 'keepPortion'
                  ? (['takePortion', { ...about, ...vessel }] as const)
                  : what === 'packColumn'
                    ? ([what, { ...about, innerDiameterMm: 20, bedLengthMm: 150 }] as const)
                    : what === 'combineContainers'
                      ? ([what, { label, into, at }] as const)
                      : what === 'discardContainer'
                        ? ([what, { label, at, why: 'too old' }] as const)
                        : what === 'takePlates'
                          ? ([what, { label: box?.label, plates: grams % 9, at }] as const)
                          : ([what, about] as const);
          const answer = await world.post(
            `mutation ($input: ${mutation[0]?.toUpperCase()}${mutation.slice(1)}Input!) { answer: ${mutation}(input: $input) {
               ... on Recorded { event { id } made { __typename label } } } }`,
            { input },
          );
          // A refusal is an answer; anything else that is wrong is not.
          expect(answer.errors).toBeUndefined();
          const { event, made } =
            (
              answer.data as {
                answer?: Partial<{ event: { id: string }; made: { __typename: string; label: string } }>;
              } | null
            )?.answer ?? {};
          // What cannot be true is refused, and then counts for nothing.
          more(asked, what);
          if (event) more(taken, what);
          if (event && what !== 'void') told.push(event.id);
          if (made?.__typename === 'Portion') labels.push(made.label);
        }
        const { lots: all } = await world.ask<{
          lots: {
            nodes: { lotNumber: string; containers: { __typename: string; dryGrams: number; plates?: number }[] }[];
          };
        }>(
          '{ lots(first: 200) { nodes { lotNumber containers { __typename dryGrams ... on PlateBox { plates } } } } }',
        );
        for (const lot of [lotNumber, boxLot]) {
          const containers = all.nodes.find((one) => one.lotNumber === lot)?.containers ?? [];
          const holds = containers.filter(({ __typename }) => __typename !== 'Column');
          const there = holds.reduce(
            (sum, { dryGrams, plates }) => sum + (lot === boxLot ? (plates ?? 0) : dryGrams),
            0,
          );
          const stock = await stockOf(lot);
          expect(Math.abs(stock.whole.onHand - there)).toBeLessThan(1e-6);
          const weeks = stock.weeks.flatMap(({ shelf, whole }) => [shelf, whole]);
          for (const of of [stock.shelf, stock.takenOut, stock.whole, ...weeks])
            expect(Math.abs(balanceOf(of) - of.onHand)).toBeLessThan(1e-6);
          expect(stock.shelf.onHand + stock.takenOut.onHand).toBeCloseTo(stock.whole.onHand, 6);
          for (const [at, { whole }] of stock.weeks.entries())
            expect(whole.opening).toBeCloseTo(stock.weeks[at - 1]?.whole.onHand ?? 0, 6);
        }
      }),
      { numRuns: amount(3, 60), seed: 20_260_302 },
    );
    // Lists of acts that nobody took would say nothing.
    const whole = (of: Map<string, number>): number => [...of.values()].reduce((sum, count) => sum + count, 0);
    expect(whole(taken)).toBeGreaterThan(whole(asked) / 2);
    expect([...taken.keys()].sort()).toEqual([...acts].sort());
  }, 600_000);

  it('forgets an event that was corrected, and counts what stands instead', async () => {
    const { label } = await drumOf('C-1');
    const { event } = await world.tell('takePortion', { label, grams: 100, basis: 'DRY', at: daysAgo(9) });
    expect((await stockOf('C-1')).shelf.used).toBeCloseTo(100, 9);
    const put = await world.tell('correctEvent', { event: event.id, replacement: { grams: 40, basis: 'DRY' } });
    expect((await stockOf('C-1')).shelf).toMatchObject({ used: 40, onHand: 960 });
    await world.tell('correctEvent', { event: put.event.id, void: true });
    expect((await stockOf('C-1')).shelf).toMatchObject({ used: 100, onHand: 900 });
    await world.tell('correctEvent', { event: event.id, void: true });
    const { shelf, lines } = await stockOf('C-1');
    expect(shelf).toMatchObject({ used: 0, onHand: 1000 });
    expect(lines.nodes.map(({ account }) => account)).toEqual(['CAME_IN']);
  });

  it('tells weeks on the lab’s clock, Monday to Sunday, and opens one down to its events', async () => {
    const { label } = await drumOf('W-1');
    // 22:30 UTC on a Sunday is 00:30 on Monday in Helsinki.
    await world.tell('takePortion', { label, grams: 10, basis: 'DRY', at: new Date('2026-02-08T21:30:00Z') });
    await world.tell('takePortion', { label, grams: 20, basis: 'DRY', at: new Date('2026-02-08T22:30:00Z') });
    const { weeks } = await stockOf('W-1', { from: '2026-02-04', until: '2026-02-10' });
    expect(weeks.map(({ week, shelf }) => [week, shelf.opening, shelf.used, shelf.onHand])).toEqual([
      ['2026-02-02', 1000, 10, 990],
      ['2026-02-09', 990, 20, 970],
    ]);
    const { ledger } = await world.ask<{ ledger: { nodes: Stock[] } }>(
      `{ ledger(lot: "W-1") { nodes { lines(week: "2026-02-11", account: TAKEN) { nodes { account dryGrams event { id sentence } } } } } }`,
    );
    expect(ledger.nodes[0]?.lines.nodes).toMatchObject([
      { account: 'TAKEN', dryGrams: -20, event: { sentence: '20 g (dry) taken' } },
    ]);
  });

  it('says why it was written off and lost, and shows it as received by the water it came in with', async () => {
    const { label } = await drumOf('R-1', 1100, { certificateWaterPercent: 10, certificateBasis: 'AS_RECEIVED' });
    await world.tell('recordLoss', { label, grams: 5, basis: 'DRY', at: daysAgo(5), why: 'in drying' });
    await world.tell('recordLoss', { label, grams: 6, basis: 'DRY', at: daysAgo(4), why: 'in drying' });
    await world.tell('discardContainer', { label, grams: 50, basis: 'DRY', at: daysAgo(3), why: 'wet' });
    const { reasons, asReceivedPerDry, shelf } = await stockOf('R-1');
    expect(reasons).toEqual([
      { account: 'WRITTEN_OFF', why: 'wet', amount: 50, events: 1 },
      { account: 'LOST', why: 'in drying', amount: 11, events: 2 },
    ]);
    expect(asReceivedPerDry).toBeCloseTo(10 / 9, 6);
    expect(shelf).toMatchObject({ lost: 11, writtenOff: 50, onHand: 1039 });
  });

  it('gives the use of each item a week, up to the last whole one, and what came back is no use', async () => {
    await world.tell('addSorbent', { name: 'Alumina', sorbentClass: 'alumina' }, '__typename');
    const { label } = await drumOf('U-1', 2000, { sorbent: 'Alumina', receivedAt: new Date('2026-02-03T10:00:00Z') });
    const at = (day: number): Date => new Date(Date.UTC(2026, 1, day, 10));
    await world.tell('takePortion', { label, grams: 100, basis: 'DRY', at: at(4) });
    const kept = await world.tell('takePortion', { label, grams: 200, basis: 'DRY', at: at(17), ...vessel });
    await world.tell('combineContainers', { label: kept.made?.label, into: label, at: at(24) });
    await world.tell('spendOnCheck', { label, grams: 10, basis: 'DRY', at: at(25), what: 'two dyes' });
    // A week that has begun is not in it yet.
    await world.tell('takePortion', { label, grams: 70, basis: 'DRY', at: new Date('2026-03-02T10:00:00Z') });
    const alumina = await world.database.read.sorbent.findFirstOrThrow({
      where: { labId: world.app.lab.id, name: 'Alumina' },
    });
    const use = (await weeklyUse(await world.context())).filter(({ sorbentId }) => sorbentId === alumina.id);
    expect(use).toEqual([{ sorbentId: alumina.id, isPlates: false, firstWeek: '2026-02-02', weeks: [100, 0, 0, 0] }]);
  });

  it('comes a page at a time either way, and says how many lots there are', async () => {
    for (const lot of ['P-1', 'P-2', 'P-3', 'P-4', 'P-5']) await drumOf(lot);
    interface Page {
      totalCount: number;
      pageInfo: {
        hasNextPage: boolean;
        hasPreviousPage: boolean;
        startCursor: string | null;
        endCursor: string | null;
      };
      nodes: { lot: { lotNumber: string } }[];
    }
    const ask = async (args: string): Promise<Page> =>
      (
        await world.ask<{ ledger: Page }>(`{ ledger(${args}) { totalCount
          pageInfo { hasNextPage hasPreviousPage startCursor endCursor } nodes { lot { lotNumber } } } }`)
      ).ledger;
    const lots = ({ nodes }: Page): string[] => nodes.map(({ lot }) => lot.lotNumber);
    const { totalCount, ...all } = await ask('first: 200');
    expect(totalCount).toBeGreaterThanOrEqual(5);
    expect(lots({ totalCount, ...all })).toHaveLength(totalCount);
    const seen: string[] = [];
    for (let page = await ask('first: 2'); ; page = await ask(`first: 2, after: "${page.pageInfo.endCursor}"`)) {
      expect(page.nodes.length).toBeGreaterThan(0);
      expect(page.totalCount).toBe(totalCount);
      seen.push(...lots(page));
      expect(page.pageInfo.hasNextPage).toBe(seen.length < totalCount);
      if (!page.pageInfo.hasNextPage) break;
    }
    expect(seen).toEqual(lots({ totalCount, ...all }));
    const last = await ask('last: 2');
    expect(lots(last)).toEqual(seen.slice(-2));
    expect(last.pageInfo).toMatchObject({ hasNextPage: false, hasPreviousPage: true });
    const before = await ask(`last: 2, before: "${last.pageInfo.startCursor}"`);
    expect(lots(before)).toEqual(seen.slice(-4, -2));
    expect(before.pageInfo.hasNextPage).toBe(true);
  });

  it('goes on behind a lot that is gone meanwhile', async () => {
    await drumOf('gone');
    const found = async (after = ''): Promise<{ cursor: string; lot: string }[]> => {
      const { ledger } = await world.ask<{
        ledger: { edges: { cursor: string; node: { lot: { lotNumber: string } } }[] };
      }>(`{ ledger(first: 200${after}) { edges { cursor node { lot { lotNumber } } } } }`);
      return ledger.edges.map(({ cursor, node }) => ({ cursor, lot: node.lot.lotNumber }));
    };
    const all = await found();
    const at = all.findIndex(({ lot }) => lot === 'gone');
    const [came] = (await stockOf('gone')).lines.nodes;
    await world.tell('correctEvent', { event: came?.event.id, void: true });
    const rest = await found(`, after: "${all[at]?.cursor}"`);
    expect(rest.map(({ lot }) => lot)).toEqual(all.slice(at + 1).map(({ lot }) => lot));
    expect((await found()).map(({ lot }) => lot)).not.toContain('gone');
  });

  it('takes up a delivery of more containers than go into one transaction', async () => {
    await stocksOf('many');
    const received = { lotNumber: 'many', receivedAt: daysAgo(3) };
    const containers = await world.came(
      Array.from({ length: 70 }, () => ({
        kind: 'DRUM',
        grams: 10,
        basis: 'DRY',
        innerDiameterMm: 120,
        heightMm: 250,
      })),
      received,
    );
    await world.tell('recordLoss', { label: containers[69]?.label, grams: 4, basis: 'DRY', why: 'spilled' });
    expect((await stockOf('many')).shelf).toMatchObject({ cameIn: 700, lost: 4, onHand: 696 });
  });

  async function get(path: string): Promise<{ status: number; text: string; type: string | null }> {
    const server = serverOf(world.app, '/nowhere');
    await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
    const { port } = server.address() as AddressInfo;
    const response = await fetch(`http://127.0.0.1:${port}${path}`);
    const text = await response.text();
    server.close();
    server.closeAllConnections();
    return { status: response.status, text, type: response.headers.get('content-type') };
  }

  it('is there as CSV and JSON, week by week, lot by lot and event by event', async () => {
    const { label } = await drumOf('=D-1');
    await world.tell('takePortion', { label, grams: 25, basis: 'DRY', at: new Date('2026-02-11T10:00:00Z') });
    const csv = await get('/ledger.csv?lot=%3DD-1');
    expect(csv.type).toContain('text/csv');
    // A lot number that a spreadsheet would take for a formula is kept from being one.
    expect(csv.text).toContain("'=D-1");
    const rows = parse<Record<string, string>>(csv.text, { columns: true });
    expect(rows.at(-1)).toMatchObject({ week: '2026-02-09', used: '25', onHand: '975', unit: 'dry g' });
    const lots = JSON.parse((await get('/ledger.json?lot=%3DD-1&by=lot')).text) as Record<string, unknown>[];
    expect(lots).toMatchObject([{ lot: '=D-1', cameIn: 1000, used: 25, onHand: 975 }]);
    const events = JSON.parse((await get('/ledger.json?lot=%3DD-1&by=event&place=whole')).text) as {
      account: string;
    }[];
    expect(events.map(({ account }) => account)).toEqual(['CAME_IN', 'TAKEN']);
    const wrong = await get('/ledger.csv?from=yesterday');
    expect(wrong.status).toBe(400);
    expect(wrong.text).toContain('invalid from: yesterday, a day such as 2026-03-02');
    expect((await get('/ledger.json?item=chalk')).text).toContain('unknown item: chalk');
  });
});
