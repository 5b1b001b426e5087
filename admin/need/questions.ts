// What the page of needs asks: what must be ready when and whether it will be; what a form has to choose from.
import { question } from '../ask.ts';
import { flag, given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';

export type NeedKind = 'PLATES' | 'SORBENT' | 'COLUMN';
export type NeedState = 'PLANNED' | 'BEGUN' | 'CANNOT_BE_MET' | 'MET' | 'OVERDUE' | 'DROPPED';
export type StepKind =
  'PRE_WASH' | 'AIR_DRY' | 'OVEN' | 'COOL' | 'KEEP' | 'EQUILIBRATE' | 'PACK' | 'CONDITION' | 'REST' | 'HAND_OVER';
export type Backing = 'GLASS' | 'ALUMINIUM' | 'PLASTIC';
export type Regime = 'DRY_UNTIL_SPOTTED' | 'EQUILIBRATED';

export type Standing = 'ACCEPTED' | 'REJECTED' | 'IN_CHECK' | 'UNCHECKED' | 'FIRST';

const obstacle = { what: text, sentence: text };
const step = { kind: word<StepKind>(), startAt: instant, endAt: instant };

export const needFields = {
  id: text,
  kind: word<NeedKind>(),
  state: word<NeedState>(),
  sorbent: { name: text },
  lot: maybe({ lotNumber: text, standing: word<Standing>() }),
  isLotWished: flag,
  at: instant,
  day: text,
  room: maybe({ name: text }),
  forWhom: text,
  note: maybe(text),
  priority: number,
  plates: maybe(number),
  backing: maybe(word<Backing>()),
  isForExtraction: flag,
  isPreWashed: flag,
  mobilePhase: maybe(text),
  regime: maybe(word<Regime>()),
  regimeHumidityPercent: maybe(number),
  dryGrams: maybe(number),
  limitWaterFraction: maybe(number),
  sampleMg: maybe(number),
  deltaRf: maybe(number),
  column: maybe({
    diameterMm: number,
    bedLengthMm: number,
    dryGrams: number,
    columnVolumeMl: number,
    conditioningMl: number,
  }),
  weekdays: maybe(many(number)),
  kept: many({ container: { label: text } }),
  steps: many({ id: text, ...step, doneAt: maybe(instant) }),
  obstacle: maybe(obstacle),
  firstPossibleAt: maybe(instant),
} as const;
export type Need = Answer<typeof needFields>;

export const needsQuestion = question<{ from: string }>(
  'Needs',
  '$from: DateTime',
)({
  needs: given('from: $from', many(needFields)),
});

/** Of which sorbents there are plates, of which there is powder. */
export const stockQuestion = question<Record<string, never>>('NeedStock')({
  boxes: given(
    'first: 200, filter: { kind: [PLATE_BOX], inUse: true }',
    { nodes: many({ sorbent: { name: text }, '... on PlateBox': { backing: word<Backing>() } }) },
    'containers',
  ),
  powder: given(
    'first: 200, filter: { kind: [DRUM, PORTION], inUse: true }',
    { nodes: many({ sorbent: { name: text } }) },
    'containers',
  ),
});
export type NeedStock = Answer<typeof stockQuestion.shape>;

/** What would come of a need, with nothing written. */
export const previewQuestion = question<{ input: Record<string, unknown> }>(
  'NeedPreview',
  '$input: NeedPreviewInput!',
)({
  needPreview: given('input: $input', {
    '... on Available': {
      can: flag,
      from: many({
        container: { label: text, lot: { lotNumber: text, standing: word<Standing>() } },
        dryGrams: maybe(number),
        plates: maybe(number),
        mustDry: flag,
      }),
      steps: many(step),
      obstacle: maybe(obstacle),
      firstPossibleAt: maybe(instant),
    },
    '... on Refusal': { message: text, path: text, expected: text },
  }),
});
export type Preview = Answer<typeof previewQuestion.shape>['needPreview'];
