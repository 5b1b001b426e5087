// Ovens over time: hours on the lab's clock also when the clocks change, where a batch stands, where a key moves it, and the words of a request.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stageOf } from '../../admin/dry/stage.ts';
import { priorityWord } from '../../admin/dry/priority.ts';
import { between, dayAfter, openingsOn, weekdayOf, within } from '../../admin/heat/openings.ts';
import { daysWords, hoursRead, hoursWords } from '../../admin/heat/hours-read.ts';
import { ovenInput, ovenTyped } from '../../admin/heat/oven-fields.ts';
import {
  hoursShown,
  movedByKey,
  partsOf,
  placed,
  shownParts,
  stepMs,
  ticksOf,
  weekOf,
  windowOf,
} from '../../admin/heat/picture.ts';
import { movesOf, whenMade } from '../../admin/heat/plan-words.ts';
import type { Load, Oven, Run } from '../../admin/heat/questions.ts';
import { atHand, cautionOf, isPart, locked, noResult, refusedLoad, resultsOf, stepOf } from '../../admin/heat/steps.ts';
import { labelsWords, reachedWords, runSentence } from '../../admin/heat/words.ts';

const zone = 'Europe/Helsinki';
const hour = 3_600_000;
const ms = (at: string): number => Date.parse(at);

const load = (more: object = {}): Load => ({
  ...{ id: 'L1', part: 1, parts: 1, dryGrams: 120, plates: null, trays: 2, depthMm: 10 },
  ...{ waterFraction: null, isWeighed: false, request: { id: 'R1', wantedBy: null, priority: 2 } },
  container: {
    ...{ label: '58F-J5H', kind: 'PORTION', dryGrams: 120, sorbent: { name: 'Silica', sorbentClass: 'silica' } },
    ...{ solventWetAt: null, touchedSolventAt: null },
  },
  ...more,
});

/** At 08:00 to 09:00 in Helsinki on a winter's day, set half an hour before. */
const run = (more: object = {}): Run => ({
  ...{ id: 'run', oven: { id: 'O1', name: 'vacuum oven', kind: 'VACUUM' }, state: 'PLANNED', isPinned: false },
  ...{ start: '2026-11-26T06:00:00Z', end: '2026-11-26T07:00:00Z', setAt: '2026-11-26T05:30:00Z' },
  ...{ plannedStart: '2026-11-26T06:00:00Z', plannedEnd: '2026-11-26T07:00:00Z', temperatureC: 130 },
  ...{ setupMinutes: 30, leastMinutes: 60, mostMinutes: 960, isVacuum: true, reason: '', startedAt: null, doorAt: [] },
  ...{ outAt: null, coolMinutes: 30, cooledAt: null, endedAt: null, why: null, minutesLate: 0 },
  loads: [load()],
  ...more,
});

const workdays = [{ days: [1, 2, 3, 4, 5], from: '07:00', to: '19:00' }];
const oven: Oven = {
  ...{ id: 'O1', name: 'vacuum oven', kind: 'VACUUM', room: { name: 'wet bench' }, shelves: 2, shelfAreaCm2: 900 },
  ...{ areaCm2: 1800, shelfHeightMm: 90, hasFan: false, lowestC: 30, highestC: 200, heatMinutesPerC: 0.5 },
  ...{
    coolMinutesPerC: 1,
    doorMinutes: 5,
    pressureMbar: 20,
    pumpM3PerH: null,
    isUnattended: true,
    hours: workdays,
    hasOwnHours: true,
  },
  ...{ care: [], outOfOrder: null },
};

describe('hours on the lab’s clock', () => {
  it('are as long as the clock says, also on the days when the clocks change', () => {
    const all = [{ days: [1, 2, 3, 4, 5, 6, 7], from: '00:00', to: '12:00' }];
    const long = (day: string) => openingsOn(all, day, zone).reduce((sum, { fromMs, toMs }) => sum + toMs - fromMs, 0);
    // Helsinki sets its clocks on at 03:00 on 29 March 2026, and back at 04:00 on 25 October 2026.
    expect(long('2026-03-28')).toBe(12 * hour);
    expect(long('2026-03-29')).toBe(11 * hour);
    expect(long('2026-10-25')).toBe(13 * hour);
  });

  it('over midnight belong to the day on which they begin', () => {
    const night = [{ days: [5], from: '22:00', to: '02:00' }];
    expect(openingsOn(night, '2026-11-27', zone)).toHaveLength(1);
    expect(openingsOn(night, '2026-11-28', zone)[0]?.toMs).toBe(ms('2026-11-28T00:00:00Z'));
    expect(openingsOn(night, '2026-11-29', zone)).toEqual([]);
  });

  it('and the gaps between them make up the whole', () => {
    const whole = { fromMs: 0, toMs: 100 };
    const spans = [
      { fromMs: 10, toMs: 30 },
      { fromMs: 20, toMs: 50 },
      { fromMs: 90, toMs: 120 },
    ];
    expect(between(spans, whole)).toEqual([
      { fromMs: 0, toMs: 10 },
      { fromMs: 50, toMs: 90 },
    ]);
    expect(within(spans, whole).every(({ fromMs, toMs }) => fromMs >= 0 && toMs <= 100)).toBe(true);
  });

  it('a week runs from Monday to Sunday and holds its day', () => {
    const week = weekOf('2026-11-26');
    expect(week.map(weekdayOf)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(week).toContain('2026-11-26');
    expect(weekOf('2026-11-29')).toEqual(week);
    expect(dayAfter('2026-12-31', 1)).toBe('2027-01-01');
  });
});

describe('the picture', () => {
  it('shows an hour around the hours in which somebody is there', () => {
    expect(hoursShown([oven], [], ['2026-11-26'], zone)).toEqual({ from: 6, to: 20 });
  });
  it('grows for a batch that begins earlier, and never beyond the day', () => {
    const early = run({ start: '2026-11-26T01:00:00Z', end: '2026-11-26T22:30:00Z' });
    expect(hoursShown([oven], [early], ['2026-11-26'], zone)).toEqual({ from: 2, to: 20 });
  });
  it('sets before the batch and cools after it, end to end', () => {
    const parts = partsOf(run());
    expect(parts.map(({ name }) => name)).toEqual(['set', 'in', 'cool']);
    parts.slice(1).forEach((part, i) => expect(part.fromMs).toBe(parts[i]?.toMs));
    expect(partsOf(run({ state: 'INTERRUPTED', setupMinutes: 0 })).map(({ name }) => name)).toEqual(['in']);
  });
  it('a batch over the edge of the window is cut there and says so', () => {
    const window = windowOf('2026-11-26', { from: 6, to: 20 }, zone);
    const night = run({ start: '2026-11-26T16:00:00Z', end: '2026-11-27T05:00:00Z' });
    const part = shownParts(night, window).find(({ name }) => name === 'in');
    expect(part?.after).toBe(true);
    expect((part?.left ?? 0) + (part?.width ?? 0)).toBeCloseTo(100);
    expect(placed(window, window)).toEqual({ left: 0, width: 100 });
  });
  it('its hours stand where the clock shows them', () => {
    const ticks = ticksOf('2026-11-26', { from: 6, to: 20 }, zone);
    expect(ticks.map(({ words }) => words)).toEqual(['06', '08', '10', '12', '14', '16', '18']);
    expect(ticks[3]?.left).toBeCloseTo((100 * 6) / 14);
  });
});

describe('a batch under the keys', () => {
  const place = { ovenId: 'O1', startMs: ms('2026-11-26T06:05:00Z') };
  it('goes to the next quarter of an hour, and back to the one before', () => {
    expect(movedByKey(place, 'ArrowRight', false, ['O1'])?.startMs).toBe(ms('2026-11-26T06:15:00Z'));
    expect(movedByKey(place, 'ArrowLeft', false, ['O1'])?.startMs).toBe(ms('2026-11-26T06:00:00Z'));
    const there = movedByKey(place, 'ArrowRight', false, ['O1']) ?? place;
    expect(movedByKey(there, 'ArrowRight', true, ['O1'])?.startMs).toBe(there.startMs + 4 * stepMs);
  });
  it('changes the oven up and down, and stays in the last one', () => {
    expect(movedByKey(place, 'ArrowDown', false, ['O1', 'O2'])?.ovenId).toBe('O2');
    expect(movedByKey({ ...place, ovenId: 'O2' }, 'ArrowDown', false, ['O1', 'O2'])?.ovenId).toBe('O2');
    expect(movedByKey(place, 'Home', false, ['O1'])).toBeNull();
  });
});

describe('a run by the oven', () => {
  it('asks for one click after the other', () => {
    const words = (['PLANNED', 'IN_OVEN', 'COOLING', 'COOLED'] as const).map(
      (state) => stepOf({ state })?.words ?? null,
    );
    expect(words).toEqual(['Started: door closed', 'Out of the oven', 'Cooled', null]);
  });
  it('is locked by plates that are wet with solvent and by sorbent that touched it', () => {
    const wet = load({
      container: { ...load().container, label: 'PLT-1', kind: 'PLATE_BOX', solventWetAt: '2026-11-25T16:00:00Z' },
    });
    const used = load({ container: { ...load().container, touchedSolventAt: '2026-11-25T16:00:00Z' } });
    expect(locked({ loads: [wet] })[0]?.why).toMatch(/wet with solvent/);
    expect(locked({ loads: [used] })[0]?.why).toMatch(/never goes to the oven/);
    expect(locked({ loads: [load()] })).toEqual([]);
  });
  it('says what to mind at each step, and never that alumina got grade I', () => {
    expect(cautionOf(run())).toMatch(/Shield the glass/);
    expect(cautionOf(run({ state: 'IN_OVEN' }))).toMatch(/Heat gloves.*not sealed at once/);
    const alumina = load({ container: { ...load().container, sorbent: { name: 'Alumina', sorbentClass: 'alumina' } } });
    expect(cautionOf(run({ state: 'COOLING', loads: [alumina] }))).toMatch(/does not make grade I/);
    expect(cautionOf(run({ state: 'COOLED' }))).toBe('');
  });
  it('is asked for soonest first: all that are under way, and the next of each oven', () => {
    const later = run({ id: 'later', start: '2026-11-26T08:00:00Z' });
    const other = run({
      id: 'other',
      oven: { id: 'O2', name: 'drying oven', kind: 'AIR' },
      start: '2026-11-26T09:00:00Z',
    });
    const cooling = run({
      id: 'cooling',
      state: 'COOLING',
      start: '2026-11-26T04:00:00Z',
      end: '2026-11-26T04:30:00Z',
    });
    const done = run({ id: 'done', state: 'FINISHED' });
    expect(atHand([later, other, run(), cooling, done], new Date('2026-11-26T05:00:00Z')).map(({ id }) => id)).toEqual([
      'cooling',
      'run',
      'other',
    ]);
  });
});

describe('results', () => {
  const typed = (more: object) => ({ L1: { ...noResult, ...more } });
  it('weighed or measured are told, and of the rest the model speaks', () => {
    expect(resultsOf([load()], {}).results).toEqual([]);
    expect(resultsOf([load()], typed({ how: 'weighed', grams: '120,5' })).results).toEqual([
      { load: 'L1', netGrams: 120.5 },
    ]);
    expect(resultsOf([load()], typed({ how: 'water', percent: '0.4' })).results).toEqual([
      { load: 'L1', waterFraction: 0.004 },
    ]);
    expect(resultsOf([load()], typed({ vessel: 'jar' })).results).toEqual([{ load: 'L1', vessel: 'jar' }]);
  });
  it('that are no number say what would be one', () => {
    expect(resultsOf([load()], typed({ how: 'weighed', grams: 'much' })).wrong['L1']).toMatch(/such as/);
  });
  it('refused are shown beside their load', () => {
    expect(refusedLoad('input.results.0.netGrams', [{ load: 'L1' }])).toBe('L1');
    expect(refusedLoad('input.run', [{ load: 'L1' }])).toBeNull();
  });
  it('of some of a container ask where it goes', () => {
    expect(isPart(load())).toBe(false);
    expect(isPart(load({ dryGrams: 60 }))).toBe(true);
  });
  it('of an interrupted run say the water reached', () => {
    const reached = [{ waterFraction: 0.0237, container: { label: '58F-J5H' } }];
    expect(reachedWords(reached)).toBe('Interrupted: 58F-J5H reached 2.37\u00a0% water');
  });
});

describe('words', () => {
  const clock = { now: new Date('2026-11-26T05:00:00Z'), zone };
  it('a run is one sentence for who does not see the picture', () => {
    expect(runSentence(run(), clock)).toBe(
      'vacuum oven, 08:00 to 09:00, 130 °C: 58F-J5H; planned, set 30 min before, then 30 min to cool',
    );
  });
  it('many labels are a few and how many more', () => {
    const loads = ['A', 'B', 'C', 'D'].map((label) => load({ container: { ...load().container, label } }));
    expect(labelsWords({ loads })).toBe('A, B and 2 more');
  });
  it.each([
    [[run()], 'planned 08:00, vacuum oven'],
    [[run({ minutesLate: 20 })], 'planned 08:00, vacuum oven, not begun yet'],
    [[run(), run({ id: 'in', state: 'IN_OVEN' })], 'in vacuum oven until 09:00, in 2 runs'],
    [[run({ state: 'COOLING' })], 'cooling until 09:30'],
    [[], 'waiting'],
  ])('a request with %# says where it is', (runs, words) => {
    expect(stageOf('R1', runs, clock).words).toBe(words);
  });
  it('a plan says what moved and why, and how much is new', () => {
    const from = { oven: 'vacuum oven', start: '2026-11-26T06:00:00Z' };
    const changes = [
      { label: 'A', from, sentence: 'A: from … to …, since it was not started then' },
      { label: 'B', from: null, sentence: 'B: …, new' },
    ];
    expect(movesOf({ changes }).moved).toEqual(['A: from … to …, since it was not started then.']);
    expect(whenMade({ because: 'a run was fixed', changes })).toBe(', since a run was fixed: 1 load new, 1 moved');
    expect(whenMade({ because: 'asked for', changes: [] })).toBe('');
  });
  it('how soon is said in a word', () => {
    expect([1, 2, 4, 8].map(priorityWord)).toEqual(['can wait', 'usual', 'soon', 'first']);
  });
  it('days in a row are said by their ends', () => {
    expect(daysWords([1, 2, 3, 4, 5])).toBe('Mon to Fri');
    expect(daysWords([6, 1, 3])).toBe('Mon, Wed, Sat');
  });
});

describe('the form of an oven', () => {
  it('tells back what stands there already', () => {
    const input = ovenInput({ ...ovenTyped(oven), attended: false });
    expect(input).toMatchObject({ name: 'vacuum oven', kind: 'VACUUM', isUnattended: true, hours: workdays });
    expect(input).not.toHaveProperty('when');
  });
  it('several spans a day, and days apart, are said in a line and read back as they were', () => {
    const hours = [
      { days: [1, 2, 3, 4, 5], from: '07:00', to: '12:00' },
      { days: [1, 2, 3, 4, 5], from: '13:00', to: '18:00' },
      { days: [6], from: '08:00', to: '12:00' },
    ];
    expect(hoursWords(hours)).toBe('Mon to Fri 07:00 to 12:00, 13:00 to 18:00; Sat 08:00 to 12:00');
    const typed = ovenTyped({ ...oven, hours });
    expect(typed['when']).toBe('several');
    expect(ovenInput({ ...typed, attended: false })).toMatchObject({ hours });
    const days = fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1 });
    const clock = fc.integer({ min: 0, max: 1439 }).map((m) => new Date(m * 60_000).toISOString().slice(11, 16));
    const spans = fc.array(
      fc.record({ days: days.map((some) => some.sort((a, b) => a - b)), from: clock, to: clock }),
      { minLength: 1, maxLength: 6 },
    );
    const sorted = (some: readonly object[]) => some.map((one) => JSON.stringify(one)).sort();
    fc.assert(
      fc.property(spans, (some) => {
        fc.pre(some.every(({ from, to }) => from !== to));
        const read = hoursRead(hoursWords(some));
        expect(typeof read === 'string' ? read : sorted(read)).toEqual(sorted(some));
      }),
    );
  });
  it('hours are read as people write them, and what is not hours says what would be', () => {
    const early = [{ days: [1, 2, 3, 4, 5], from: '07:00', to: '12:00' }];
    expect(hoursRead('monday-friday 7-12')).toEqual(early);
    expect(hoursRead('Every day: 0600 – 22:30')).toEqual([{ days: [1, 2, 3, 4, 5, 6, 7], from: '06:00', to: '22:30' }]);
    expect(hoursRead('Fri to Mon 8 to 9')).toEqual([{ days: [1, 5, 6, 7], from: '08:00', to: '09:00' }]);
    expect(hoursRead('Mon 7 to 25')).toBe('“7 to 25”: hours such as 07:00 to 12:00');
    expect(hoursRead('sometimes 7 to 12')).toMatch(/^“sometimes”: days such as/);
    expect(hoursRead('Mon')).toMatch(/^“Mon”: days such as/);
  });
  it('the lab’s working hours are told as none of its own', () => {
    expect(ovenInput({ ...ovenTyped({ ...oven, hasOwnHours: false }), kind: 'AIR', hasFan: true })).toMatchObject({
      hours: null,
      hasFan: true,
    });
  });
});
