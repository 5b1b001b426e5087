// What would have to change for a need that can never be met, in words.
import { describe, expect, it } from 'vitest';
import { missedWords } from '../../api/prep/obstacle.ts';

const washed = (amount: number) =>
  missedWords({ stage: 'WASH', lacks: 'hood', shouldHaveBegun: null }, 'Europe/Helsinki', {
    hoodPlaces: 20,
    isPlates: true,
    amount,
  });

describe('a need that no evening within four weeks has room for', () => {
  it('is told to be too large for the hood only where it is', () => {
    expect(washed(30).sentence).toMatch(/^30 plates never fit: the hood holds 20 at once/);
    expect(washed(20)).toEqual({
      what: 'hood',
      sentence: 'the hood has no places left for four weeks, for the pre-wash and the night in the hood',
    });
  });
});
