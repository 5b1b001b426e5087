// A lab with ovens, and ways to plan and to look at what was planned.
import { allPlanned } from '../../api/ovens/planning.ts';
import type { World } from '../support/world.ts';

export interface SeenRun {
  id: string;
  state: string;
  isPinned: boolean;
  start: string;
  end: string;
  plannedStart: string;
  plannedEnd: string;
  temperatureC: number;
  setupMinutes: number;
  reason: string;
  oven: { id: string; name: string };
  loads: {
    id: string;
    part: number;
    parts: number;
    dryGrams: number | null;
    plates: number | null;
    areaCm2: number;
    waterFraction: number | null;
    isWeighed: boolean;
    container: { label: string };
    request: { id: string; stage: string };
  }[];
}

export const runFields = `id state isPinned start end plannedStart plannedEnd temperatureC setupMinutes reason
  oven { id name } loads { id part parts dryGrams plates areaCm2 waterFraction isWeighed container { label }
  request { id stage } }`;

export interface SeenPlan {
  id: string;
  words: string;
  isProven: boolean;
  gapMinutes: number;
  because: string;
  changes: { label: string; why: string; sentence: string; from: { oven: string; start: string } | null }[];
  leftOut: { label: string; why: string }[];
  due: string[];
}

export const planFields =
  'id words isProven gapMinutes because changes { label why sentence from { oven start } } leftOut { label why } due';

/** The time of day in Helsinki. */
export const clock = (at: Date): string =>
  at.toLocaleTimeString('en-GB', { timeZone: 'Europe/Helsinki', hour: '2-digit', minute: '2-digit' });

/** A vacuum oven, open from 07 to 19 every day unless told otherwise. */
export const vacuumOven = {
  name: 'vacuum oven',
  kind: 'VACUUM',
  room: 'wet bench',
  shelves: 2,
  shelfAreaCm2: 900,
  shelfHeightMm: 120,
  lowestC: 30,
  highestC: 200,
  heatMinutesPerC: 0.5,
  coolMinutesPerC: 1,
  doorMinutes: 5,
  hours: [{ days: [1, 2, 3, 4, 5, 6, 7], from: '07:00', to: '19:00' }],
};

interface Stepped {
  run: SeenRun;
  notes: string[];
  plan: SeenPlan | null;
}

export const ovensIn = (world: World) => ({
  async oven(more: object = {}): Promise<string> {
    const { oven } = await world.tell<{ oven: { id: string } }>('addOven', { ...vacuumOven, ...more }, 'oven { id }');
    return oven.id;
  },
  async plan(): Promise<{ plan: SeenPlan; runs: SeenRun[] }> {
    return world.tell('planOvens', {}, `plan { ${planFields} } runs { ${runFields} }`);
  },
  async current(): Promise<SeenPlan | null> {
    return (await world.ask<{ ovenPlan: SeenPlan | null }>(`{ ovenPlan { ${planFields} } }`)).ovenPlan;
  },
  async runs(state?: string): Promise<SeenRun[]> {
    const args = state ? `(state: [${state}])` : '';
    return (await world.ask<{ dryingRuns: SeenRun[] }>(`{ dryingRuns${args} { ${runFields} } }`)).dryingRuns;
  },
  async ask(label: string, more: object = {}): Promise<string> {
    return (await world.tell<{ id: string }>('requestDrying', { label, why: 'too wet', ...more })).id;
  },
  /** One click; what it plans anew is waited for. */
  async step(mutation: string, run: string, more: object = {}): Promise<Stepped> {
    const done = await world.tell<Omit<Stepped, 'plan'>>(mutation, { run, ...more }, `run { ${runFields} } notes`);
    await allPlanned(world.database);
    const { ovenPlan } = await world.ask<{ ovenPlan: SeenPlan | null }>(`{ ovenPlan { ${planFields} } }`);
    return { ...done, plan: ovenPlan };
  },
});

export type Ovens = ReturnType<typeof ovensIn>;
