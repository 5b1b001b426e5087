// A sensor as GraphQL shows it.
import { builder } from '../builder.ts';
import { dayRange } from './day-range.ts';
import { type SensorLeftOut, leftOutOf } from './left-out.ts';
import { SensorRef } from './refs.ts';
import { asideWhy, sensorFacts } from './sensor-facts.ts';

const LeftOutReadings = builder.objectRef<SensorLeftOut>('SensorLeftOut').implement({
  description: "Readings of a sensor that do not speak for its room and are left out of the room's air.",
  fields: (t) => ({
    from: t.expose('from', { type: 'DateTime', description: 'The first of them.' }),
    until: t.expose('until', { type: 'DateTime', description: 'The last of them.' }),
    quantity: t.string({
      description: '`temperature` or `relative humidity`.',
      resolve: ({ measure }) => (measure === 'temperature' ? measure : 'relative humidity'),
    }),
    why: t.exposeString('why', { description: 'Why: absurd, stuck, carried in, or far from the other sensors.' }),
  }),
});

builder.node(SensorRef, {
  name: 'Sensor',
  description: 'Something that reads temperature, relative humidity or both in one room.',
  id: { resolve: (sensor) => sensor.id },
  loadWithoutCache: (id, context) => context.load.sensor.load(id),
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Its name, once in the room.' }),
    setAsideWhy: t.string({
      nullable: true,
      description:
        "Why it is left out of the room's air: what somebody said, or the fault its last reading is in; null while it counts.",
      resolve: (sensor, _, context) => asideWhy(context, sensor),
    }),
    isSetAsideByHand: t.boolean({
      description: 'Somebody set it aside; `takeSensorBack` lets it count again.',
      resolve: (sensor) => sensor.setAsideWhy !== null,
    }),
    readings: t.int({
      description: 'How many values it read so far; a temperature and a humidity of one instant are two.',
      resolve: async (sensor, _, context) => (await sensorFacts(context, sensor.roomId)).get(sensor.id)?.readings ?? 0,
    }),
    lastReadingAt: t.field({
      type: 'DateTime',
      nullable: true,
      description: 'When it last read anything.',
      resolve: async (sensor, _, context) => {
        const last = (await sensorFacts(context, sensor.roomId)).get(sensor.id)?.lastMs;
        return last == null ? null : new Date(last);
      },
    }),
    leftOut: t.field({
      type: [LeftOutReadings],
      description: "What of its readings was left out of the room's air, on whole UTC days; at most 400 of them.",
      complexity: 20,
      args: {
        from: t.arg({ type: 'DateTime', description: 'From here on; a week ago when not given.' }),
        until: t.arg({ type: 'DateTime', description: 'Until here; now when not given.' }),
      },
      resolve: async (sensor, args, context) => {
        const { fromDay, untilDay } = dayRange(args, context.now(), { days: 7, most: 400 });
        return (await leftOutOf(context, sensor.roomId, fromDay, untilDay)).get(sensor.id) ?? [];
      },
    }),
  }),
});
