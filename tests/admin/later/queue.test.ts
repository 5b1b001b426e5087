// What waits to be told, under every sequence of failures: written once, in order, or a question, or dropped by the person.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  askedAgain,
  dropped,
  dueAt,
  hurried,
  joined,
  nextOf,
  pauseMs,
  retimed,
  reworded,
  settled,
  type Outcome,
  type Queue,
  type Waiting,
} from '../../../admin/later/queue.ts';
import { sendWaiting, type Sender } from '../../../admin/later/sending.ts';

const waiting = (key: string, more: Partial<Waiting> = {}): Waiting => ({
  key,
  act: 'openContainer',
  input: { label: 'A', at: 't0' },
  label: 'A',
  words: 'opened',
  at: 't0',
  by: '',
  left: false,
  attempt: '',
  question: null,
  fault: '',
  tries: 0,
  notBefore: 0,
  afterwards: null,
  ...more,
});
const refusal = { message: 'invalid input.label: A, it was used up', path: 'input.label', expected: 'one in use' };
const keysOf = (queue: Queue) => queue.map(({ key }) => key);

describe('what waits', () => {
  it('goes in the order of the taps, and what follows a question on the same container waits with it', () => {
    const queue = [waiting('1', { question: refusal }), waiting('2'), waiting('3', { label: 'B' })];
    expect(nextOf(queue, 0)?.key).toBe('3');
    expect(nextOf(askedAgain(queue, '1'), 0)?.key).toBe('1');
  });

  it('pauses longer after each fault of the server, a minute at most, while other containers go on', () => {
    const failed: Outcome = { kind: 'failed', message: 'something went wrong here' };
    let queue: Queue = [waiting('1'), waiting('2', { label: 'B' })];
    queue = settled(queue, waiting('1'), failed, 1_000, () => '');
    expect(queue[0]).toMatchObject({ fault: failed.message, tries: 1, notBefore: 3_000 });
    expect(nextOf(queue, 1_000)?.key).toBe('2');
    expect(dueAt([queue[0] ?? waiting('')])).toBe(3_000);
    expect([1, 2, 3, 6, 40].map(pauseMs)).toEqual([2_000, 4_000, 8_000, 60_000, 60_000]);
    expect(nextOf(hurried(queue), 1_000)?.key).toBe('1');
  });

  it('is taken out at once when it never left, and taken back later when it may have arrived', () => {
    expect(dropped([waiting('1')], '1')).toEqual([]);
    const left = dropped([waiting('1', { left: true })], '1');
    expect(left[0]?.afterwards).toEqual({ void: true });
    const [next] = settled(left, left[0] ?? waiting('1'), { kind: 'done', id: 'E7' }, 0, () => 'new');
    expect(next).toMatchObject({ key: 'new', act: 'correctEvent', input: { event: 'E7', void: true }, left: false });
    expect(settled(left, left[0] ?? waiting('1'), { kind: 'refused', refusal }, 0, () => 'new')).toEqual([]);
  });

  it('a new time is told with it when it never left, and put right afterwards when it may have arrived', () => {
    expect(retimed([waiting('1')], '1', 't9')[0]).toMatchObject({ input: { label: 'A', at: 't9' }, at: 't9' });
    const left = retimed([waiting('1', { left: true })], '1', 't9');
    expect(left[0]).toMatchObject({ input: { at: 't0' }, afterwards: { at: 't9' } });
    expect(settled(left, left[0] ?? waiting('1'), { kind: 'done', id: 'E7' }, 0, () => 'new')[0]).toMatchObject({
      act: 'correctEvent',
      input: { event: 'E7', replacement: { at: 't9' } },
    });
    expect(settled(left, left[0] ?? waiting('1'), { kind: 'refused', refusal }, 0, () => 'new')[0]).toMatchObject({
      key: '1',
      input: { at: 't9' },
      question: null,
    });
  });

  it('a question is answered by other figures, another time, once more, or by dropping it', () => {
    const asked = settled([waiting('1', { left: true })], waiting('1'), { kind: 'refused', refusal }, 0, () => '');
    expect(asked[0]).toMatchObject({ question: refusal, left: false });
    expect(reworded(asked, '1', { grams: 40 }, '40 g taken')[0]).toMatchObject({
      question: null,
      input: { grams: 40 },
    });
    expect(retimed(asked, '1', 't5')[0]).toMatchObject({ question: null, input: { at: 't5' } });
    expect(dropped(asked, '1')).toEqual([]);
  });

  it('a request to dry that was taken out after it may have arrived goes off the list by its id', () => {
    const left = dropped([waiting('1', { act: 'requestDrying', left: true })], '1');
    expect(settled(left, left[0] ?? waiting('1'), { kind: 'done', id: 'D3' }, 0, () => 'k')[0]).toMatchObject({
      act: 'withdrawDrying',
      input: { id: 'D3' },
    });
  });

  it('an answer to what is gone already changes nothing', () => {
    const queue = [waiting('2')];
    expect(settled(queue, waiting('1'), { kind: 'done', id: 'E' }, 0, () => '')).toEqual(queue);
    expect(keysOf(joined(queue, waiting('2')))).toEqual(['2']);
  });
});

/** How one request fares on its way. */
type Fate = 'answered' | 'never left' | 'request lost' | 'reply lost' | 'fault before' | 'fault after';
const fates: Fate[] = ['answered', 'never left', 'request lost', 'reply lost', 'fault before', 'fault after'];

interface Written {
  key: string;
  origin: string;
  label: string;
  at: string;
  void: boolean;
}

/** A book that answers the same key with its first answer, and refuses some acts until they are told at another time. */
class Book {
  readonly written: Written[] = [];
  readonly answers = new Map<string, Outcome>();
  fates: Fate[] = [];
  readonly refuses: (origin: string, at: string) => boolean;
  constructor(refuses: (origin: string, at: string) => boolean) {
    this.refuses = refuses;
  }

  private write(one: Waiting): Outcome {
    const before = this.answers.get(one.key);
    if (before) return before;
    if (one.act === 'correctEvent') {
      const event = this.written.find(({ key }) => key === one.input['event']);
      if (!event) throw new Error('a correction of nothing');
      if (one.input['void']) event.void = true;
      else event.at = (one.input['replacement'] as { at: string }).at;
    } else {
      const [origin, at] = [String(one.input['origin']), String(one.input['at'])];
      if (this.refuses(origin, at)) return { kind: 'refused', refusal };
      this.written.push({ key: one.key, origin, label: one.label, at, void: false });
    }
    const answer: Outcome = { kind: 'done', id: one.key };
    this.answers.set(one.key, answer);
    return answer;
  }

  tell(one: Waiting): Outcome {
    const fate = this.fates.shift() ?? 'answered';
    if (fate === 'never left') return { kind: 'unanswered', left: false };
    if (fate === 'request lost') return { kind: 'unanswered', left: true };
    if (fate === 'fault before') return { kind: 'failed', message: 'fault' };
    const answer = this.write(one);
    if (fate === 'reply lost') return { kind: 'unanswered', left: true };
    return fate === 'fault after' ? { kind: 'failed', message: 'fault' } : answer;
  }
}

type Step =
  | { do: 'add'; label: string }
  | { do: 'drop'; nth: number }
  | { do: 'retime'; nth: number; at: string }
  | { do: 'send'; fates: Fate[] }
  | { do: 'two tabs send'; fates: Fate[] };

const nth = fc.nat({ max: 9 });
const someFates = fc.array(fc.constantFrom(...fates), { maxLength: 6 });
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ do: fc.constant('add' as const), label: fc.constantFrom('A', 'B', 'C') }) },
  fc.record({ do: fc.constant('drop' as const), nth }),
  fc.record({ do: fc.constant('retime' as const), nth, at: fc.constantFrom('t1', 't2', 't3') }),
  { weight: 3, arbitrary: fc.record({ do: fc.constant('send' as const), fates: someFates }) },
  fc.record({ do: fc.constant('two tabs send' as const), fates: someFates }),
);

describe('whatever fails', () => {
  it('each act is written exactly once, at the time it was last given, or was dropped by the person', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(step, { maxLength: 30 }),
        fc.integer({ min: 2, max: 9 }),
        async (steps, refuseEvery) => {
          const number = (origin: string) => Number(origin.slice(1));
          const book = new Book((origin, at) => number(origin) % refuseEvery === 0 && at === 't0');
          // As on a disk: only plain data comes back.
          let kept = '[]';
          let nowMs = 0;
          let made = 0;
          const added: { origin: string; label: string }[] = [];
          const dropping = new Set<string>();
          const times = new Map<string, string>();
          const originOf = new Map<string, string>();
          const asked = new Set<string>();
          const read = (): Queue => JSON.parse(kept) as Queue;
          const change = (how: (queue: Queue) => Queue): Queue => {
            kept = JSON.stringify(how(read()));
            return read();
          };
          const sender: Sender = {
            read: () => Promise.resolve(read()),
            change: (how) => Promise.resolve(change(how)),
            tell: async (one) => {
              await Promise.resolve();
              return book.tell(one);
            },
            told: (one, { kind }) => kind === 'refused' && asked.add(originOf.get(one.key) ?? ''),
            nowMs: () => nowMs,
            newKey: () => `k${(made += 1)}`,
          };
          const at = (n: number): Waiting | undefined => read()[n % Math.max(1, read().length)];

          for (const one of steps) {
            nowMs += 500;
            if (one.do === 'add') {
              const key = `k${(made += 1)}`;
              const origin = `o${added.length + 1}`;
              added.push({ origin, label: one.label });
              originOf.set(key, origin);
              times.set(origin, 't0');
              change((queue) => joined(queue, waiting(key, { label: one.label, input: { origin, at: 't0' } })));
            } else if (one.do === 'drop') {
              const which = at(one.nth);
              const origin = which && originOf.get(which.key);
              if (!which || origin === undefined) continue;
              dropping.add(origin);
              change((queue) => dropped(queue, which.key));
            } else if (one.do === 'retime') {
              const which = at(one.nth);
              const origin = which && originOf.get(which.key);
              if (!which || origin === undefined || dropping.has(origin)) continue;
              times.set(origin, one.at);
              change((queue) => retimed(queue, which.key, one.at));
            } else {
              book.fates = [...one.fates];
              await (one.do === 'send' ? sendWaiting(sender) : Promise.all([sendWaiting(sender), sendWaiting(sender)]));
            }
          }
          // The network comes back, and the person answers each question by another time.
          for (let round = 0; read().length > 0; round += 1) {
            expect(round).toBeLessThan(200);
            nowMs += 120_000;
            await sendWaiting(sender);
            for (const { key, question } of read()) {
              if (!question) continue;
              times.set(originOf.get(key) ?? '', 't4');
              change((queue) => retimed(queue, key, 't4'));
            }
          }
          for (const { origin } of added) {
            const counting = book.written.filter((event) => event.origin === origin && !event.void);
            if (dropping.has(origin)) expect(counting).toEqual([]);
            else expect(counting.map((event) => event.at)).toEqual([times.get(origin)]);
            expect(book.written.filter((event) => event.origin === origin).length).toBeLessThanOrEqual(1);
          }
          for (const label of ['A', 'B', 'C']) {
            const order = book.written.filter((event) => event.label === label).map(({ origin }) => number(origin));
            expect(order).toEqual([...order].sort((a, b) => a - b));
          }
        },
      ),
      { numRuns: 400 },
    );
  });
});
