// Air that is taken for granted from an instant on: a desiccant renewed, a dial read off. Kept with the room, oldest first.
import { z } from 'zod';
import { blockSeconds } from '../science/climate.ts';
import type { TypicalDay } from '../science/history.ts';
import { constantDay } from './typical.ts';

const whys = ['RENEWED', 'READ', 'SAID'] as const;

const step = z.object({
  fromMs: z.number(),
  /** Null: only the renewal is known, the humidity stays what it was. */
  humidityPercent: z.number().nullable(),
  temperatureC: z.number().nullable(),
  why: z.enum(whys),
});
export type AssumedStep = z.output<typeof step>;
const steps = z.array(step);

/** Where only a humidity is taken for granted: an indoor temperature (common practice); it counts as uncertain anyway. */
export const usualTemperatureC = 20;

/** As stored; nothing where nothing was said. SQLite gives text where a statement is written by hand. */
export function stepsOf(stored: unknown): AssumedStep[] {
  const read = steps.safeParse(typeof stored === 'string' ? (JSON.parse(stored) as unknown) : stored);
  return read.success ? read.data : [];
}

const blockMs = 1000 * blockSeconds;

export interface FromBlock {
  /** Blocks since 1970. */
  readonly fromBlock: number;
  readonly typical: TypicalDay;
}

/** Steps with a humidity, as days of one air. */
export const daysOf = (of: readonly AssumedStep[], temperatureC: number | null): FromBlock[] =>
  of.flatMap(({ fromMs, humidityPercent, temperatureC: own }) =>
    humidityPercent === null
      ? []
      : [
          {
            fromBlock: Math.floor(fromMs / blockMs),
            typical: constantDay(own ?? temperatureC ?? usualTemperatureC, humidityPercent),
          },
        ],
  );

/** With another one in its place; two of one instant are one. */
export function withStep(of: readonly AssumedStep[], added: AssumedStep): AssumedStep[] {
  const rest = of.filter(({ fromMs, why }) => fromMs !== added.fromMs || why !== added.why);
  return [...rest, added].sort((one, other) => one.fromMs - other.fromMs);
}

/** When a desiccant was last renewed, of what is written down. */
export const lastRenewal = (of: readonly AssumedStep[]): Date | null => {
  const last = of.findLast(({ why }) => why === 'RENEWED');
  return last ? new Date(last.fromMs) : null;
};
