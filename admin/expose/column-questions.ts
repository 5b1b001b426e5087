// What a column's page asks of its packing, and what is asked of a column that is only planned.
import { question } from '../ask.ts';
import { given, instant, many, maybe, number, text, flag, word, type Answer } from '../shape.ts';

export const columnQuestion = question<{ label: string }>(
  'Packed',
  '$label: String!',
)({
  container: maybe(
    given('label: $label', {
      innerDiameterMm: maybe(number),
      columnVolumeMl: maybe(number),
      restsUntil: maybe(instant),
      packing: maybe({
        at: instant,
        from: { label: text, lot: { lotNumber: text } },
        dryGrams: number,
        asReceivedGrams: maybe(number),
        waterFraction: maybe(number),
        waterAssumed: flag,
        bedLengthMm: number,
        densityKgPerM3: maybe(number),
        method: maybe(word<'DRY' | 'SLURRY'>()),
        tapping: maybe(text),
        flowMlPerMin: maybe(number),
        pressureBar: maybe(number),
        packer: maybe(text),
        dyeTest: maybe(text),
      }),
      conditionings: many({
        at: instant,
        mobilePhase: maybe(text),
        columnVolumes: maybe(number),
        minutes: maybe(number),
        flowMlPerMin: maybe(number),
      }),
    }),
  ),
});
export type Packed = NonNullable<Answer<typeof columnQuestion.shape>['container']>;

/** Of a size, or sized for a sample. */
export interface PlanAsked extends Record<string, unknown> {
  sorbent: string;
  innerDiameterMm?: number;
  bedLengthMm?: number;
  sampleMg?: number;
  deltaRf?: number;
}

export const planQuestion = question<PlanAsked>(
  'ColumnPlan',
  '$sorbent: String!, $innerDiameterMm: Float, $bedLengthMm: Float, $sampleMg: Float, $deltaRf: Float',
)({
  columnPlan: given(
    'sorbent: $sorbent, innerDiameterMm: $innerDiameterMm, bedLengthMm: $bedLengthMm, sampleMg: $sampleMg, deltaRf: $deltaRf',
    {
      '... on ColumnPlan': {
        innerDiameterMm: number,
        bedLengthMm: number,
        columnVolumeMl: number,
        sorbentDryGrams: maybe(number),
        columnVolumes: number,
        conditioningMl: number,
        conditioningMinutes: number,
        flowMlPerMin: number,
        flowSource: text,
        eluentMl: maybe(number),
        fractionMl: maybe(number),
        solventInAllMl: maybe(number),
        restMinutes: maybe(number),
        restSource: maybe(text),
        cautions: many(text),
      },
      '... on Refusal': { message: text, expected: text },
    },
  ),
});
export type Plan = Answer<typeof planQuestion.shape>['columnPlan'];
