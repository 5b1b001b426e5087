// A sensor as GraphQL shows it.
import { builder } from '../builder.ts';
import { SensorRef } from './refs.ts';

builder.node(SensorRef, {
  name: 'Sensor',
  description: 'Something that reads temperature, relative humidity or both in one room.',
  id: { resolve: (sensor) => sensor.id },
  loadWithoutCache: (id, context) => context.load.sensor.load(id),
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Its name, once in the room.' }),
    setAsideWhy: t.exposeString('setAsideWhy', {
      nullable: true,
      description: "Why it is left out of the room's air; null while it counts.",
    }),
  }),
});
