// What a container's page asks: how it stands, what it rests on, and its water over time.
import { question } from '../ask.ts';
import { exposureFields, lineFields } from '../fields.ts';
import type { State } from '../say/state.ts';
import type { confidenceWord, Kind, originWord } from '../say/words.ts';
import type { SupposedEvent } from './what-if.ts';
import { flag, given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';

export type Scooping = 'TOP' | 'SIDE' | 'ROLLED';
export type Relation = 'ANCESTOR' | 'SIBLING' | 'COMBINED_FROM' | 'DESCENDANT' | 'EMPTIED_INTO';

const groundFields = {
  name: text,
  value: maybe(number),
  unit: text,
  origin: word<keyof typeof originWord>(),
  confidence: word<keyof typeof confidenceWord>(),
  source: text,
};
export type Ground = Answer<typeof groundFields>;

export const containerQuestion = question<{ label: string }>(
  'Container',
  '$label: String!',
)({
  container: maybe(
    given('label: $label', {
      ...lineFields,
      cameInAt: instant,
      dryGramsAssumed: flag,
      touchedSolventAt: maybe(instant),
      scooping: word<Scooping>(),
      habitSaid: flag,
      scoopingSaid: flag,
      habit: maybe({ timesADay: number, minutes: number }),
      lot: { lotNumber: text, receivedAt: instant, supplier: maybe({ name: text }) },
      sorbent: { name: text, sorbentClass: text, cautions: many(text) },
      room: { name: text, kind: word<'ROOM' | 'COLD_STORE' | 'DESICCATOR'>() },
      takenFrom: maybe({ label: text }),
      holds: many({
        ...{ id: text, forWhat: text, dryGrams: maybe(number), plates: maybe(number) },
        ...{ campaignId: maybe(text), until: maybe(instant) },
      }),
      lineage: {
        more: flag,
        kin: many({
          relation: word<Relation>(),
          level: number,
          container: {
            label: text,
            kind: word<Kind>(),
            finishedAt: maybe(instant),
            vessel: maybe({ name: text }),
            takenFrom: maybe({ label: text }),
            exposure: maybe({ state: word<State>() }),
          },
        }),
      },
      dryingRecipes: many({
        temperatureLowC: number,
        temperatureHighC: number,
        minutesLow: number,
        minutesHigh: number,
        limitC: number,
        source: text,
        vacuum: flag,
        depthMm: maybe(number),
      }),
      dryingRequests: many({ id: text, why: text, state: word<'WAITING' | 'DRIED' | 'WITHDRAWN'>() }),
      exposure: maybe({
        ...exposureFields,
        low: maybe(number),
        high: maybe(number),
        chancePastLimit: maybe(number),
        hoursToLimitOpen: maybe(number),
        grade: maybe(text),
        minutesToRoomEquilibrium: maybe(number),
        restsOn: many(groundFields),
      }),
    }),
  ),
});
export type Whole = NonNullable<Answer<typeof containerQuestion.shape>['container']>;

const eventFields = {
  id: text,
  type: text,
  at: instant,
  recordedAt: instant,
  by: maybe({ role: text }),
  note: maybe(text),
  plates: maybe(number),
  sentence: text,
  container: { label: text },
  otherContainer: maybe({ label: text }),
  correctedBy: maybe({ id: text }),
  counts: flag,
};
export type Event = Answer<typeof eventFields>;

export const timelineQuestion = question<{ label: string; after: string | null }>(
  'Timeline',
  '$label: String!, $after: String',
)({
  container: maybe(
    given('label: $label', {
      timeline: given('first: 30, after: $after', {
        nodes: many(eventFields),
        pageInfo: { hasNextPage: flag, endCursor: maybe(text) },
      }),
    }),
  ),
});

export const waterQuestion = question<{ label: string; from: string; until: string; points: number }>(
  'Water',
  '$label: String!, $from: DateTime, $until: DateTime, $points: Int',
)({
  container: maybe(
    given('label: $label', {
      waterOverTime: given(
        'from: $from, until: $until, points: $points',
        many({
          at: instant,
          meanWaterFraction: number,
          scoopWaterFraction: number,
          scoopLow: number,
          scoopHigh: number,
          roomHumidityPercent: maybe(number),
        }),
      ),
      depthProfile: many({ depthMm: number, waterFraction: number }),
    }),
  ),
});
const wouldFields = {
  at: instant,
  scoopWaterFraction: number,
  scoopLow: number,
  scoopHigh: number,
};

export const whatIfQuestion = question<{
  label: string;
  events: SupposedEvent[];
  report: string[];
  until: string;
}>(
  'WhatIf',
  '$label: String!, $events: [WhatIfEventInput!], $report: [DateTime!]!, $until: DateTime',
)({
  whatIf: given('container: {label: $label, events: $events, report: $report, until: $until}', {
    exposure: many({ ...wouldFields, state: word<State>(), hoursToLimit: maybe(number) }),
    course: given('points: 80', many({ ...wouldFields, meanWaterFraction: number })),
  }),
});

export type Water = NonNullable<Answer<typeof waterQuestion.shape>['container']>;
