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

/** What somebody does, on which container, with how much, how long ago. */
const doing = fc.record({
  what: fc.constantFrom(
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
  ),
  which: fc.nat(20),
  other: fc.nat(20),
  grams: fc.integer({ min: 1, max: 300 }),
  daysAgo: fc.integer({ min: 0, max: 40 }),
});

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
    await fc.assert(
      fc.asyncProperty(fc.array(doing, { minLength: 4, maxLength: 12 }), async (doings) => {
        const lotNumber = `random ${(lots += 1)}`;
        const labels = [(await drumOf(lotNumber)).label, (await drumOf(`${lotNumber} `.trim())).label];
        const boxLot = `${lotNumber} plates`;
        const received = { lotNumber: boxLot, receivedAt: daysAgo(60) };
        const [box] = await world.came([{ kind: 'PLATE_BOX', plates: 100 }], received);
        const told: string[] = [];
        for (const { what, which, other, grams, daysAgo: ago } of doings) {
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
          const { event, made } =
            (
              answer.data as {
                answer?: Partial<{ event: { id: string }; made: { __typename: string; label: string } }>;
              } | null
            )?.answer ?? {};
          // What cannot be true is refused, and then counts for nothing.
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

  it('comes a page at a time, and says how many lots there are', async () => {
    const ask = (after: string | null) =>
      world.ask<{
        ledger: {
          totalCount: number;
          pageInfo: { hasNextPage: boolean; endCursor: string | null };
          nodes: { lot: { id: string } }[];
        };
      }>(
        `query ($after: String) { ledger(first: 2, after: $after) { totalCount pageInfo { hasNextPage endCursor } nodes { lot { id } } } }`,
        { after },
      );
    const seen: string[] = [];
    let after: string | null = null;
    for (;;) {
      const { ledger }: Awaited<ReturnType<typeof ask>> = await ask(after);
      seen.push(...ledger.nodes.map(({ lot }) => lot.id));
      if (!ledger.pageInfo.hasNextPage) {
        expect(seen).toHaveLength(ledger.totalCount);
        expect(new Set(seen).size).toBe(seen.length);
        return;
      }
      after = ledger.pageInfo.endCursor;
    }
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
