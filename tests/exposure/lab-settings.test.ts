// What the lab sets decides states and estimates, which follow by themselves.
import { describe, expect, it } from 'vitest';
import { habitTurns, workingHoursOf } from '../../api/exposure/hours.ts';
import { describeEngines } from '../support/engines.ts';
import { newWorld } from '../support/world.ts';

describeEngines('the lab’s own choices', (on) => {
  it('a stricter figure changes an answer at once; its default changes it back', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    const { label } = await world.drum(600, { startWaterFraction: 0.044 });
    type Seen = { container: { exposure: { state: string; chancePastLimit: number; scoopWaterFraction: number } } };
    const seen = async () =>
      (
        await world.ask<Seen>(
          `query ($label: String!) { container(label: $label) { exposure { state chancePastLimit scoopWaterFraction } } }`,
          { label },
        )
      ).container.exposure;
    const before = await seen();
    expect(before.state).not.toBe('REDRY');
    const redryChance = Math.max(0.01, before.chancePastLimit * 0.9);
    const kept = await world.tell(
      'setLabSettings',
      { redryChance, useSoonChance: 0.01 },
      'lab { settings { redryChance useSoonChance useSoonHours own } }',
    );
    expect(kept).toMatchObject({
      lab: { settings: { redryChance, useSoonChance: 0.01, useSoonHours: 48, own: ['redryChance', 'useSoonChance'] } },
    });
    expect((await seen()).state).toBe('REDRY');
    await world.tell('setLabSettings', { redryChance: null, useSoonChance: null }, '__typename');
    expect(await seen()).toEqual(before);
  });

  it('a draught at the mouth makes an open drum wetter, from its beginning on', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    const { label } = await world.drum(600, { closure: 'OPEN' });
    type Seen = { container: { exposure: { meanWaterFraction: number } } };
    const water = async () =>
      (
        await world.ask<Seen>(
          `query ($label: String!) { container(label: $label) { exposure { meanWaterFraction } } }`,
          { label },
        )
      ).container.exposure.meanWaterFraction;
    const still = await water();
    await world.tell('setLabSettings', { filmMmPerS: 12 }, '__typename');
    expect(await water()).toBeGreaterThan(still);
    await world.tell('setLabSettings', { filmMmPerS: null }, '__typename');
    expect(await water()).toBe(still);
  });

  it('what cannot be is refused with its bounds, and nothing changes', async () => {
    const world = await newWorld(await on.fresh());
    const wrong = async (input: Record<string, unknown>) => (await world.refused('setLabSettings', input)).message;
    expect(await wrong({ redryChance: 1.5 })).toBe('invalid input.redryChance: 1.5, 0.99 or less');
    expect(await wrong({ useSoonChance: 0.7 })).toMatch(
      /^invalid input\.useSoonChance: 0\.7, use soon at a smaller chance/,
    );
    expect(await wrong({ workingFrom: '8 am' })).toBe('invalid input.workingFrom: 8 am, a time such as 08:00');
    expect(await wrong({ workingDays: [] })).toBe('invalid input.workingDays: [], at least one working day');
    expect(await wrong({ desiccantDays: 0 })).toBe('invalid input.desiccantDays: 0, 1 day or more');
    expect(await wrong({})).toBe('missing input, what the lab sets');
    const { lab } = await world.ask<{ lab: { settings: { own: string[] } } }>('{ lab { settings { own } } }');
    expect(lab.settings.own).toEqual([]);
  });
});

describe('working days', () => {
  it('a habit rests from Friday midnight to Monday midnight, on the lab’s clock', () => {
    const hours = workingHoursOf({ workingDays: [1, 2, 3, 4, 5] }, 'Europe/Helsinki');
    // Wednesday 4 March 2026, two weeks; Helsinki is 2 h ahead of UTC in winter.
    const fromS = Date.UTC(2026, 2, 4, 6) / 1000;
    const held = [{ fromS, untilS: fromS + 14 * 86_400, habit: { timesADay: 3, minutes: 10 } }];
    const turns = habitTurns(held, hours).map(({ atS, ...rest }) => [
      new Date(atS * 1000).toISOString(),
      'habit' in rest && rest.habit !== null,
    ]);
    expect(turns).toEqual([
      ['2026-03-06T22:00:00.000Z', false],
      ['2026-03-08T22:00:00.000Z', true],
      ['2026-03-13T22:00:00.000Z', false],
      ['2026-03-15T22:00:00.000Z', true],
    ]);
  });
});
