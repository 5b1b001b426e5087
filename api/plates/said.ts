// What is said when plates are prepared.
import { z } from 'zod';
import { directions, eventInput, frontEdges, said } from '../stock/service.ts';

const batch = { ...eventInput, plates: said.plates, room: said.name.nullish(), closure: said.closure.nullish() };

export const prewashSaid = z.object({
  ...batch,
  solvent: z.string('which solvent').trim().min(1, 'which solvent').max(200, 'at most 200 signs'),
  direction: z.enum(directions, directions.join(' or ')).nullish(),
  fullLength: z.boolean().nullish(),
  frontEdge: z.enum(frontEdges, frontEdges.join(', ')).nullish(),
  isMobilePhase: z.boolean().nullish(),
  tankLoads: z.int('a whole number of loads').min(1, '1 load or more').max(1000, 'at most 1000 loads').nullish(),
  mlPerLoad: said.ml.nullish(),
  tankMinutes: said.minutes.max(1440, 'at most 1440 min').nullish(),
});

export const activateSaid = z.object({
  ...batch,
  temperatureC: said.celsius,
  minutes: said.minutes,
  vacuum: z.boolean().nullish(),
  oven: said.name.nullish(),
  waterFraction: said.waterFraction.nullish(),
});

export const equilibrateSaid = z.object({
  ...batch,
  salt: said.name.nullish(),
  inRoom: said.name.nullish(),
  humidityPercent: said.percent.nullish(),
  temperatureC: said.celsius.nullish(),
  hours: said.hours,
});
