// What an oven may not be: of a name that is taken, colder than cold, without hours.
import { Prisma, type Oven } from '../database/generated/sqlite/client.ts';
import { invalid } from '../errors.ts';
import type { Work } from '../work.ts';
import { checkHours, type OpenHours } from './rules.ts';
import { used } from './ovens.ts';

export async function checkName({ tx, labId }: Work, name: string, but: string | null): Promise<void> {
  const taken = (await used(tx, labId)).some(
    (oven) => oven.id !== but && oven.name.toLowerCase() === name.toLowerCase(),
  );
  if (taken) throw invalid('input.name', name, 'there is an oven of that name; another name');
}

export function checkWhole(oven: Pick<Oven, 'lowestC' | 'highestC' | 'kind' | 'pressureMbar'>): void {
  const { lowestC, highestC, kind, pressureMbar } = oven;
  if (lowestC >= highestC) throw invalid('input.lowestC', lowestC, `below its highest, ${highestC} °C`);
  if (kind === 'AIR' && pressureMbar !== null && pressureMbar < 900) {
    throw invalid('input.pressureMbar', pressureMbar, 'none for an oven full of air; or kind VACUUM');
  }
}

export const hoursKept = (some: OpenHours[] | null | undefined) => {
  if (!some) return Prisma.DbNull;
  checkHours(some, 'input.hours');
  return some as unknown as Prisma.InputJsonValue;
};
