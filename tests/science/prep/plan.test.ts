// The backward planner: a worked example from the paper's text, and what must hold whatever is asked of it.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planNeeds, type Outcome } from '../../../api/science/prep/plan.ts';
import { loadsOf } from '../../../api/science/prep/loads.ts';
import type { PlannedStep, PrepNeed, PrepResources, Stage } from '../../../api/science/prep/stages.ts';

const hour = 60;
const day = 24 * hour;
/** Monday 00:00 of a week; open 08 to 18 from Monday to Friday. */
const monday = 0;
const open = [0, 1, 2, 3, 4, 7, 8, 9, 10, 11, 14, 15, 16, 17, 18].map((d) => ({
  from: monday + d * day + 8 * hour,
  to: monday + d * day + 18 * hour,
}));
const oven = (id: string, more: object = {}) => ({
  id,
  open,
  busy: [],
  capacity: 4000,
  temperatureC: [40, 200] as const,
  isVacuum: true,
  isUnattended: true,
  ...more,
});
const lab: PrepResources = { open, hands: 1, tanks: 1, hoodPlaces: 20, ovens: [oven('vacuum')] };

const wash = (plates: number): Stage => {
  const loads = loadsOf(plates, 5);
  return { kind: 'WASH', loads, ofLoads: loads.length, minutes: 60, handsMinutes: 10, airDryMinutes: 12 * hour };
};
const bake = (plates: number): Stage => {
  const loads = loadsOf(plates * 400, 4000);
  const temperatureC = [130, 130] as const;
  return {
    kind: 'OVEN',
    loads,
    ofLoads: loads.length,
    least: 45,
    most: 60,
    temperatureC,
    isVacuum: true,
    handsMinutes: 15,
    coolMinutes: 15,
  };
};
const handOver: Stage = { kind: 'HAND_OVER', minutes: 15, restMinutes: 0 };

const plates = (id: string, count: number, at: number, more: Partial<PrepNeed> = {}): PrepNeed => ({
  id,
  at,
  weight: 1,
  floor: monday + 8 * hour,
  keepsFrom: null,
  stages: [wash(count), bake(count), handOver],
  takes: [],
  ...more,
});

const clock = (minute: number): string => {
  const days = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
  const pad = (value: number) => String(value).padStart(2, '0');
  return `${days[Math.floor(minute / day) % 7]} ${pad(Math.floor(minute / hour) % 24)}:${pad(minute % hour)}`;
};
const told = (steps: readonly PlannedStep[]): string[] =>
  steps.map(({ kind, start, end }) => `${kind} ${clock(start)} to ${clock(end)}`);

describe('plates for Wednesday 14:00', () => {
  it('are pre-washed the evening before, dried overnight in the hood, activated just before use', () => {
    const [outcome] = planNeeds([plates('p', 10, monday + 2 * day + 14 * hour)], lab);
    // Backwards by hand: handed over by 14:00 in 15 min; cooled 15 min before; 45 min in the oven; the hood gives them
    // out when somebody comes at 08:00, twelve hours after 18:00 at the latest; so the last of two loads ends at 18:00.
    expect(told(outcome?.steps ?? [])).toEqual([
      'PRE_WASH Tue 16:00 to Tue 17:00',
      'PRE_WASH Tue 17:00 to Tue 18:00',
      'AIR_DRY Tue 18:00 to Wed 08:00',
      'KEEP Wed 08:00 to Wed 12:45',
      'OVEN Wed 12:45 to Wed 13:30',
      'COOL Wed 13:30 to Wed 13:45',
      'HAND_OVER Wed 13:45 to Wed 14:00',
    ]);
  });
});

describe('needed after days off', () => {
  it('they are pre-washed on the last working evening and kept in the desiccator from the first hour on', () => {
    const [outcome] = planNeeds([plates('p', 5, monday + 7 * day + 14 * hour)], lab);
    expect(told(outcome?.steps ?? []).slice(0, 3)).toEqual([
      'PRE_WASH Fri 17:00 to Fri 18:00',
      'AIR_DRY Fri 18:00 to Mon 08:00',
      'KEEP Mon 08:00 to Mon 12:45',
    ]);
  });
});

describe('what cannot be', () => {
  it('says that there is no time, when it would have had to begin, and the first time', () => {
    const [outcome] = planNeeds([plates('p', 5, monday + 16 * hour)], lab);
    expect(outcome?.obstacle).toMatchObject({ stage: 'WASH', lacks: 'time' });
    // Washed at 08:00, out of the hood at 08:00 on Tuesday at the earliest… but twelve hours are over at 21:00: so then.
    expect(outcome?.steps === null && clock(outcome.firstPossible ?? 0)).toBe('Tue 09:15');
  });

  it('names the hood when only its places are lacking', () => {
    const small = { ...lab, hoodPlaces: 4 };
    const [outcome] = planNeeds([plates('p', 5, monday + 2 * day + 14 * hour)], small);
    expect(outcome?.obstacle?.lacks).toBe('hood');
    expect(outcome?.steps === null && outcome.firstPossible).toBeNull();
  });

  it('names the oven when none is hot enough', () => {
    const cold = { ...lab, ovens: [oven('cold', { temperatureC: [40, 100] })] };
    const [outcome] = planNeeds([plates('p', 5, monday + 2 * day + 14 * hour)], cold);
    expect(outcome?.obstacle).toMatchObject({ stage: 'OVEN', lacks: 'oven' });
  });
});

interface Case {
  needs: PrepNeed[];
  resources: PrepResources;
}

const cases: fc.Arbitrary<Case> = fc
  .record({
    counts: fc.array(
      fc.tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 36, max: 44 * 4 }), fc.constantFrom(1, 2, 4, 8)),
      {
        minLength: 1,
        maxLength: 8,
      },
    ),
    hands: fc.integer({ min: 1, max: 2 }),
    tanks: fc.integer({ min: 1, max: 2 }),
    hoodPlaces: fc.integer({ min: 5, max: 25 }),
    busy: fc.array(fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 1, max: 6 })), { maxLength: 3 }),
  })
  .map(({ counts, hands, tanks, hoodPlaces, busy }) => ({
    needs: counts.map(([count, quarters, weight], index) =>
      plates(`need ${index}`, count, monday + 8 * hour + quarters * 15, { weight }),
    ),
    resources: {
      ...lab,
      hands,
      tanks,
      hoodPlaces,
      ovens: [
        oven('vacuum', {
          busy: busy.map(([from, long]) => ({ from: monday + from * 60, to: monday + (from + long) * 60 })),
        }),
      ],
    },
  }));

const stepsOf = (outcomes: readonly Outcome[]): PlannedStep[] => outcomes.flatMap(({ steps }) => steps ?? []);
const isIn = (from: number, to: number) => open.some((each) => each.from <= from && to <= each.to);
const most = (some: readonly { from: number; to: number; amount: number }[]): number =>
  Math.max(
    0,
    ...some.map(({ from }) =>
      some.reduce((sum, each) => (each.from <= from && from < each.to ? sum + each.amount : sum), 0),
    ),
  );

describe('whatever is asked', () => {
  it('no step takes more of a tank, the hood or the oven than there is, and all is done by its time', () => {
    fc.assert(
      fc.property(cases, ({ needs, resources }) => {
        const outcomes = planNeeds(needs, resources);
        const steps = stepsOf(outcomes);
        const washes = steps.filter(({ kind }) => kind === 'PRE_WASH');
        expect(most(washes.map(({ start, end }) => ({ from: start, to: end, amount: 1 })))).toBeLessThanOrEqual(
          resources.tanks,
        );
        expect(most(washes.map(({ start }) => ({ from: start, to: start + 10, amount: 1 })))).toBeLessThanOrEqual(
          resources.hands,
        );
        const inHood = outcomes.flatMap(({ needId, steps: own }) => {
          const need = needs.find(({ id }) => id === needId);
          const stage = need?.stages[0];
          const until = own?.find(({ kind }) => kind === 'AIR_DRY')?.end ?? 0;
          return (own ?? [])
            .filter(({ kind }) => kind === 'PRE_WASH')
            .map(({ end, load }) => ({
              from: end,
              to: until,
              amount: (stage?.kind === 'WASH' && stage.loads.find((each) => each.load === load)?.amount) || 0,
            }));
        });
        expect(most(inHood)).toBeLessThanOrEqual(resources.hoodPlaces);
        for (const { needId, steps: own } of outcomes) {
          const need = needs.find(({ id }) => id === needId);
          for (const { kind, start, end, isAttended } of own ?? []) {
            expect(start).toBeGreaterThanOrEqual(need?.floor ?? 0);
            expect(end).toBeLessThanOrEqual(need?.at ?? 0);
            if (isAttended) expect(isIn(start, end)).toBe(true);
            if (kind === 'OVEN') expect(isIn(start, start) && isIn(end, end)).toBe(true);
            const busy = resources.ovens[0]?.busy ?? [];
            if (kind === 'OVEN') expect(busy.some((each) => each.from < end && start < each.to)).toBe(false);
          }
          const order = (own ?? []).map(({ start }) => start);
          expect([...order].sort((a, b) => a - b)).toEqual(order);
        }
      }),
      { numRuns: 50, seed: 20_260_302 },
    );
  });

  it('the same needs give the same plan, in whatever order they are told', () => {
    fc.assert(
      fc.property(cases, ({ needs, resources }) => {
        const one = new Map(planNeeds(needs, resources).map((outcome) => [outcome.needId, outcome]));
        for (const outcome of planNeeds([...needs].reverse(), resources))
          expect(outcome).toEqual(one.get(outcome.needId));
      }),
      { numRuns: 15, seed: 7 },
    );
  });

  it('the first possible time is the first: no quarter hour before it will do, and it will', () => {
    fc.assert(
      fc.property(cases, ({ needs, resources }) => {
        const outcomes = planNeeds(needs, resources);
        const last = [...needs].sort((a, b) => a.weight - b.weight || b.at - a.at || (a.id < b.id ? 1 : -1))[0];
        const outcome = outcomes.find(({ needId }) => needId === last?.id);
        if (!last || !outcome || outcome.steps !== null) return;
        // What cannot be met takes nothing.
        const met = new Set(outcomes.filter(({ steps }) => steps !== null).map(({ needId }) => needId));
        const others = needs.filter(({ id }) => met.has(id));
        const fits = (at: number) =>
          // The last in turn, whatever its new time.
          planNeeds([...others, { ...last, at, weight: 0.5 }], resources).at(-1)?.steps !== null;
        const { firstPossible } = outcome;
        const until = firstPossible ?? last.floor + 2 * day;
        for (let at = Math.ceil(last.floor / 15) * 15; at < until; at += 15)
          if (isIn(at, at)) expect(fits(at)).toBe(false);
        if (firstPossible !== null) expect(fits(firstPossible)).toBe(true);
      }),
      { numRuns: 8, seed: 11 },
    );
  });
});
