// What the first screen says of what comes next: the earlier first, each with where it leads; the evening only where it says more.
import { describe, expect, it } from 'vitest';
import { beforeLeaving, nextOnes } from '../../admin/watch/ahead.ts';
import type { Ahead } from '../../admin/watch/questions.ts';

const clock = { now: new Date('2026-11-26T12:00:00Z'), zone: 'Europe/Helsinki' };
const step = (id: string, kind: string, name: string, from: string, to: string): Ahead['beforeLeaving'][number] => ({
  ...{ id, kind, name, startAt: `2026-11-${from}:00Z`, endAt: `2026-11-${to}:00Z` },
  need: { forWhom: 'fractions' },
});
const wash = step('a', 'PRE_WASH', 'pre-wash, load 1 of 2', '26T14:00', '26T15:00');
const none: Ahead = { nextOvenStep: null, nextPrepStep: null, beforeLeaving: [] };

describe('the next steps', () => {
  it('are said by the clock, the earlier first, and lead to the ovens and to the sheet of their day', () => {
    const oven = { sentence: '18:30: load 1 out of vacuum oven', at: '2026-11-26T16:30:00Z' };
    expect(nextOnes({ ...none, nextOvenStep: oven, nextPrepStep: wash }, clock)).toEqual([
      { words: '16:00 pre-wash for fractions', to: '/sheet?on=2026-11-26' },
      { words: '18:30 load 1 out of vacuum oven', to: '/ovens' },
    ]);
    expect(nextOnes(none, clock)).toEqual([]);
  });

  it('count what comes out of the hood by the end of its time, and say since when something is due', () => {
    const out = step('b', 'AIR_DRY', 'air-dry', '25T16:00', '26T06:00');
    expect(nextOnes({ ...none, nextPrepStep: out }, clock)[0]?.words).toBe('since 08:00 out of the hood for fractions');
  });

  it('are not said twice: a lone step of the evening that comes next anyway is left out', () => {
    expect(beforeLeaving({ ...none, nextPrepStep: wash, beforeLeaving: [wash] }, clock)).toBeNull();
    const more = step('c', 'PRE_WASH', 'pre-wash, load 2 of 2', '26T15:00', '26T16:00');
    expect(beforeLeaving({ ...none, nextPrepStep: wash, beforeLeaving: [wash, more] }, clock)).toEqual({
      words: '2 steps',
      to: '/sheet?on=2026-11-26&part=evening',
    });
  });
});
