// Forms: what is typed becomes what the API takes, and what is wrong stands beside its field.
import { describe, expect, it } from 'vitest';
import { emptyOf, readFields, type FieldSpec } from '../../admin/act/field.ts';
import { recentTimes } from '../../admin/act/recent.ts';
import { besideField, fieldOf, refusalWords } from '../../admin/act/refusal.ts';
import { answerTo, questionsToShow, questionWords, withAnswer } from '../../admin/air/asked.ts';
import { replacementOf } from '../../admin/expose/amended.ts';
import { receivedInput } from '../../admin/receive/form.ts';
import { instantOf } from '../../admin/say/time.ts';

const zone = 'Europe/Helsinki';
const fields: FieldSpec[] = [
  { name: 'waterFraction', label: 'Water found', kind: 'number', unit: '%', scale: 0.01 },
  {
    name: 'method',
    label: 'How',
    kind: 'choice',
    choices: [
      { value: 'LOSS_ON_DRYING', words: 'loss on drying' },
      { value: 'KARL_FISCHER', words: 'Karl Fischer' },
    ],
  },
  {
    name: 'temperatureC',
    label: 'Dried at',
    kind: 'number',
    initial: '150',
    when: { field: 'method', is: 'LOSS_ON_DRYING' },
  },
  { name: 'note', label: 'Note', kind: 'text', optional: true },
];
const read = (typed: Record<string, string>) =>
  readFields(fields, { ...emptyOf(fields), ...typed }, (text) => instantOf(text, zone));

describe('a form', () => {
  it('turns percent into the API’s fraction without a tail of digits', () => {
    expect(read({ waterFraction: '4,1' })).toEqual({
      values: { waterFraction: 0.041, method: 'LOSS_ON_DRYING', temperatureC: 150 },
      wrong: {},
    });
  });
  it('sends nothing of a field that is not shown', () => {
    expect(read({ waterFraction: '1', method: 'KARL_FISCHER' }).values).toEqual({
      waterFraction: 0.01,
      method: 'KARL_FISCHER',
    });
  });
  it('says beside the field what would be right', () => {
    expect(read({}).wrong).toEqual({ waterFraction: 'Water found: still empty' });
    expect(read({ waterFraction: 'wet' }).wrong['waterFraction']).toContain('a number such as 4.1');
  });
});

describe('a refusal', () => {
  const refusal = {
    message: 'invalid input.grams: 900, at most 540 g are in it',
    path: 'input.grams',
    expected: 'at most 540 g are in it',
  };
  it('goes to its field, with what would be right', () => {
    expect(fieldOf(refusal)).toBe('grams');
    expect(besideField(refusal)).toBe('at most 540 g are in it');
    expect(fieldOf({ ...refusal, path: 'input.containers.0.grams' })).toBe('grams');
  });
  it('stands whole where it belongs to no field', () => {
    expect(refusalWords(refusal)).toBe('invalid grams: 900, at most 540 g are in it');
    expect(refusalWords({ message: 'missing input.room', path: 'input.room', expected: 'a room' })).toBe(
      'missing room: a room',
    );
  });
});

describe('an earlier time', () => {
  it('is offered where it is likely meant: an hour ago, this morning, the end of yesterday', () => {
    const now = new Date('2026-11-25T12:07:30Z');
    expect(recentTimes(now, zone).map((at) => at.toISOString())).toEqual([
      '2026-11-25T11:07:00.000Z',
      '2026-11-25T10:00:00.000Z',
      '2026-11-25T06:00:00.000Z',
    ]);
    const dawn = new Date('2026-11-25T04:30:00Z');
    expect(recentTimes(dawn, zone).every((at) => at < dawn)).toBe(true);
  });
  it('corrects only what differs', () => {
    const event = { at: '2026-11-25T12:07:30Z', note: null };
    expect(replacementOf(event, new Date('2026-11-25T12:07:00Z'), '')).toBeNull();
    expect(replacementOf(event, new Date('2026-11-24T14:00:00Z'), '')).toEqual({ at: '2026-11-24T14:00:00.000Z' });
    expect(replacementOf(event, new Date('2026-11-25T12:07:59Z'), 'lid lay beside it')).toEqual({
      note: 'lid lay beside it',
    });
  });
});

describe('what a logger’s file leaves open', () => {
  const dates = {
    asks: 'dates',
    about: 'dates: is 03/04/2026 day first or month first?',
    choices: ['day-first', 'month-first'],
  } as const;
  it('is asked in plain words and stays in sight once it is answered', () => {
    const question = { ...dates, choices: [...dates.choices] };
    expect(questionWords(question)).toBe('Is 03/04/2026 day first or month first?');
    const answers = withAnswer({}, 'dates', 'day-first');
    expect(answerTo(answers, 'dates')).toBe('day-first');
    expect(questionsToShow([], [question], answers)).toEqual([question]);
    expect(questionsToShow([], [question], {})).toEqual([]);
  });
  it('reads a start with its interval, and columns one after another', () => {
    expect(withAnswer({}, 'start', '2026-03-02T08:00 every 300 s')).toEqual({
      start: '2026-03-02T08:00',
      everySeconds: 300,
    });
    expect(withAnswer({ quantity: ['temperature'] }, 'quantity', 'humidity')).toEqual({
      quantity: ['temperature', 'humidity'],
    });
  });
});

describe('what came in', () => {
  it('is a lot with its containers, and a supplier of a new name goes by that name', () => {
    const input = receivedInput({
      sorbent: 'Silica',
      supplier: 'another supplier …',
      newSupplier: 'Osier & Tarn',
      lotNumber: 'F-1',
      kind: 'DRUM',
      count: 2,
      grams: 1000,
      room: 'wet bench',
    });
    expect(input).toEqual({
      sorbent: 'Silica',
      supplier: 'Osier & Tarn',
      lotNumber: 'F-1',
      containers: [{ kind: 'DRUM', count: 2, grams: 1000, room: 'wet bench' }],
    });
  });
});
