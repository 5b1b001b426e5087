// How long plates need to have an air's humidity, asked before anything is written.
import { z } from 'zod';
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import { invalid } from '../errors.ts';
import { saltSource } from '../science/salts.ts';
import { containerOf } from '../stock/service.ts';
import { equilibrateSaid } from './said.ts';
import { minutesNeeded, overWhat } from './over.ts';

export const neededSaid = equilibrateSaid.pick({
  label: true,
  salt: true,
  inRoom: true,
  humidityPercent: true,
  temperatureC: true,
});

interface Needed {
  humidityPercent: number;
  temperatureC: number;
  minutes: number | null;
  source: string;
}

export const NeededRef = builder.objectRef<Needed>('EquilibrationNeeded').implement({
  description: 'The air of an equilibration, and how long a dry layer needs in it.',
  fields: (t) => ({
    humidityPercent: t.exposeFloat('humidityPercent', { description: 'Relative humidity, %.' }),
    temperatureC: t.exposeFloat('temperatureC', { description: 'Temperature, °C.' }),
    minutes: t.exposeFloat('minutes', {
      nullable: true,
      description:
        'Minutes until a dry layer lacks a twentieth of it, each plate free in still air; null beyond a day.',
    }),
    source: t.exposeString('source', { description: 'Where these come from.' }),
  }),
});

export async function neededOf(context: Context, asked: z.output<typeof neededSaid>): Promise<Needed> {
  const { database, lab } = context;
  const box = await containerOf({ tx: database.read, labId: lab.id }, asked.label, 'label');
  if (box.kind !== 'PLATE_BOX') throw invalid('label', asked.label, 'the label of a plate box');
  const air = await overWhat(context, asked);
  const model =
    'minutes from the exposure model for a thin layer in still air; stacked plates and a wide jar take longer';
  const salt = asked.salt ? `${saltSource(asked.salt.toLowerCase())}; ` : '';
  const { humidityPercent, temperatureC } = air;
  return { humidityPercent, temperatureC, minutes: await minutesNeeded(context, box.id, air), source: salt + model };
}
