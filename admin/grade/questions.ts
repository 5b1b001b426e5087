// What the page of activity grades asks.
import { question } from '../ask.ts';
import { flag, given, instant, many, maybe, number, text, type Answer } from '../shape.ts';

const tables = many({
  sorbentClass: text,
  variant: text,
  source: text,
  isOwn: flag,
  isUsed: flag,
  grades: many({ grade: text, waterOfTotal: number }),
});
const measured = {
  id: text,
  at: instant,
  container: { label: text, sorbent: { name: text } },
  grade: text,
  sentence: text,
  ranBy: maybe({ shortName: text }),
};

export const gradesQuestion = question<Record<string, never>>('Grades')({
  gradeTables: tables,
  gradesMeasured: given('first: 20', many(measured)),
  alumina: given(
    'first: 200, filter: { kind: [DRUM, PORTION, COLUMN], inUse: true }',
    { nodes: many({ label: text, sorbent: { name: text, sorbentClass: text }, lot: { lotNumber: text } }) },
    'containers',
  ),
});
export type Grades = Answer<typeof gradesQuestion.shape>;
export type Table = Grades['gradeTables'][number];
export type Measured = Grades['gradesMeasured'][number];

export const waterQuestion = question<{
  label: string | null;
  sorbentClass: string | null;
  grams: number | null;
  waterFraction: number | null;
  grade: string;
}>(
  'WaterForGrade',
  '$label: String, $sorbentClass: String, $grams: Float, $waterFraction: Float, $grade: String!',
)({
  waterForGrade: given(
    'label: $label, sorbentClass: $sorbentClass, grams: $grams, waterFraction: $waterFraction, grade: $grade',
    {
      '... on WaterForGrade': { sentence: text, cautions: many(text), waterGrams: maybe(number) },
      '... on Refusal': { message: text, path: text, expected: text },
    },
  ),
});
export type Water = Answer<typeof waterQuestion.shape>['waterForGrade'];
