// What the page of activity grades tells.
import { act } from '../act/told.ts';
import { flag, instant, many, maybe, number, text } from '../shape.ts';

const tables = { tables: many({ variant: text, isUsed: flag }) };
export const setTableAct = act(
  'setGradeTable',
  'GradeTableKept',
  {
    sorbentClass: text,
    variant: text,
    source: maybe(text),
    grades: maybe(many({ grade: text, waterOfTotal: number })),
    isUsed: maybe(flag),
  },
  tables,
);
export const resetTableAct = act('resetGradeTable', 'GradeTableKept', { sorbentClass: text, variant: text }, tables);

const kept = { measured: { id: text, sentence: text } };
export const recordGradeAct = act(
  'recordGrade',
  'GradeKept',
  {
    label: text,
    at: maybe(instant),
    column: maybe({ upper: text, lower: maybe(text), eluate: maybe(text) }),
    plate: maybe(many({ dye: text, rf: number })),
    grade: maybe(text),
    note: maybe(text),
  },
  kept,
);
export const takeGradeBackAct = act('takeGradeBack', 'GradeKept', { measured: text }, kept);
export const restoreGradeAct = act('restoreGrade', 'GradeKept', { measured: text }, kept);
