// What the page of sorbents asks and tells.
import { act } from '../act/told.ts';
import { question } from '../ask.ts';
import type { State } from '../say/state.ts';
import type { confidenceWord, originWord, policyWord } from '../say/words.ts';
import { given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';

const policy = word<keyof typeof policyWord>();
const reaction = word<'ACIDIC' | 'NEUTRAL' | 'BASIC'>();
const origin = word<keyof typeof originWord>();
const confidence = word<keyof typeof confidenceWord>();
const basis = word<'DRY' | 'AS_RECEIVED'>();

const targetFields = {
  targetPolicy: policy,
  targetUpperWaterFraction: maybe(number),
  targetLowerWaterFraction: maybe(number),
  targetBandWaterFraction: maybe(number),
};

const property = { name: text, value: maybe(number), unit: text, origin, confidence, source: text };
export type Property = Answer<typeof property>;

const grain = {
  particleSizeLowUm: maybe(number),
  particleSizeHighUm: maybe(number),
  meshLow: maybe(number),
  meshHigh: maybe(number),
  poreSizeNm: maybe(number),
  bondedPhase: maybe(text),
  reaction: maybe(reaction),
};

const sorbentFields = {
  id: text,
  name: text,
  sorbentClass: text,
  ...grain,
  ...targetFields,
  classUpperWaterFraction: maybe(number),
  properties: many(property),
};

export const sorbentsQuestion = question<Record<string, never>>('Sorbents')({
  sorbents: given('first: 200', { nodes: many(sorbentFields) }),
});
export type Sorbent = Answer<typeof sorbentsQuestion.shape>['sorbents']['nodes'][number];

const lotFields = {
  id: text,
  lotNumber: text,
  standingWords: text,
  receivedAt: instant,
  retestOn: maybe(instant),
  supplier: maybe({ name: text }),
  certificateWaterFraction: maybe(number),
  certificateMaxWaterFraction: maybe(number),
  ...targetFields,
  targetPolicy: maybe(policy),
  note: maybe(text),
  dryGrams: number,
};
export type Lot = Answer<typeof lotFields>;

export const sorbentQuestion = question<{ name: string }>(
  'Sorbent',
  '$name: String!',
)({
  sorbent: maybe(
    given('name: $name', {
      cautions: many(text),
      grades: many({ grade: text, waterAsReceivedFraction: number }),
      lots: many(lotFields),
    }),
  ),
});
export type Opened = NonNullable<Answer<typeof sorbentQuestion.shape>['sorbent']>;

export const addSorbentAct = act(
  'addSorbent',
  'SorbentKept',
  { name: text, sorbentClass: text, ...grain, targetUpperWaterFraction: maybe(number) },
  { sorbent: { name: text } },
);

export const setSorbentAct = act(
  'setSorbent',
  'SorbentKept',
  { sorbent: text, name: maybe(text), sorbentClass: maybe(text), ...grain },
  { sorbent: { name: text } },
);

const band = {
  upperWaterFraction: maybe(number),
  lowerWaterFraction: maybe(number),
  valueWaterFraction: maybe(number),
  bandWaterFraction: maybe(number),
  grade: maybe(text),
  basis: maybe(basis),
};
export const setSorbentTargetAct = act(
  'setSorbentTarget',
  'SorbentKept',
  { sorbent: text, policy, ...band },
  { sorbent: { name: text } },
);
export const setLotTargetAct = act(
  'setLotTarget',
  'LotKept',
  { sorbent: text, lotNumber: text, policy: maybe(policy), ...band },
  { lot: { lotNumber: text } },
);

export interface BandInput {
  policy: keyof typeof policyWord;
  upperWaterFraction?: number | null;
  lowerWaterFraction?: number | null;
  valueWaterFraction?: number | null;
  bandWaterFraction?: number | null;
  grade?: string | null;
  basis?: 'DRY' | 'AS_RECEIVED' | null;
}

const refusal = { message: text, path: text, expected: text };

export const targetChangeQuestion = question<{ input: BandInput & { sorbent: string; lotNumber?: string | null } }>(
  'TargetChange',
  '$input: TargetChangeInput!',
)({
  targetChange: given('input: $input', {
    '... on TargetChange': {
      containers: number,
      judged: number,
      changed: many({ label: text, before: word<State>(), after: word<State>() }),
    },
    '... on Refusal': refusal,
  }),
});

export const setLotAct = act(
  'setLot',
  'LotKept',
  {
    sorbent: text,
    lotNumber: text,
    newLotNumber: maybe(text),
    supplier: maybe(text),
    retestOn: maybe(instant),
    certificateWaterPercent: maybe(number),
    certificateMaxWaterPercent: maybe(number),
    certificateBasis: maybe(basis),
    note: maybe(text),
  },
  { lot: { lotNumber: text }, notes: many(text) },
);

export const setPropertiesAct = act(
  'setSorbentProperties',
  'SorbentKept',
  {
    sorbent: text,
    properties: many({
      name: text,
      value: maybe(number),
      origin: maybe(origin),
      confidence: maybe(confidence),
      source: text,
    }),
  },
  { sorbent: { name: text } },
);
export const resetPropertyAct = act(
  'resetSorbentProperty',
  'SorbentKept',
  { sorbent: text, name: text },
  { sorbent: { name: text } },
);

export const saltsQuestion = question<{ at: number }>(
  'Salts',
  '$at: Float',
)({
  salts: given(
    'temperatureC: $at',
    many({ name: text, relativeHumidityPercent: maybe(number), fromC: number, toC: number, source: text }),
  ),
});
export type Salt = Answer<typeof saltsQuestion.shape>['salts'][number];

const weighed = {
  salt: maybe(text),
  humidityPercent: maybe(number),
  temperatureC: number,
  tareGrams: maybe(number),
  beforeGrams: maybe(number),
  afterGrams: maybe(number),
  waterFraction: maybe(number),
  basis: maybe(basis),
  driedAtC: maybe(number),
  sdPercent: maybe(number),
};
export const fitAct = act(
  'fitSorbentIsotherm',
  'SorbentKept',
  {
    sorbent: text,
    fromClass: maybe(text),
    points: many(weighed),
    weighedOn: maybe(instant),
    by: maybe(text),
  },
  { sorbent: { name: text } },
);

export interface WeighedInput {
  salt?: string | null;
  humidityPercent?: number | null;
  temperatureC: number;
  tareGrams?: number | null;
  beforeGrams?: number | null;
  afterGrams?: number | null;
  waterFraction?: number | null;
  basis?: 'DRY' | 'AS_RECEIVED' | null;
  driedAtC?: number | null;
  sdPercent?: number | null;
}
export interface FitInput {
  sorbent: string;
  fromClass?: string | null;
  points: WeighedInput[];
  weighedOn?: string | null;
  by?: string | null;
}

export const fitQuestion = question<{ input: FitInput }>(
  'Fit',
  '$input: IsothermFitInput!',
)({
  isothermFit: given('input: $input', {
    '... on IsothermFit': {
      fromClass: text,
      misfitPercent: number,
      cannotTell: many(text),
      notes: many(text),
      source: text,
      points: many({
        over: text,
        relativeHumidityPercent: number,
        humiditySource: text,
        waterFraction: number,
        addedFraction: number,
      }),
      curve: many({
        relativeHumidityPercent: number,
        classWaterFraction: number,
        waterFraction: number,
        low: number,
        high: number,
      }),
    },
    '... on Refusal': refusal,
  }),
});
type FitAnswer = Answer<typeof fitQuestion.shape>['isothermFit'];
export type Fit = Required<Pick<FitAnswer, 'curve' | 'points' | 'cannotTell' | 'notes' | 'source' | 'fromClass'>>;
