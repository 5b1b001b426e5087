// What is said of a request.
import { z } from 'zod';
import { said } from '../stock/service.ts';

export const requestSaid = z.object({
  label: said.label,
  dryGrams: said.grams,
  plates: said.plates,
  why: z.string('why').trim().min(1, 'why').max(500, 'at most 500 signs'),
  wantedBy: z.date('an instant').nullish(),
  temperatureC: said.celsius.nullish(),
  minutes: said.minutes.nullish(),
  priority: z.literal([1, 2, 4, 8], '1, 2, 4 or 8').nullish(),
  depthMm: said.mm.min(1, '1 mm or more').max(100, 'at most 100 mm').nullish(),
  readyAt: z.date('an instant').nullish(),
  clientKey: said.clientKey,
});

/** Each may be left out (stays) or null (taken away). */
export const changeSaid = requestSaid
  .pick({
    wantedBy: true,
    temperatureC: true,
    minutes: true,
    priority: true,
    depthMm: true,
    readyAt: true,
    clientKey: true,
  })
  .extend({ id: z.string('the id of a request') });

export const withdrawSaid = z.object({ id: z.string('the id of a request'), clientKey: said.clientKey });

export const moveSaid = z.object({
  id: z.string('the id of a request'),
  before: z.string('the id of a request').nullish(),
  clientKey: said.clientKey,
});
