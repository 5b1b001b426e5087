// What decides about ovens, on plain data: hours on days when the clocks change, room on shelves, shares, what follows what.
import { describe, expect, it } from 'vitest';
import { freeOfLoads } from '../../api/ovens/amounts.ts';
import { openings, whenSomebody } from '../../api/ovens/hours.ts';
import { earliest, stepOf, type StepRun } from '../../api/ovens/next-step.ts';
import { stageOf } from '../../api/ovens/request-type.ts';
import {
  checkMay,
  familyOf,
  gramShares,
  plateAreaCm2,
  plateShares,
  trayAreaCm2,
  weighedWater,
} from '../../api/ovens/rules.ts';

const hour = 3_600_000;
const week = [1, 2, 3, 4, 5, 6, 7];
const at = (iso: string): number => Date.parse(iso);
const iso = (ms: number): string => new Date(ms).toISOString();

describe('hours when somebody is there', () => {
  const spans = (days: number[], from: string, to: string, zone: string, begin: string, end: string) =>
    openings([{ days, from, to }], zone, at(begin), at(end)).map(({ fromMs, toMs }) => [iso(fromMs), iso(toMs)]);

  it('follow the wall clock over the day on which the clocks go forward', () => {
    // Helsinki 2026-03-29: 03:00 becomes 04:00; 07:00 is 05:00 UTC before and 04:00 UTC from then on.
    expect(spans(week, '07:00', '19:00', 'Europe/Helsinki', '2026-03-28T00:00:00Z', '2026-03-29T20:00:00Z')).toEqual([
      ['2026-03-28T05:00:00.000Z', '2026-03-28T17:00:00.000Z'],
      ['2026-03-29T04:00:00.000Z', '2026-03-29T16:00:00.000Z'],
    ]);
  });

  it('a night over a change is an hour shorter or longer', () => {
    const length = (day: string) => {
      const [span] = openings(
        [{ days: week, from: '22:00', to: '06:00' }],
        'Europe/Helsinki',
        at(`${day}T21:00:00Z`),
        at(`${day}T22:00:00Z`),
      );
      return span ? (span.toMs - span.fromMs) / hour : null;
    };
    expect([length('2026-03-28'), length('2026-06-01'), length('2026-10-24')]).toEqual([7, 8, 9]);
  });

  it('keep to their days, which are those of the lab and not of the clock in London', () => {
    // Monday in Auckland begins on Sunday noon UTC.
    expect(spans([1], '08:00', '12:00', 'Pacific/Auckland', '2026-05-31T12:00:00Z', '2026-06-06T12:00:00Z')).toEqual([
      ['2026-05-31T20:00:00.000Z', '2026-06-01T00:00:00.000Z'],
    ]);
  });

  it('somebody is there at once or at the next opening', () => {
    const open = [
      { fromMs: 10, toMs: 20 },
      { fromMs: 30, toMs: 40 },
    ];
    expect([5, 15, 25, 50].map((ms) => whenSomebody(open, ms))).toEqual([10, 15, 30, 50]);
  });
});

describe('room on the shelves', () => {
  it('a tray takes grams over density over depth', () => {
    expect(trayAreaCm2(500, 500, 10)).toBeCloseTo(1000, 9);
    expect(trayAreaCm2(500, 950, 10)).toBeCloseTo(526.3, 1);
  });

  it('a 20 × 20 cm plate lies on 400 cm², and stands in a rack on 20 where the shelf is high enough', () => {
    const plate = { plateWidthMm: 200, plateHeightMm: 200, backing: 'GLASS' };
    expect(plateAreaCm2(plate, 90)).toBe(400);
    expect(plateAreaCm2(plate, 240)).toBe(20);
    // Plastic curls: flat on glass or metal.
    expect(plateAreaCm2({ ...plate, backing: 'PLASTIC' }, 240)).toBe(400);
  });

  it.each([
    [100, 1, 200],
    [900, 1, 1800],
    [901, 2, 1802],
    [5000, 6, 10_000],
  ])('%i g are shared out over %i loads, and none is lost', (grams, parts, areaCm2) => {
    const shares = gramShares(grams, areaCm2, { areaCm2: 1800, shelfCm2: 900 });
    expect(shares).toHaveLength(parts);
    expect(shares.reduce((sum, { dryGrams }) => sum + (dryGrams ?? 0), 0)).toBeCloseTo(grams, 9);
    for (const share of shares) expect(share.areaCm2).toBeLessThanOrEqual(1800);
  });

  it('plates are shared out whole and as even as can be, and not at all where not one fits', () => {
    const room = { areaCm2: 1800, shelfCm2: 900 };
    expect(plateShares(10, 400, room).map(({ plates }) => plates)).toEqual([4, 3, 3]);
    expect(plateShares(4, 400, room)).toMatchObject([{ plates: 4, areaCm2: 1600, trays: 2 }]);
    expect(plateShares(1, 2000, room)).toEqual([]);
  });

  it('powder, bonded phases and plates are told apart', () => {
    const of = (kind: string, sorbentClass: string, bondedPhase: string | null = null) =>
      familyOf({ kind, sorbentClass, bondedPhase });
    expect([
      of('DRUM', 'silica'),
      of('PORTION', 'c18'),
      of('DRUM', 'our own', 'phenyl'),
      of('PLATE_BOX', 'silica'),
    ]).toEqual(['BULK', 'BONDED', 'BONDED', 'PLATES']);
  });
});

describe('how much still waits', () => {
  type Request = Parameters<typeof freeOfLoads>[0];
  const load = (state: string, dryGrams: number, containerId: string | null = null, isPinned = false) => ({
    containerId,
    dryGrams,
    plates: null,
    run: { state, isPinned },
  });
  const request = (id: string, dryGrams: number | null, loads: ReturnType<typeof load>[], there = 1000) =>
    ({
      id,
      containerId: 'c',
      dryGrams,
      plates: null,
      loads,
      container: { id: 'c', kind: 'DRUM', dryGrams: there },
    }) as unknown as Request;

  it('is what was asked less what is in an oven, fixed, or done', () => {
    const loads = [
      load('IN_OVEN', 100),
      load('PLANNED', 50, null, true),
      load('PLANNED', 300),
      load('FINISHED', 200, 'own'),
    ];
    expect(freeOfLoads(request('a', 700, loads), [])).toEqual({ dryGrams: 350, plates: null });
  });

  it('of all is what others do not ask for', () => {
    const all = request('a', null, [load('IN_OVEN', 100)]);
    expect(freeOfLoads(all, [all, request('b', 250, [])])).toEqual({ dryGrams: 650, plates: null });
  });

  it('what was interrupted where it was waits again; what was poured waits under its own label', () => {
    expect(freeOfLoads(request('a', 700, [load('INTERRUPTED', 700, 'c')]), [])).toMatchObject({ dryGrams: 700 });
    expect(freeOfLoads(request('a', 700, [load('INTERRUPTED', 300, 'own')]), [])).toMatchObject({ dryGrams: 400 });
  });
});

describe('a run', () => {
  it('is moved on step by step and never out of turn', () => {
    const may = (act: string, state: Parameters<typeof checkMay>[2]) => {
      try {
        checkMay(act, 'r', state);
        return true;
      } catch {
        return false;
      }
    };
    expect(may('start', 'PLANNED')).toBe(true);
    expect(may('start', 'IN_OVEN')).toBe(false);
    expect(may('cooled', 'IN_OVEN')).toBe(false);
    expect(may('finish', 'PLANNED')).toBe(false);
    expect(may('back', 'PLANNED')).toBe(false);
    expect(may('interrupt', 'COOLING')).toBe(false);
  });

  it('speaks for its request by what is furthest on the way', () => {
    expect(stageOf('WAITING', [])).toBe('WAITING');
    expect(stageOf('WAITING', ['PLANNED', 'FINISHED'])).toBe('PLANNED');
    expect(stageOf('WAITING', ['PLANNED', 'IN_OVEN'])).toBe('IN_OVEN');
    expect(stageOf('WAITING', ['COOLED'])).toBe('COOLING');
    expect(stageOf('DRIED', ['IN_OVEN'])).toBe('DRIED');
  });

  it('water by weighing is net grams over dry grams; less than is in it cannot be', () => {
    expect(weighedWater(105, 100, 'x')).toBeCloseTo(0.05, 12);
    expect(weighedWater(99.5, 100, 'x')).toBe(0);
    expect(() => weighedWater(95, 100, 'x')).toThrow(/invalid x: 95, at least the 100 g/);
    expect(() => weighedWater(400, 100, 'x')).toThrow(/without the tray/);
  });

  it('of several the earliest step comes first, in words on the lab’s clock', () => {
    const run: StepRun = {
      id: 'r',
      state: 'PLANNED',
      ovenName: 'drying oven',
      plannedStart: new Date('2026-03-03T08:00:00Z'),
      plannedEnd: new Date('2026-03-03T09:00:00Z'),
      setupMinutes: 0,
      temperatureC: 90,
      dueOutAt: null,
      outAt: null,
      cooledAt: null,
      loads: ['A', 'B', 'C', 'D', 'E'],
    };
    const now = new Date('2026-03-02T12:00:00Z');
    const step = (more: Partial<StepRun>) => stepOf({ ...run, ...more }, now, 'Europe/Helsinki', 30);
    expect(step({})?.sentence).toBe('Tue 3 Mar 10:00: A, B and 3 more into drying oven, 90 °C');
    const out = step({ id: 'o', state: 'IN_OVEN', dueOutAt: new Date('2026-03-02T12:30:00Z'), loads: ['A'] });
    expect(out?.sentence).toBe('14:30: A out of drying oven');
    expect(earliest([step({}), null, out])?.runId).toBe('o');
    expect(step({ state: 'FINISHED' })).toBeNull();
  });
});
