// Every table of activity grades that we know, as data with variant and source: printed ones disagree, and a lab may add its own.
import {
  aluminaGrades,
  magnesiumSilicateGrades,
  silicaGrades,
  silicaGradesOfHandbooks,
  type Grades,
} from './grades.ts';

export interface GradeTable {
  readonly sorbent: 'alumina' | 'silica' | 'magnesium silicate';
  readonly variant: string;
  readonly source: string;
  readonly grades: Grades;
}

export const gradeTables: readonly GradeTable[] = [
  {
    sorbent: 'alumina',
    variant: 'Brockmann',
    source: 'Brockmann and Schodder, Ber. 74 (1941) 73; from memory',
    grades: aluminaGrades,
  },
  { sorbent: 'silica', variant: 'common texts', source: 'from memory', grades: silicaGrades },
  {
    sorbent: 'silica',
    variant: 'handbooks of thin-layer chromatography',
    source: 'from memory',
    grades: silicaGradesOfHandbooks,
  },
  {
    sorbent: 'magnesium silicate',
    variant: 'one among several',
    source: 'from memory',
    grades: magnesiumSilicateGrades,
  },
];
