// Readings sent by scripts.
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import { addReadings, mostReadings, type ReadingsAdded, readingsInput } from './add-readings.ts';
import { RoomRef, SensorRef } from './refs.ts';
import { writtenRoom, writtenSensor } from './room-mutations.ts';

const ReadingInput = builder.inputType('ReadingInput', {
  description: 'What a sensor read at one instant: a temperature, a relative humidity, or both.',
  fields: (t) => ({
    at: t.field({ type: 'DateTime', required: true, description: 'When it was read.' }),
    temperatureC: t.float({ description: 'Temperature, °C.' }),
    humidityPercent: t.float({ description: 'Relative humidity, %.' }),
  }),
});

const ReadingsAddedRef = builder.objectRef<ReadingsAdded>('ReadingsAdded').implement({
  description:
    'What became of the readings. A temperature and a humidity of one instant count as two. What room air cannot be is kept and left out of the air: see the leftOut of the sensor.',
  fields: (t) => ({
    room: t.field({
      type: RoomRef,
      description: 'The room.',
      resolve: (answer, _, context) => writtenRoom(answer, context),
    }),
    sensor: t.field({
      type: SensorRef,
      description: 'The sensor; made by its first reading.',
      resolve: (answer, _, context) => writtenSensor(answer, context),
    }),
    added: t.exposeInt('added', { description: 'Values that are new.' }),
    repeated: t.exposeInt('repeated', { description: 'Values that were there already, for the same instant.' }),
    disagreeing: t.exposeInt('disagreeing', {
      description: 'Values for an instant that has another value already; the first is kept.',
    }),
    notes: t.exposeStringList('notes', { description: 'What disagreed, in sentences.' }),
  }),
});

addMutation('addReadings', {
  description: `Adds what one sensor read, at most ${mostReadings} readings in one call. Sent again it changes nothing: a reading is known by its sensor, quantity and instant.`,
  check: readingsInput,
  success: ReadingsAddedRef,
  run: (input, context) => addReadings(context, input),
  fields: (t) => ({
    room: t.string({ required: true, description: "The room's name." }),
    sensor: t.string({ description: "The sensor's name in the room, made when new; `logger` when not given." }),
    readings: t.field({ type: [ReadingInput], required: true, description: 'What was read, in any order.' }),
  }),
});
