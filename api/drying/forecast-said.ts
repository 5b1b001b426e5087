// What is said when a forecast is asked for.
import { z } from 'zod';
import { inOvenSaid, said } from '../stock/service.ts';

export const forecastSaid = z.object({
  label: said.label.nullish(),
  sorbent: said.name.nullish(),
  grams: said.grams,
  trayAreaCm2: z.number('cm²').positive('more than 0 cm²').max(1e5, 'at most 100000 cm²').nullish(),
  startWaterFraction: said.waterFraction.nullish(),
  temperatureC: said.celsius.min(20, '20 °C or more').nullish(),
  minutes: said.minutes.positive('more than 0 min').max(10_080, 'at most 10080 min').nullish(),
  vacuum: z.boolean().nullish(),
  room: said.name.nullish(),
  target: z.number('a mass fraction').positive('more than 0').max(1, '1 or less: a fraction, 0.01 for 1 %').nullish(),
  ...inOvenSaid,
});

export type Said = z.output<typeof forecastSaid>;
