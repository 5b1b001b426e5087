// What the pages of lot checks ask: the checks, one check to its last plate, and the lots one chooses from.
import { question } from '../ask.ts';
import { flag, given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';
import type { Retention } from '../spot/questions.ts';

export type Verdict = 'ACCEPTED' | 'REJECTED' | 'TOO_FEW';
export type Standing = 'ACCEPTED' | 'REJECTED' | 'IN_CHECK' | 'UNCHECKED' | 'FIRST';
export type Told = 'SEEN' | 'LITTLE' | 'CANNOT_TELL' | 'TOO_FEW' | 'ONE_LEVEL' | 'SAME_AS_ANOTHER';

const decision = {
  id: text,
  outcome: word<'ACCEPTED' | 'REJECTED'>(),
  why: text,
  at: instant,
  by: maybe({ shortName: text }),
};
const head = {
  id: text,
  sorbent: { name: text },
  oldLot: { lotNumber: text },
  newLot: { lotNumber: text, standing: word<Standing>() },
  retention: word<Retention>(),
  madeAt: instant,
  note: maybe(text),
  decision: maybe(decision),
};

export const checksQuestion = question<Record<string, never>>('LotChecks')({
  lotChecks: given('first: 100', many({ ...head, verdict: { outcome: word<Verdict>(), sentence: text } })),
  sorbents: given('first: 200', {
    nodes: many({
      name: text,
      lots: many({ lotNumber: text, receivedAt: instant, standing: word<Standing>(), standingWords: text }),
    }),
  }),
  lab: { checks: { marginRf: number, marginColumn: number, own: many(text) } },
});
export type Checks = Answer<typeof checksQuestion.shape>;
export type Head = Checks['lotChecks'][number];
export type OfSorbent = Checks['sorbents']['nodes'][number];

const estimate = { value: number, low: number, high: maybe(number) };
export const spreadFields = {
  compound: text,
  mean: number,
  plates: number,
  sources: many({
    name: text,
    told: word<Told>(),
    sameAs: maybe(text),
    relative: maybe(estimate),
    share: maybe(estimate),
  }),
} as const;
export type SpreadOf = Answer<typeof spreadFields>;

const run = {
  id: text,
  at: instant,
  lot: { lotNumber: text },
  container: maybe({ label: text }),
  ranBy: maybe({ shortName: text }),
  tank: maybe(text),
  plate: maybe(text),
  humidityPercent: maybe(number),
  temperatureC: maybe(number),
  waterFraction: maybe(number),
  isWaterFilled: flag,
  chamber: maybe(word<Chamber>()),
  isLined: maybe(flag),
  saturationMinutes: maybe(number),
  eluent: maybe(text),
  eluentBatch: maybe(text),
  stabiliser: maybe(text),
  distanceMm: maybe(number),
  spots: many({ compound: text, value: number }),
};
export type Chamber = 'TWIN_TROUGH' | 'FLAT_BOTTOM' | 'SANDWICH' | 'AUTOMATIC' | 'JAR';
export type CheckRun = Answer<typeof run>;

export const checkQuestion = question<{ id: string }>(
  'LotCheck',
  '$id: ID!',
)({
  node: given(
    'id: $id',
    maybe({
      '... on LotCheck': {
        ...head,
        runs: many(run),
        verdict: {
          outcome: word<Verdict>(),
          sentence: text,
          margin: number,
          isMarginDefault: flag,
          quantities: many({
            name: text,
            outcome: word<Verdict>(),
            difference: maybe(number),
            low: maybe(number),
            high: maybe(number),
            oldPlates: number,
            newPlates: number,
            sentence: text,
            values: many({ isNew: flag, value: number }),
          }),
        },
      },
    }),
  ),
});
export type Check = Required<NonNullable<Answer<typeof checkQuestion.shape>['node']>>;
export type Quantity = Check['verdict']['quantities'][number];

/** Asked when it is opened: it takes the server a moment. */
export const spreadQuestion = question<{ id: string }>(
  'CheckSpread',
  '$id: ID!',
)({ node: given('id: $id', maybe({ '... on LotCheck': { spread: many(spreadFields) } })) });
