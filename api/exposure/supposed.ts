// What could happen to a container and has not, in the words of the estimator. A drying goes through the tray as a real one does.
import { z } from 'zod';
import type { Closure } from '../database/generated/sqlite/client.ts';
import { checked, invalid, missing } from '../errors.ts';
import type { Action } from '../science/history.ts';
import { inOvenKept, inOvenSaid } from '../stock/service.ts';
import { lidOf } from './closure.ts';
import type { Numbers } from './numbers.ts';
import { driedBy, type OvenLoad } from './weighed.ts';

export const whatIfTypes = ['OPENED', 'CLOSED', 'MOVED', 'MIXED', 'TAKEN', 'DRIED'] as const;

const inOven = z.object(inOvenSaid);

export interface Supposed extends z.input<typeof inOven> {
  type: (typeof whatIfTypes)[number];
  at?: Date | null | undefined;
  closure?: Closure | null | undefined;
  room?: string | null | undefined;
  grams?: number | null | undefined;
  waterFraction?: number | null | undefined;
  temperatureC?: number | null | undefined;
  minutes?: number | null | undefined;
  vacuum?: boolean | null | undefined;
}

/** What is supposed, with the room it names found. */
export interface Step {
  readonly event: Supposed;
  readonly atS: number;
  readonly roomId: string | null;
  readonly path: string;
}

/** What is supposed of: its numbers, and what of it goes into an oven. */
export interface Of {
  readonly numbers: Numbers;
  readonly load: OvenLoad;
}

const scoopSeconds = 300;
/** One sigma of a drying that is only supposed, kg/kg (as of a measured one). */
const driedSd = 0.0015;
const mostMinutes = 10_080;

/** Dried to what was said; else to what a tray so deep keeps after so many minutes; else to what the temperature leaves. */
function supposedDrying({ event, atS, path }: Step, { numbers, load }: Of): Action {
  const { waterFraction = null, temperatureC = null, minutes = null, vacuum } = event;
  if (waterFraction !== null) {
    if (!(waterFraction >= 0 && waterFraction <= 2)) {
      throw invalid(`${path}.waterFraction`, waterFraction, 'kg water per kg dry sorbent, 0 to 2');
    }
    return { kind: 'dried', atS, waterFraction, sd: driedSd };
  }
  if (temperatureC === null) throw missing(`${path}.waterFraction`, 'water afterwards, or the temperature of a recipe');
  if (!(temperatureC >= 20 && temperatureC <= 500)) throw invalid(`${path}.temperatureC`, temperatureC, '20 to 500 °C');
  if (minutes !== null && !(minutes > 0 && minutes <= mostMinutes)) {
    throw invalid(`${path}.minutes`, minutes, `more than 0, at most ${mostMinutes} min`);
  }
  const kept = inOvenKept(checked(inOven, event, path));
  const said = { temperatureC, minutes, vacuum: vacuum ?? false, waterFraction: null, ...kept };
  return driedBy(atS, said, numbers.isotherm, load);
}

export function supposedActions(step: Step, of: Of): Action[] {
  const { event, atS, roomId, path } = step;
  switch (event.type) {
    case 'OPENED':
      return [{ kind: 'opened', atS }];
    case 'CLOSED': {
      const closure = lidOf(event.closure ?? 'TIGHT');
      if (closure === 'open') throw invalid(`${path}.closure`, 'OPEN', 'a closure; or the type OPENED');
      return [{ kind: 'closed', atS, closure }];
    }
    case 'MOVED':
      if (!roomId) throw missing(`${path}.room`, 'the name of a room');
      return [{ kind: 'moved', atS, room: roomId }];
    case 'MIXED':
      return [{ kind: 'mixed', atS }];
    case 'TAKEN': {
      const grams = event.grams ?? null;
      if (grams === null) throw missing(`${path}.grams`, 'dry grams, more than 0');
      if (!(grams > 0)) throw invalid(`${path}.grams`, grams, 'dry grams, more than 0');
      return [{ kind: 'taken', atS, id: path, dryKg: grams / 1000, openSeconds: scoopSeconds }];
    }
    case 'DRIED':
      return [supposedDrying(step, of)];
  }
}
