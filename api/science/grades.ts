// Activity grades (Brockmann I to V) as the water added to fully active sorbent, kg per kg of the total.
// From memory throughout: no primary table could be opened, and printed variants disagree; labs may put in their own.

export type Grades = readonly {
  readonly grade: string;
  readonly waterOfTotal: number;
  /** Nothing that was last dried less hot than this is of that grade, °C; nothing given: it is a matter of water alone. */
  readonly fromC?: number;
}[];

const table = (...water: number[]): Grades =>
  water.map((waterOfTotal, i) => ({ grade: ['I', 'II', 'III', 'IV', 'V'][i] ?? '', waterOfTotal }));

/** Alumina dried less hot than this is dry, but never grade I, °C (300 to 400; from memory). */
export const gradeOneFromC = 300;
const gradeOneFrom: Readonly<Partial<Record<string, number>>> = { alumina: gradeOneFromC };

/** Grade I as people write it in a table of their own. */
const gradeOne = /^(?:(?:activity )?grade |brockmann |act\. )?(?:i|1)\.?$/i;

/** Grades of a class, whoever wrote the table: where grade I takes heat, it says so. */
export function gradesOfClass(sorbentClass: string, grades: Grades): Grades {
  const fromC = gradeOneFrom[sorbentClass];
  if (fromC === undefined) return grades;
  return grades.map((one) => (gradeOne.test(one.grade.trim()) ? { ...one, fromC } : one));
}

/** Brockmann and Schodder, Ber. 74 (1941) 73; from memory. */
export const aluminaGrades = gradesOfClass('alumina', table(0, 0.03, 0.06, 0.1, 0.15));
/** As common texts print it; from memory. The handbooks of thin-layer chromatography have 0, 5, 15, 25, 38 %. */
export const silicaGrades = table(0, 0.1, 0.12, 0.15, 0.2);
export const silicaGradesOfHandbooks = table(0, 0.05, 0.15, 0.25, 0.38);
/** One variant among several; from memory. */
export const magnesiumSilicateGrades = table(0, 0.07, 0.15, 0.25, 0.35);

/**
 * The grade whose water lies nearest to this water fraction (dry basis). Where a grade is not a matter of water alone, after a
 * drying that was not hot enough for it the next grade is the best there is.
 */
export function gradeOf(grades: Grades | null, waterFraction: number, driedAtC: number | null = null): string | null {
  if (!grades) return null;
  const nearest = nearestTo(grades, waterFraction / (1 + waterFraction));
  if (nearest < 0) return null;
  const isReached = ({ fromC }: Grades[number], i: number): boolean =>
    i >= nearest && (fromC === undefined || driedAtC === null || driedAtC >= fromC);
  return grades.find(isReached)?.grade ?? null;
}

function nearestTo(grades: Grades, ofTotal: number): number {
  let nearest = -1;
  let distance = Infinity;
  grades.forEach(({ waterOfTotal }, i) => {
    if (Math.abs(waterOfTotal - ofTotal) >= distance) return;
    distance = Math.abs(waterOfTotal - ofTotal);
    nearest = i;
  });
  return nearest;
}
