// The prep sheet on this machine: which sheets are kept for when there is no network, and which ticks wait to be sent.
import { describe, expect, it } from 'vitest';
import { sheetsAhead, waitsToBeTold } from '../../admin/prepare/words.ts';

describe('sheets kept ahead', () => {
  it('are the one that is up and the one after it', () => {
    expect(sheetsAhead('2026-03-31T09:00', '15:00')).toEqual([
      { on: '2026-03-31', part: 'MORNING' },
      { on: '2026-03-31', part: 'EVENING' },
    ]);
    expect(sheetsAhead('2026-03-31T15:00', '15:00')).toEqual([
      { on: '2026-03-31', part: 'EVENING' },
      { on: '2026-04-01', part: 'MORNING' },
    ]);
  });
});

describe('a tick that waits to be sent', () => {
  it('is of its step, not of one that was taken out of “all done as printed”', () => {
    const all = { act: 'tickSteps', input: { ids: ['a', 'b'], except: ['b'] } };
    expect(['a', 'b', 'c'].map((id) => waitsToBeTold(all, id))).toEqual([true, false, false]);
    expect(waitsToBeTold({ act: 'tickStep', input: { id: 'c' } }, 'c')).toBe(true);
    expect(waitsToBeTold({ act: 'untickSteps', input: { ids: ['a'] } }, 'a')).toBe(false);
  });
});
