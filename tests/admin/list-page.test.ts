// The pages of bringing a list, of beginning, and of what came in: what they say and keep, without a browser.
import { describe, expect, it } from 'vitest';
import { stepsOf } from '../../admin/begin/steps.ts';
import {
  byLine,
  noAnswers,
  withAnswer,
  withColumn,
  withFirstChoices,
  withoutAnswer,
} from '../../admin/bring/answered.ts';
import type { Row } from '../../admin/bring/questions.ts';
import { bringsWords, packWords, pastWords } from '../../admin/bring/row-words.ts';
import { ownSizes, receivedInput } from '../../admin/receive/form.ts';
import { asLastTime, lastWords } from '../../admin/receive/last.ts';
import type { LastLot } from '../../admin/receive/questions.ts';

const row: Row = {
  line: 4,
  sorbent: 'Silica',
  supplier: null,
  lotNumber: 'K-1',
  kind: 'DRUM',
  count: 1,
  grams: 500,
  plates: null,
  vessel: 'jar 1 L',
  room: 'wet bench',
  receivedAt: '2026-02-02T10:00:00.000Z',
  openedAt: null,
  closure: null,
  oldCode: null,
};
const clock = { now: new Date('2026-06-10T12:00:00Z'), zone: 'Europe/Helsinki' };
/** Spaces that do not break are spaces to a reader. */
const plain = (words: string): string => words.replace(/\u00a0/g, ' ');

describe('a line of a list', () => {
  it('is told as it will stand on the book', () => {
    expect(plain(packWords(row))).toBe('500 g in jar 1 L');
    expect(plain(packWords({ ...row, count: 3 }))).toBe('3 × 500 g in jar 1 L');
    expect(plain(packWords({ ...row, grams: null, vessel: null, plates: 25 }))).toBe('box of 25 plates');
    expect(pastWords(row, clock)).toBe('came in on 2 February, sealed');
    const opened = { ...row, openedAt: '2026-03-01T10:00:00.000Z' };
    expect(pastWords(opened, clock)).toBe('came in on 2 February, opened on 1 March, well closed');
    expect(pastWords({ ...opened, closure: 'OPEN' }, clock)).toBe('came in on 2 February, open since 1 March');
    expect(pastWords({ ...row, receivedAt: null }, clock)).toBe('came in now, sealed');
    expect(bringsWords(42, 40)).toBe('42 containers of 40 lines');
  });
});

describe('answers about a list', () => {
  it('replace each other, can be asked again, and are all taken as offered on one tap only', () => {
    const once = withAnswer(noAnswers, 'dates', 'day-first');
    expect(withAnswer(once, 'dates', 'month-first').given).toEqual([{ question: 'dates', answer: 'month-first' }]);
    expect(withoutAnswer(once, 'dates')).toEqual(noAnswers);
    const choices = [
      { answer: 'is:Silica', words: 'it is Silica' },
      { answer: 'make:silica', words: 'make it' },
    ];
    expect(withFirstChoices(once, [{ question: 'name:SORBENT:kg', about: '', choices }]).given).toHaveLength(2);
  });

  it('say no field of two columns', () => {
    const columns = [
      { column: 0, heading: 'a', field: 'SORBENT' as const, samples: [] },
      { column: 1, heading: 'b', field: null, samples: [] },
    ];
    expect(withColumn(columns, 1, 'SORBENT')).toEqual([
      { column: 0, field: null },
      { column: 1, field: 'SORBENT' },
    ]);
  });

  it('are asked for beside what is wrong, by line', () => {
    const wrong = (line: number | null, column: string) => ({ line, column, value: '', expected: '' });
    const lines = byLine([wrong(3, 'amount'), wrong(5, 'lot'), wrong(3, 'room')]);
    expect(lines.map(({ line, problems }) => [line, problems.length])).toEqual([
      [3, 2],
      [5, 1],
    ]);
  });
});

describe('a beginning', () => {
  const begun = (
    containers: number,
    nodes: { name: string; lastReadingAt: string | null; assumedHumidityPercent: number | null }[],
  ) => stepsOf({ lab: { name: 'Our lab', isDemo: false, counts: { containers, lots: 0 } }, rooms: { nodes } });
  const bench = { name: 'wet bench', lastReadingAt: null, assumedHumidityPercent: null };

  it('is three steps, each ticked when it is done and not before', () => {
    expect(begun(0, []).map(({ isDone }) => isDone)).toEqual([false, false, false]);
    expect(begun(0, [bench])[0]).toMatchObject({ isDone: false, stands: '1 room, no air known yet of wet bench' });
    expect(begun(0, [{ ...bench, assumedHumidityPercent: 45 }])[0]?.isDone).toBe(true);
    expect(begun(0, [{ ...bench, lastReadingAt: '2026-06-10T12:00:00Z' }])[0]?.stands).toBe(
      '1 room, each with its air',
    );
    expect(begun(42, [bench])[1]).toMatchObject({ isDone: true, stands: '42 containers on the book' });
    expect(begun(42, [bench])[2]?.ways.map(({ to }) => to)).toEqual(['/labels']);
  });
});

describe('what came in', () => {
  it('is one lot with several kinds of pack; sizes of its own stand for a vessel', () => {
    const input = receivedInput(
      {
        sorbent: 'Silica',
        lotNumber: 'F-1',
        kind: 'DRUM',
        grams: 1000,
        vessel: ownSizes,
        innerDiameterMm: 95,
        heightMm: 150,
        room: 'wet bench',
        startWaterFraction: 0.02,
      },
      [{ kind: 'PLATE_BOX', plates: 25, layerThicknessMm: 0.2, room: 'wet bench' }],
    );
    expect(input.containers).toEqual([
      { kind: 'DRUM', grams: 1000, innerDiameterMm: 95, heightMm: 150, room: 'wet bench', startWaterFraction: 0.02 },
      { kind: 'PLATE_BOX', plates: 25, layerThicknessMm: 0.2, room: 'wet bench', startWaterFraction: 0.02 },
    ]);
  });

  it('as last time takes amounts from what nobody opened, and leaves the lot number to be said', () => {
    const drum = {
      kind: 'DRUM' as const,
      closure: 'SEALED' as const,
      takenFrom: null,
      asReceivedGrams: 1000.04,
      vessel: { name: 'jar 2.5 L' },
      room: { name: 'wet bench' },
    };
    const lot: LastLot = {
      lotNumber: 'F-118',
      supplier: { name: 'Marlpit Chemicals' },
      containers: [{ ...drum, closure: 'WELL_CLOSED', asReceivedGrams: 310 }, drum],
    };
    expect(asLastTime(lot)).toEqual({
      supplier: 'Marlpit Chemicals',
      kind: 'DRUM',
      grams: '1000',
      vessel: 'jar 2.5 L',
      room: 'wet bench',
      closure: 'SEALED',
    });
    expect(lastWords(lot)).toBe('As lot F-118 came: from Marlpit Chemicals, 1000\u00a0g in jar 2.5 L, wet bench');
    expect(asLastTime({ ...lot, containers: [{ ...drum, closure: 'OPEN' }] })).not.toHaveProperty('grams');
    expect(asLastTime({ ...lot, containers: [] })).toEqual({});
  });
});
