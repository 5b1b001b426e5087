// Tables and dyes as they are typed. Pure.
import { typedNumber } from '../say/water.ts';
import type { Table } from './questions.ts';

export const dyes = [
  'azobenzene',
  'p-methoxyazobenzene',
  'Sudan yellow',
  'Sudan red',
  'p-aminoazobenzene',
  'p-hydroxyazobenzene',
] as const;

/** "I 0, II 3, III 6", as one line of text that can be changed. */
export const gradesText = ({ grades }: Pick<Table, 'grades'>): string =>
  grades.map(({ grade, waterOfTotal }) => `${grade} ${Number((100 * waterOfTotal).toPrecision(6))}`).join(', ');

/** Null where it cannot be read. */
export function gradesIn(text: string): { grade: string; waterOfTotal: number }[] | null {
  const parts = text.split(/[,;\n]/).map((part) => part.trim());
  const read = parts.filter(Boolean).map((part) => {
    const [, grade = '', water = ''] = /^(\S+)\s+([\d.,]+)\s*%?$/.exec(part) ?? [];
    const percent = typedNumber(water);
    return grade === '' || percent === null ? null : { grade, waterOfTotal: Number((percent / 100).toPrecision(12)) };
  });
  return read.length > 1 && read.every((one) => one !== null) ? read : null;
}

export interface DyeTyped {
  label: string;
  way: 'column' | 'plate' | 'other';
  upper: string;
  lower: string;
  eluate: string;
  rf: Record<string, string>;
  grade: string;
}
export const emptyDyes: DyeTyped = { label: '', way: 'column', upper: '', lower: '', eluate: '', rf: {}, grade: '' };

export function dyesIn(typed: DyeTyped): { input: Record<string, unknown>; wrong: string } {
  const { label, way } = typed;
  if (label === '') return { input: {}, wrong: 'Which container?' };
  if (way === 'column') {
    if (typed.upper === '') return { input: {}, wrong: 'Which dye is held above?' };
    const column = { upper: typed.upper, lower: typed.lower || null, eluate: typed.eluate || null };
    return { input: { label, column }, wrong: '' };
  }
  if (way === 'plate') {
    const given = dyes.flatMap((dye) => {
      const text = (typed.rf[dye] ?? '').trim();
      return text === '' ? [] : [{ dye, rf: typedNumber(text) }];
    });
    if (given.length === 0) return { input: {}, wrong: 'The Rf of one dye or more.' };
    if (given.some(({ rf }) => rf === null || rf < 0 || rf > 1)) return { input: {}, wrong: 'Each Rf from 0 to 1.' };
    return { input: { label, plate: given }, wrong: '' };
  }
  return typed.grade.trim() === ''
    ? { input: {}, wrong: 'Which grade?' }
    : { input: { label, grade: typed.grade.trim() }, wrong: '' };
}
