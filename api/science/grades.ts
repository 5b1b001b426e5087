// Activity grades (Brockmann I to V) as the water added to fully active sorbent, kg per kg of the total.
// From memory throughout: no primary table could be opened, and printed variants disagree; labs may put in their own.

export type Grades = readonly { readonly grade: string; readonly waterOfTotal: number }[];

const table = (...water: number[]): Grades =>
  water.map((waterOfTotal, i) => ({ grade: ['I', 'II', 'III', 'IV', 'V'][i] ?? '', waterOfTotal }));

/** Brockmann and Schodder, Ber. 74 (1941) 73; from memory. */
export const aluminaGrades = table(0, 0.03, 0.06, 0.1, 0.15);
/** As common texts print it; from memory. The handbooks of thin-layer chromatography have 0, 5, 15, 25, 38 %. */
export const silicaGrades = table(0, 0.1, 0.12, 0.15, 0.2);
export const silicaGradesOfHandbooks = table(0, 0.05, 0.15, 0.25, 0.38);
/** One variant among several; from memory. */
export const magnesiumSilicateGrades = table(0, 0.07, 0.15, 0.25, 0.35);

/** Alumina dried less hot than this is dry, but never grade I, °C (300 to 400; from memory). */
export const gradeOneFromC = 300;

/**
 * The grade whose water lies nearest to this water fraction (dry basis). Grade I of alumina is not a matter of water alone:
 * after a drying that was not hot enough for it the next grade is the best there is.
 */
export function gradeOf(grades: Grades | null, waterFraction: number, driedAtC: number | null = null): string | null {
  const nearest = nearestGrade(grades, waterFraction);
  const tooCool = grades === aluminaGrades && driedAtC !== null && driedAtC < gradeOneFromC;
  return tooCool && nearest === 'I' ? 'II' : nearest;
}

function nearestGrade(grades: Grades | null, waterFraction: number): string | null {
  if (!grades) return null;
  const ofTotal = waterFraction / (1 + waterFraction);
  let nearest: string | null = null;
  let distance = Infinity;
  for (const { grade, waterOfTotal } of grades) {
    if (Math.abs(waterOfTotal - ofTotal) >= distance) continue;
    distance = Math.abs(waterOfTotal - ofTotal);
    nearest = grade;
  }
  return nearest;
}
