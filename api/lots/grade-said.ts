// What may be said of grades: tables of the lab's own, and grades that dyes showed.
import { z } from 'zod';
import { dyes } from '../science/grade-observed.ts';
import { said } from '../stock/service.ts';

const grade = z.string('a grade').trim().min(1, 'a grade').max(10, 'at most 10 signs');
const className = z
  .string('a sorbent class')
  .trim()
  .toLowerCase()
  .min(1, 'a sorbent class')
  .max(60, 'at most 60 signs');
const variant = z.string('a variant').trim().min(1, 'which variant').max(80, 'at most 80 signs');
const dye = z.enum(dyes, dyes.join(', '));

export const gradeTableSaid = z.object({
  sorbentClass: className,
  variant,
  source: z
    .string('a source')
    .trim()
    .min(3, 'where it is printed, or who measured it')
    .max(300, 'at most 300 signs')
    .nullish(),
  grades: z
    .array(
      z.object({
        grade,
        waterOfTotal: z.number('a mass fraction').min(0, '0 or more').max(0.9, 'at most 0.9: a fraction, 0.06 for 6 %'),
      }),
      'grades with their water',
    )
    .min(2, 'two grades or more')
    .max(12, 'at most 12 grades')
    .nullish(),
  isUsed: z.boolean('true or false').nullish(),
  clientKey: said.clientKey,
});

export const gradeTableBackSaid = z.object({ sorbentClass: className, variant, clientKey: said.clientKey });

export const waterForGradeSaid = z.object({
  label: said.label.nullish(),
  sorbentClass: className.nullish(),
  variant: variant.nullish(),
  grams: z.number('grams').positive('more than 0 g').max(1e7, 'at most 10000000 g').nullish(),
  waterFraction: said.waterFraction.nullish(),
  grade,
});

export const recordGradeSaid = z.object({
  label: said.label,
  at: said.at,
  grade: grade.nullish(),
  column: z.object({ upper: dye, lower: dye.nullish(), eluate: dye.nullish() }).nullish(),
  plate: z
    .array(z.object({ dye, rf: z.number('an Rf').min(0, '0 or more').max(1, '1 or less') }), 'dyes with their Rf')
    .min(1, 'one dye or more')
    .max(dyes.length, `at most ${dyes.length}`)
    .nullish(),
  note: said.text,
  clientKey: said.clientKey,
});

export const gradeBackSaid = z.object({ measured: z.string('the id of a measured grade'), clientKey: said.clientKey });
