// A container's page without its pictures: what if, lineage, events on the plot, weighings, the order of what to dry.
import { describe, expect, it } from 'vitest';
import { dryingCaution, ovenCaution } from '../../admin/act/cautions.ts';
import { arithmeticWords, massesOf, placeOf, withRoom } from '../../admin/act/weighings.ts';
import { driedFields, driedInput, recipeWords } from '../../admin/dry/dried.ts';
import { beforeOf, moved, placeAt, placeWords } from '../../admin/dry/order.ts';
import type { Request } from '../../admin/dry/questions.ts';
import { eventNear, happenedAt } from '../../admin/expose/course.ts';
import { usedWords } from '../../admin/expose/habits.ts';
import { treeOf, type Kin } from '../../admin/expose/lineage.ts';
import type { Relation } from '../../admin/expose/questions.ts';
import { askedOf, instantAt, supposedWords, wouldWords, type Supposed } from '../../admin/expose/what-if.ts';
import { latestOnly } from '../../admin/latest.ts';

const now = new Date('2026-03-04T09:07:00Z');
const clock = { now, zone: 'Europe/Helsinki' };
const slid = (more: Partial<Supposed>): Supposed => {
  const oven = { temperatureC: 130, minutes: 60, depthMm: 10, isVacuum: true };
  return { way: 'closed', quarters: 0, isMixed: false, ...oven, room: 'cold store', ...more };
};
const open = { isOpen: true, usualClosure: 'OPEN' } as const;

describe('what if', () => {
  it('sliders stop at full quarters of an hour on the clock, and first of all now', () => {
    expect(instantAt(0, now)).toEqual(now);
    expect(instantAt(1, now).toISOString()).toBe('2026-03-04T09:15:00.000Z');
    expect(instantAt(4, now).toISOString()).toBe('2026-03-04T10:00:00.000Z');
  });
  it('“closed at 12:00 and mixed” mixes, closes with a lid, and tells the instant just after', () => {
    const { events, report, until } = askedOf(slid({ quarters: 4, isMixed: true }), open, now);
    const at = '2026-03-04T10:00:00.000Z';
    expect(events).toEqual([
      { type: 'MIXED', at },
      { type: 'CLOSED', at, closure: 'WELL_CLOSED' },
    ]);
    expect(report).toEqual([at]);
    expect(Date.parse(until)).toBeGreaterThanOrEqual(now.getTime() + 24 * 3_600_000);
  });
  it('what is shut is opened first when one asks how long it may stand open; what is open just stays so', () => {
    expect(askedOf(slid({ way: 'open', quarters: 8 }), { ...open, isOpen: false }, now).events).toEqual([
      { type: 'OPENED', at: now.toISOString() },
    ]);
    expect(askedOf(slid({ way: 'open', quarters: 8 }), open, now).events).toEqual([]);
  });
  it('the sentence says what, how wet, and until when', () => {
    const would = { at: '2026-03-04T10:00:00.000Z', state: 'GOOD', hoursToLimit: 51 } as const;
    const water = { scoopWaterFraction: 0.02, scoopLow: 0.016, scoopHigh: 0.025 };
    expect(wouldWords(slid({ quarters: 4, isMixed: true }), { ...would, ...water }, clock, 'next scoop')).toBe(
      'If it is closed at 12:00 and mixed: next scoop about 2.0\u00a0% (1.6 to 2.5), good to use until Friday.',
    );
    expect(supposedWords(slid({ way: 'dried' }), now, clock.zone)).toBe(
      'it is dried now at 130\u00a0°C under vacuum for 60\u00a0min, 10\u00a0mm deep, and closed',
    );
  });
  it('a drying is asked about with its depth, minutes and oven; plates lie in no tray', () => {
    const [tray] = askedOf(slid({ way: 'dried', depthMm: 25 }), open, now).events;
    expect(tray).toMatchObject({ type: 'DRIED', temperatureC: 130, minutes: 60, depthMm: 25, vacuum: true });
    expect(tray?.at).toBe('2026-03-04T10:07:00.000Z');
    const [plates] = askedOf(slid({ way: 'dried', depthMm: null }), open, now).events;
    expect(plates).not.toHaveProperty('depthMm');
  });
  it('while an answer is on its way only the latest question waits, and only its answer is heard', async () => {
    const asked: number[] = [];
    const heard: number[] = [];
    const answers: (() => void)[] = [];
    const asking = latestOnly(
      (question: number) => {
        asked.push(question);
        return new Promise<number>((resolve) => answers.push(() => resolve(question)));
      },
      (_, answer) => heard.push(answer),
    );
    const first = asking.ask(1);
    void asking.ask(2);
    void asking.ask(3);
    answers[0]?.();
    await Promise.resolve();
    await new Promise((later) => setTimeout(later, 0));
    answers[1]?.();
    await first;
    expect(asked).toEqual([1, 3]);
    expect(heard).toEqual([3]);
  });
});

describe('a lineage', () => {
  const kin = (relation: Relation, label: string, level: number, from: string | null): Kin => {
    const takenFrom = from === null ? null : { label: from };
    const container = { label, kind: 'PORTION', finishedAt: null, vessel: null, takenFrom, exposure: null } as const;
    return { relation, level, container };
  };
  it('hangs what was poured on under what it was poured from', () => {
    const tree = treeOf('B', [
      kin('ANCESTOR', 'A', -1, null),
      kin('SIBLING', 'S', 0, 'A'),
      kin('DESCENDANT', 'C', 1, 'B'),
      kin('DESCENDANT', 'D', 2, 'C'),
      kin('DESCENDANT', 'E', 1, 'B'),
    ]);
    expect(tree.sources.map(({ label }) => label)).toEqual(['A']);
    expect(tree.taken.map(({ kin: { label }, below }) => [label, below.map((one) => one.kin.label)])).toEqual([
      ['C', ['D']],
      ['E', []],
    ]);
  });
});

describe('events on the plot', () => {
  const points = [0, 10, 20, 30].map((minutes) => ({ at: new Date(now.getTime() + minutes * 60_000).toISOString() }));
  it('each stands at the point nearest to it; those outside are not there', () => {
    const at = (minutes: number) => new Date(now.getTime() + minutes * 60_000).toISOString();
    const found = happenedAt(points, [
      { at: at(12), sentence: 'opened' },
      { at: at(-5), sentence: 'came in' },
    ]);
    expect([...found.keys()]).toEqual([1]);
    expect(eventNear(found, 3)).toBe(1);
    expect(eventNear(found, 40)).toBeNull();
  });
});

describe('weighings', () => {
  const typed = { tare: '20', before: '22,0', after: ['21.96', ''] };
  it('are enough once bottle, sample and one weighing after are there', () => {
    expect(massesOf(typed)).toEqual({ tare: 20, before: 22, after: [{ grossGrams: 21.96 }] });
    expect(massesOf({ ...typed, after: [''] })).toBeNull();
    expect(withRoom(['21.96'])).toEqual(['21.96', '']);
  });
  it('show their arithmetic with the figures of the API', () => {
    const masses = massesOf(typed);
    const loss = { steps: [], constantAt: null, waterFraction: 0.0204, asReceivedFraction: 0.02 };
    expect(masses && arithmeticWords(masses, { ...loss, advice: null, impossible: null })).toBe(
      '(22 − 21.96) ÷ (21.96 − 20) = 2.04\u00a0% dry basis, 2.00\u00a0% as received.',
    );
    expect([placeOf('after.1.grossGrams'), placeOf('tareGrams'), placeOf('beforeGrams')]).toEqual([
      1,
      'tare',
      'before',
    ]);
  });
});

describe('what waits for the oven', () => {
  const list = ['a', 'b', 'c'].map((id) => ({ id }));
  const ids = (all: readonly { id: string }[]) => all.map(({ id }) => id).join('');
  it('moves one place, to an end, and not beyond it', () => {
    expect(ids(moved(list, 'a', 1))).toBe('bac');
    expect(ids(moved(list, 'c', 0))).toBe('cab');
    expect(moved(list, 'c', 7)).toBe(list);
    expect(beforeOf(moved(list, 'a', 1), 'a')).toBe('c');
    expect(beforeOf(list, 'c')).toBeNull();
    expect(placeWords('58F-J5H', list, 'b')).toBe('58F-J5H is 2 of 3 now');
  });
  it('a pointer above the middle of a line means its place', () => {
    const lines = [0, 50, 100].map((top) => ({ top, bottom: top + 50 }));
    expect([placeAt(-10, lines), placeAt(60, lines), placeAt(90, lines), placeAt(999, lines)]).toEqual([0, 1, 2, 2]);
  });
  it('asks for the part that was asked for, with the usual recipe, and tells dry grams', () => {
    const recipe = { of: 'silica', temperatureLowC: 130, temperatureHighC: 160, minutesLow: 30, minutesHigh: 60 };
    const container = {
      kind: 'DRUM',
      dryGrams: 900,
      dryingRecipes: [{ ...recipe, limitC: 200, source: 'from memory' }],
    };
    const request = { dryGrams: 200, plates: null, temperatureC: null, minutes: null, container } as unknown as Request;
    const initial = Object.fromEntries(driedFields(request, []).map(({ name, initial: first }) => [name, first]));
    expect(initial).toMatchObject({ part: 'some', grams: '200', temperatureC: '130', minutes: '60' });
    expect(recipeWords(request)).toBe('usual: 130 to 160\u00a0°C, 30 to 60\u00a0min');
    expect(driedInput('x', { how: 'recipe', part: 'some', grams: 200, vessel: 'tray' })).toEqual({
      id: 'x',
      grams: 200,
      vessel: 'tray',
      basis: 'DRY',
    });
  });
  it('what touched solvent and columns never go there; alumina is never called grade I', () => {
    expect(ovenCaution({ kind: 'PORTION', touchedSolventAt: now.toISOString() })).toMatch(/never goes to the oven/);
    expect(ovenCaution({ kind: 'COLUMN', touchedSolventAt: null })).toMatch(/not dried/);
    expect(ovenCaution({ kind: 'DRUM', touchedSolventAt: null })).toBeNull();
    expect(dryingCaution('alumina')).toMatch(/not grade I/);
    expect(dryingCaution('silica')).toMatch(/safety data sheet\.$/);
  });
});

describe('how it is used', () => {
  it('says only what somebody said', () => {
    const silent = { habit: null, habitSaid: false, scooping: 'TOP', scoopingSaid: false } as const;
    expect(usedWords(silent)).toBe('');
    expect(usedWords({ ...silent, habitSaid: true, scoopingSaid: true })).toBe(
      'Scooped off the top; not opened every day.',
    );
  });
});
