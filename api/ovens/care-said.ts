// What is said when oven care is noted, ended or taken back.
import { z } from 'zod';
import type { OvenCareKind } from '../database/generated/sqlite/client.ts';
import { said } from '../stock/service.ts';

export const careKinds = [
  'TRUE_TEMPERATURE',
  'VACUUM_GAUGE',
  'PUMP_OIL',
  'COLD_TRAP',
  'BAKE_OUT',
  'OUT_OF_ORDER',
  'HYGROMETER',
] as const satisfies readonly OvenCareKind[];

const value = z.number('a number').min(0, '0 or more').max(1100, 'at most 1100');

export const careSaid = z.object({
  kind: z.enum(careKinds, careKinds.join(', ')),
  oven: z.string('the id of an oven').nullish(),
  room: said.name.nullish(),
  sensor: said.name.nullish(),
  at: said.at,
  until: said.at,
  setValue: value.nullish(),
  foundValue: value.nullish(),
  temperatureC: said.celsius.nullish(),
  salt: said.name.nullish(),
  note: said.text,
  clientKey: said.clientKey,
});

export const careBackSaid = z.object({ care: z.string('the id of what was noted'), clientKey: said.clientKey });

export type Said = z.output<typeof careSaid>;

export const endSaid = z.object({ care: z.string('the id of what was noted'), at: said.at, clientKey: said.clientKey });
