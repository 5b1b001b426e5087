// What is said of an act that waits, and how its container is expected to stand.
import { describe, expect, it } from 'vitest';
import type { Line } from '../../../admin/fields.ts';
import { events } from '../../../admin/act/acts.ts';
import { expectedOf } from '../../../admin/later/expected.ts';
import type { Waiting } from '../../../admin/later/queue.ts';
import { amountOf, standing, waitingWords, waitsWords, whyNot } from '../../../admin/later/say.ts';
import { actWords } from '../../../admin/later/words.ts';

const at = '2026-03-02T14:02:00Z';
const waiting = (act: string, input: object = {}, more: Partial<Waiting> = {}): Waiting => ({
  ...{ key: act, act, input: { ...input, at }, label: '4M7-2XK', words: actWords(act, { ...input }), at, by: '' },
  ...{ left: false, attempt: '', question: null, fault: '', tries: 0, notBefore: 0, afterwards: null, ...more },
});
const drum = {
  ...{ isOpen: false, openedAt: null, closure: 'TIGHT', usualClosure: 'TIGHT', finishedAt: null },
  room: { name: 'wet bench' },
} as Pick<Line, 'isOpen' | 'openedAt' | 'closure' | 'usualClosure' | 'finishedAt' | 'room'>;
const refusal = { message: 'no', path: '', expected: '' };

describe('a container with acts that wait', () => {
  it('stands as it will once they are written: lid, room, used up', () => {
    const open = expectedOf(drum, [waiting('openContainer')]);
    expect(open).toMatchObject({ isOpen: true, openedAt: at, closure: 'OPEN' });
    expect(expectedOf(drum, [waiting('openContainer'), waiting('closeContainer')])).toMatchObject(drum);
    expect(expectedOf(drum, [waiting('moveContainer', { room: 'cold store' })]).room).toEqual({ name: 'cold store' });
    expect(expectedOf(drum, [waiting('finishContainer')]).finishedAt).toBe(at);
    expect(expectedOf(drum, [waiting('takePortion', { grams: 5 })])).toEqual(drum);
  });
  it('does not count what is asked about, nor what the person took out', () => {
    expect(expectedOf(drum, [waiting('openContainer', {}, { question: refusal })])).toEqual(drum);
    expect(expectedOf(drum, [waiting('openContainer', {}, { left: true, afterwards: { void: true } })])).toEqual(drum);
  });
});

describe('the words', () => {
  it('count what waits and what is asked', () => {
    expect(waitsWords(0, 0)).toBe('');
    expect(waitsWords(1, 0)).toBe('1 waits to be sent');
    expect(waitsWords(3, 1)).toBe('3 wait to be sent, 1 question to answer');
  });
  it('tell a refusal, a fault, a lost answer and plain waiting apart', () => {
    const of = (more: Partial<Waiting>) => standing(waiting('openContainer', {}, more), false);
    const all = [
      of({}),
      of({ left: true }),
      of({ fault: 'it is in the log', tries: 2 }),
      of({ question: refusal }),
      of({ left: true, afterwards: { void: true } }),
      of({ left: true, afterwards: { at } }),
      standing(waiting('openContainer'), true),
    ];
    expect(new Set(all).size).toBe(all.length);
    expect(all[2]).toBe('tried 2 times; Drumkeep answered: it is in the log');
  });
  it('name every event that can be told, in words of the bench', () => {
    const input = {
      room: 'the hall',
      timesADay: 3,
      minutes: 10,
      into: '4m7-2xk',
      solvent: 'methanol',
      temperatureC: 120,
    };
    for (const name of Object.keys(events)) expect(actWords(name, input)).not.toMatch(/[A-Z]{2}|[a-z][A-Z]|undefined/);
    expect(actWords('takePortion', { grams: 50, vessel: 'beaker 250 mL' })).toBe('50 g taken into beaker 250 mL');
    expect(actWords('takePlates', { plates: 1 })).toBe('1 plate taken');
  });
  it('stand on the line itself: what, when, and how many more', () => {
    const clock = { now: new Date('2026-03-02T15:00:00Z'), zone: 'UTC' };
    expect(waitingWords([], clock)).toBe('');
    expect(waitingWords([waiting('openContainer')], clock)).toMatch(/^opened .*14:02: not sent yet$/);
    expect(waitingWords([waiting('openContainer'), waiting('mixContainer')], clock)).toContain('and 1 more');
    expect(waitingWords([waiting('openContainer', {}, { notBefore: 9e15 })], clock)).toBe('recording …');
  });
  it('say why not in the lab’s own time, without repeating what was told', () => {
    const clock = { now: new Date('2026-11-25T22:30:00Z'), zone: 'Europe/Helsinki' };
    const message =
      'invalid at: 2026-11-25T21:59:34.476Z, it was used up at 2026-11-25 21:00 UTC (Y8N-Y4W); a time before that';
    expect(whyNot(message, clock)).toBe('it was used up at yesterday 23:00 (Y8N-Y4W); a time before that');
  });
  it('know which figure of an act can be corrected', () => {
    expect(amountOf({ label: 'A', grams: 50 })).toEqual({ name: 'grams', value: 50 });
    expect(amountOf({ label: 'A', plates: 3 })).toEqual({ name: 'plates', value: 3 });
    expect(amountOf({ label: 'A' })).toBeNull();
  });
});
