// What the screen of rooms and air asks and tells.
import { act } from '../act/told.ts';
import { question } from '../ask.ts';
import type { roomKindWord } from '../say/words.ts';
import { flag, given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';

const roomFields = {
  id: text,
  name: text,
  kind: word<keyof typeof roomKindWord>(),
  temperatureC: maybe(number),
  relativeHumidityPercent: maybe(number),
  vapourGramsPerM3: maybe(number),
  airAsOf: maybe(instant),
  isAirFilled: flag,
  lastReadingAt: maybe(instant),
  assumedHumidityPercent: maybe(number),
  assumedTemperatureC: maybe(number),
  desiccantRenewedAt: maybe(instant),
  assumedAir: many({
    from: instant,
    humidityPercent: maybe(number),
    temperatureC: maybe(number),
    why: word<'RENEWED' | 'READ' | 'SAID'>(),
  }),
  sensors: many({
    name: text,
    setAsideWhy: maybe(text),
    isSetAsideByHand: flag,
    readings: number,
    lastReadingAt: maybe(instant),
  }),
};
export type Room = Answer<typeof roomFields>;

export const roomsQuestion = question<Record<string, never>>('Rooms')({
  lab: { settings: { desiccantDays: number } },
  rooms: given('first: 200', { nodes: many(roomFields) }),
});

export const airQuestion = question<{ room: string; from: string; until: string; points: number }>(
  'Air',
  '$room: String!, $from: DateTime, $until: DateTime, $points: Int',
)({
  room: maybe(
    given('name: $room', {
      air: given(
        'from: $from, until: $until, points: $points',
        many({
          at: instant,
          temperatureC: maybe(number),
          temperatureLowC: maybe(number),
          temperatureHighC: maybe(number),
          relativeHumidityPercent: maybe(number),
          humidityLowPercent: maybe(number),
          humidityHighPercent: maybe(number),
          vapourGramsPerM3: maybe(number),
          isFilled: flag,
        }),
      ),
    }),
  ),
});
export type AirPoint = NonNullable<Answer<typeof airQuestion.shape>['room']>['air'][number];

export type Asks = 'dates' | 'zone' | 'unit' | 'humidity' | 'quantity' | 'start';

/** What a person answered; empty where the file says it itself. */
export interface Answers {
  dates?: string;
  zone?: string;
  unit?: string;
  humidity?: string;
  quantity?: string[];
  start?: string;
  everySeconds?: number;
}

const understoodFields = {
  understood: text,
  leftOutCount: number,
  leftOut: many({ line: number, why: text }),
  questions: many({ asks: word<Asks>(), about: text, choices: many(text) }),
  series: many({
    sensor: text,
    column: text,
    quantity: text,
    unit: maybe(text),
    readings: number,
    missing: number,
    first: maybe(instant),
    last: maybe(instant),
    min: maybe(number),
    max: maybe(number),
    mean: maybe(number),
    firstRows: many({ line: number, at: instant, value: number }),
  }),
};
export type Understood = Answer<typeof understoodFields>;

export const fileQuestion = question<{ id: string; answers: Answers }>(
  'File',
  '$id: ID!, $answers: LoggerAnswersInput',
)({
  loggerFile: maybe(
    given('id: $id, answers: $answers', { id: text, name: text, importedAt: maybe(instant), ...understoodFields }),
  ),
});
export type LoggerFile = NonNullable<Answer<typeof fileQuestion.shape>['loggerFile']>;

const answersShape = {
  dates: maybe(text),
  zone: maybe(text),
  unit: maybe(text),
  humidity: maybe(text),
  quantity: maybe(many(text)),
  start: maybe(text),
  everySeconds: maybe(number),
};
export const importAct = act(
  'importReadings',
  'ReadingsImported',
  { file: text, room: text, answers: maybe(answersShape) },
  { added: number, repeated: number, disagreeing: number, import: { notes: many(text) } },
);

export const addRoomAct = act(
  'addRoom',
  'RoomAdded',
  {
    name: text,
    kind: maybe(word<keyof typeof roomKindWord>()),
    assumedHumidityPercent: maybe(number),
    assumedTemperatureC: maybe(number),
  },
  { room: { name: text } },
);
export const renewAct = act(
  'renewDesiccant',
  'DesiccantRenewed',
  { room: text, at: maybe(instant), humidityPercent: maybe(number) },
  { room: { name: text } },
);
export const noteAirAct = act(
  'noteRoomAir',
  'RoomAirNoted',
  { room: text, at: maybe(instant), humidityPercent: number, temperatureC: maybe(number) },
  { room: { name: text } },
);
export const takeAirBackAct = act(
  'takeRoomAirBack',
  'RoomAirTakenBack',
  { room: text, from: instant },
  { room: { name: text } },
);
export const assumedAct = act(
  'setAssumedAir',
  'AssumedAirSet',
  { room: text, humidityPercent: maybe(number), temperatureC: maybe(number) },
  { room: { name: text } },
);
export const leftOutQuestion = question<{ room: string; from: string; until: string }>(
  'LeftOut',
  '$room: String!, $from: DateTime, $until: DateTime',
)({
  room: maybe(
    given('name: $room', {
      sensors: many({
        name: text,
        leftOut: given(
          'from: $from, until: $until',
          many({ from: instant, until: instant, quantity: text, why: text }),
        ),
      }),
    }),
  ),
});
export type LeftOut = NonNullable<
  Answer<typeof leftOutQuestion.shape>['room']
>['sensors'][number]['leftOut'][number] & { name: string };

export const takeBackAct = act(
  'takeSensorBack',
  'SensorTakenBack',
  { room: text, sensor: text },
  { sensor: { name: text } },
);
export const setAsideAct = act(
  'setSensorAside',
  'SensorSetAside',
  { room: text, sensor: text, why: text },
  { sensor: { name: text } },
);
