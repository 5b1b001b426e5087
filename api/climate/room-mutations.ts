// Mutations on rooms and their sensors.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import { addMutation } from '../mutation.ts';
import { RoomRef, SensorRef } from './refs.ts';
import { RoomKindEnum } from './room-type.ts';
import { addRoom, roomInput, setAssumedAir, assumedInput } from './rooms.ts';
import {
  airReadOff,
  airTakenBack,
  readOffInput,
  renewDesiccant,
  renewInput,
  takeBackAirInput,
} from './room-renewal.ts';
import { setAsideInput, setSensorAside, takeBackInput, takeSensorBack } from './sensors.ts';

/** The room that was just written, as it now stands. */
export async function writtenRoom({ roomId }: { roomId: string }, { load }: Context) {
  const room = await load.room.clear(roomId).load(roomId);
  if (!room) throw new Error(`room ${roomId} is gone`);
  return room;
}

export async function writtenSensor({ sensorId }: { sensorId: string }, { load }: Context) {
  const sensor = await load.sensor.clear(sensorId).load(sensorId);
  if (!sensor) throw new Error(`sensor ${sensorId} is gone`);
  return sensor;
}

const roomAnswer = (name: string, description: string) =>
  builder.objectRef<{ roomId: string }>(name).implement({
    description,
    fields: (t) => ({
      room: t.field({
        type: RoomRef,
        description: 'The room as it now stands.',
        resolve: (answer, _, context) => writtenRoom(answer, context),
      }),
    }),
  });

const sensorAnswer = (name: string, description: string) =>
  builder.objectRef<{ sensorId: string }>(name).implement({
    description,
    fields: (t) => ({
      sensor: t.field({
        type: SensorRef,
        description: 'The sensor as it now stands.',
        resolve: (answer, _, context) => writtenSensor(answer, context),
      }),
    }),
  });

const roomText = "The room's name.";
const sensorText = "The sensor's name in the room.";
const humidityText =
  'Relative humidity to take for granted where there are no readings, %, 0 to 100. Estimates count it as uncertain.';
const temperatureText =
  'Temperature to take for granted where there are no readings, °C, -40 to 85; 20 °C when only a humidity is given.';

addMutation('addRoom', {
  description: 'Adds a room, a cold store or a desiccator.',
  check: roomInput,
  success: roomAnswer('RoomAdded', 'A room was added.'),
  run: (input, context) => addRoom(context, input),
  fields: (t) => ({
    name: t.string({ required: true, description: 'Its name, once in the lab.' }),
    kind: t.field({ type: RoomKindEnum, description: 'A room (when not given), a cold store or a desiccator.' }),
    assumedHumidityPercent: t.float({ description: humidityText }),
    assumedTemperatureC: t.float({ description: temperatureText }),
    desiccantRenewedAt: t.field({ type: 'DateTime', description: 'When its desiccant was last renewed.' }),
  }),
});

addMutation('setAssumedAir', {
  description:
    'Says which air to take for granted where a room has no readings: before its record begins, or without one. What is not given is taken for granted no more.',
  check: assumedInput,
  success: roomAnswer('AssumedAirSet', "A room's assumed air was set."),
  run: (input, context) => setAssumedAir(context, input),
  fields: (t) => ({
    room: t.string({ required: true, description: roomText }),
    humidityPercent: t.float({ description: humidityText }),
    temperatureC: t.float({ description: temperatureText }),
  }),
});

addMutation('renewDesiccant', {
  description:
    'Notes that the desiccant of a desiccator was renewed, and which humidity to take for granted from then on where nothing is read.',
  check: renewInput,
  success: roomAnswer('DesiccantRenewed', 'The desiccant was renewed.'),
  run: (input, context) => renewDesiccant(context, input),
  fields: (t) => ({
    room: t.string({ required: true, description: roomText }),
    at: t.field({ type: 'DateTime', description: 'When; now when not given.' }),
    humidityPercent: t.float({
      description:
        'Relative humidity to take for granted from then on, %, 0 to 100; what was taken for granted before when not given.',
    }),
  }),
});

addMutation('noteRoomAir', {
  description:
    'Notes what a dial or another hygrometer without a memory showed. It is taken for granted from then on, until the next such note or until readings come; estimates count it as uncertain.',
  check: readOffInput,
  success: roomAnswer('RoomAirNoted', 'What a dial showed was noted.'),
  run: (input, context) => airReadOff(context, input),
  fields: (t) => ({
    room: t.string({ required: true, description: roomText }),
    at: t.field({ type: 'DateTime', description: 'When it was read off; now when not given.' }),
    humidityPercent: t.float({ required: true, description: 'Relative humidity it showed, %, 0 to 100.' }),
    temperatureC: t.float({
      description: 'Temperature beside it, °C; what the room is assumed to have when not given.',
    }),
  }),
});

addMutation('takeRoomAirBack', {
  description: 'Takes back what was noted of one instant: a renewal, or what a dial showed.',
  check: takeBackAirInput,
  success: roomAnswer('RoomAirTakenBack', 'A note was taken back.'),
  run: (input, context) => airTakenBack(context, input),
  fields: (t) => ({
    room: t.string({ required: true, description: roomText }),
    from: t.field({ type: 'DateTime', required: true, description: 'The instant of the note.' }),
  }),
});

addMutation('setSensorAside', {
  description: "Leaves a sensor out of its room's air, past and to come. Its readings are kept.",
  check: setAsideInput,
  success: sensorAnswer('SensorSetAside', 'A sensor was set aside.'),
  run: (input, context) => setSensorAside(context, input),
  fields: (t) => ({
    room: t.string({ required: true, description: roomText }),
    sensor: t.string({ required: true, description: sensorText }),
    why: t.string({ required: true, description: 'Why, in a few words.' }),
  }),
});

addMutation('takeSensorBack', {
  description: "Lets a sensor that somebody set aside count in its room's air again.",
  check: takeBackInput,
  success: sensorAnswer('SensorTakenBack', 'A sensor counts again.'),
  run: (input, context) => takeSensorBack(context, input),
  fields: (t) => ({
    room: t.string({ required: true, description: roomText }),
    sensor: t.string({ required: true, description: sensorText }),
  }),
});
