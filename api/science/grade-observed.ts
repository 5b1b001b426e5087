// A grade as dyes show it. From memory throughout: no primary text could be opened. Several of these dyes, benzene and
// carbon tetrachloride are carcinogens; weighing or Karl Fischer titration tells the same without them.

export const dyes = [
  'azobenzene',
  'p-methoxyazobenzene',
  'Sudan yellow',
  'Sudan red',
  'p-aminoazobenzene',
  'p-hydroxyazobenzene',
] as const;
export type Dye = (typeof dyes)[number];

/** A column of two dyes: which is held above, which below, which ran through. */
export interface TwoDyes {
  readonly upper: Dye;
  readonly lower: Dye | null;
  readonly eluate: Dye | null;
}

// Brockmann and Schodder, Ber. 74 (1941) 73: a column of 5 cm by 1.5 cm, 2 mg of each dye.
const columns: readonly (TwoDyes & { readonly grade: string })[] = [
  { grade: 'I', upper: 'p-methoxyazobenzene', lower: 'azobenzene', eluate: null },
  { grade: 'II', upper: 'p-methoxyazobenzene', lower: null, eluate: 'azobenzene' },
  { grade: 'II', upper: 'Sudan yellow', lower: 'p-methoxyazobenzene', eluate: null },
  { grade: 'III', upper: 'Sudan yellow', lower: null, eluate: 'p-methoxyazobenzene' },
  { grade: 'III', upper: 'Sudan red', lower: 'Sudan yellow', eluate: null },
  { grade: 'IV', upper: 'Sudan red', lower: null, eluate: 'Sudan yellow' },
  { grade: 'IV', upper: 'p-aminoazobenzene', lower: 'Sudan red', eluate: null },
  { grade: 'V', upper: 'p-hydroxyazobenzene', lower: 'p-aminoazobenzene', eluate: null },
];

/** The grade of alumina whose column looks like this; null of a picture that is none of theirs. */
export function gradeOfColumn({ upper, lower, eluate }: TwoDyes): string | null {
  const like = columns.find((one) => one.upper === upper && one.lower === lower && one.eluate === eluate);
  return like?.grade ?? null;
}

const plateGrades = ['II', 'III', 'IV', 'V'] as const;
// Heřmánek, Schwarz and Čekan, Coll. Czech. Chem. Commun. 26 (1961) 3170: Rf on alumina in carbon tetrachloride.
const plates: Readonly<Partial<Record<Dye, readonly number[]>>> = {
  azobenzene: [0.59, 0.74, 0.85, 0.95],
  'p-methoxyazobenzene': [0.16, 0.49, 0.69, 0.89],
  'Sudan yellow': [0.01, 0.25, 0.57, 0.78],
  'Sudan red': [0, 0.1, 0.33, 0.56],
  'p-aminoazobenzene': [0, 0.03, 0.08, 0.19],
};

/** The grade of alumina whose Rf values lie nearest, by the mean of squares; null when no dye of the table was run. */
export function gradeOfPlate(rf: Readonly<Partial<Record<Dye, number>>>): string | null {
  const run = dyes.flatMap((dye) => {
    const shown = rf[dye];
    const table = plates[dye];
    return shown === undefined || table === undefined ? [] : [{ shown, table }];
  });
  if (run.length === 0) return null;
  const misses = plateGrades.map((_, i) => run.reduce((sum, { shown, table }) => sum + (shown - table[i]!) ** 2, 0));
  return plateGrades[misses.indexOf(Math.min(...misses))] ?? null;
}
