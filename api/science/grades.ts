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

/** The grade whose water lies nearest to this water fraction (dry basis). */
export function gradeOf(grades: Grades | null, waterFraction: number): string | null {
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
