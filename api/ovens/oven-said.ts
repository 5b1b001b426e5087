// What is said of an oven.
import { z } from 'zod';
import { said } from '../stock/service.ts';

const id = z.string('the id of an oven');
const hours = z
  .array(z.object({ days: z.array(z.int('Monday 1 to Sunday 7')), from: z.string(), to: z.string() }), 'hours')
  .max(14, 'at most 14 spans');

const perC = z.number('minutes per °C').min(0, '0 or more').max(60, 'at most 60 min per °C');
const celsius = z.number('°C').min(20, '20 °C or more').max(600, 'at most 600 °C');

const given = {
  kind: z.enum(['AIR', 'VACUUM'], 'AIR or VACUUM'),
  room: said.name,
  shelves: z.int('a whole number of shelves').min(1, '1 shelf or more').max(50, 'at most 50 shelves'),
  shelfAreaCm2: z.number('cm²').min(10, '10 cm² or more').max(100_000, 'at most 100000 cm²'),
  shelfHeightMm: z.number('mm').min(10, '10 mm or more').max(2000, 'at most 2000 mm'),
  lowestC: celsius,
  highestC: celsius,
};

const optional = {
  hasFan: z.boolean().nullish(),
  heatMinutesPerC: perC.nullish(),
  coolMinutesPerC: perC.nullish(),
  doorMinutes: z.int('whole minutes').min(0, '0 min or more').max(120, 'at most 120 min').nullish(),
  pressureMbar: z.number('mbar').min(0.001, '0.001 mbar or more').max(1100, 'at most 1100 mbar').nullish(),
  waterMbar: z.number('mbar').min(0, '0 mbar or more').max(100, 'at most 100 mbar').nullish(),
  pumpM3PerH: z.number('m³/h').positive('more than 0 m³/h').max(1000, 'at most 1000 m³/h').nullish(),
  isUnattended: z.boolean().nullish(),
  hours: hours.nullish(),
  clientKey: said.clientKey,
};

export const addOvenSaid = z.object({ name: said.name.max(60, 'at most 60 signs'), ...given, ...optional });
export const setOvenSaid = z.object({
  oven: id,
  name: said.name.max(60, 'at most 60 signs').nullish(),
  kind: given.kind.nullish(),
  room: said.name.nullish(),
  shelves: given.shelves.nullish(),
  shelfAreaCm2: given.shelfAreaCm2.nullish(),
  shelfHeightMm: given.shelfHeightMm.nullish(),
  lowestC: celsius.nullish(),
  highestC: celsius.nullish(),
  ...optional,
});

export const ovenSaid = z.object({ oven: id, clientKey: said.clientKey });
