// Solvents of pre-washes and mobile phases: which waste they go to, which form peroxides, and the published limits
// that are known here. A lab's own mixture is read as it is written: "methanol:chloroform 1:1".

export interface Solvent {
  readonly name: string;
  /** Other names it goes by. */
  readonly alias: readonly string[];
  readonly isHalogenated: boolean;
  readonly formsPeroxides: boolean;
  readonly isFlammable: boolean;
  /** Flash point and limits with their sources; empty where no source was seen. */
  readonly limits: string;
}

const solvent = (name: string, alias: readonly string[], more: Partial<Solvent> = {}): Solvent => ({
  name,
  alias,
  isHalogenated: false,
  formsPeroxides: false,
  isFlammable: true,
  limits: '',
  ...more,
});

/** Halogenated or not is chemistry; peroxide formers are common practice (product sheets); limits as published. */
export const solvents: readonly Solvent[] = [
  solvent('methanol', ['meoh'], {
    limits: 'flash point 11 °C; 200 ppm as 8-hour mean (OSHA, NIOSH), 250 ppm short-term (NIOSH)',
  }),
  solvent('chloroform', ['chcl3', 'trichloromethane'], {
    isHalogenated: true,
    isFlammable: false,
    limits: '50 ppm ceiling (OSHA), 2 ppm in 60 min and a carcinogen (NIOSH); does not burn',
  }),
  solvent('dichloromethane', ['dcm', 'ch2cl2', 'methylene chloride'], { isHalogenated: true, isFlammable: false }),
  solvent('ethyl acetate', ['etoac', 'ea']),
  solvent('hexane', ['n-hexane', 'hexanes']),
  solvent('heptane', ['n-heptane']),
  solvent('cyclohexane', []),
  solvent('petroleum ether', ['pet ether', 'petrol ether']),
  solvent('toluene', []),
  solvent('acetone', []),
  solvent('acetonitrile', ['mecn', 'acn']),
  solvent('ethanol', ['etoh']),
  solvent('propan-2-ol', ['isopropanol', '2-propanol', 'ipa']),
  solvent('butan-1-ol', ['n-butanol', '1-butanol', 'butanol']),
  solvent('diethyl ether', ['ether', 'et2o'], { formsPeroxides: true }),
  solvent('diisopropyl ether', ['isopropyl ether'], { formsPeroxides: true }),
  solvent('tetrahydrofuran', ['thf'], { formsPeroxides: true }),
  solvent('1,4-dioxane', ['dioxane'], { formsPeroxides: true }),
  solvent('water', ['h2o'], { isFlammable: false }),
  solvent('acetic acid', ['acoh', 'glacial acetic acid']),
  solvent('formic acid', []),
  solvent('ammonia solution', ['aqueous ammonia', 'nh4oh', 'ammonia']),
];

const byName = new Map(solvents.flatMap((one) => [one.name, ...one.alias].map((name) => [name, one])));

/** What is known of a solvent; of one that is not in the table, nothing but its name. */
export const solventNamed = (name: string): Solvent =>
  byName.get(name.trim().toLowerCase()) ?? solvent(name.trim(), [], { isFlammable: true });

export interface Part {
  readonly solvent: Solvent;
  /** Share by volume. */
  readonly share: number;
}

const ratio = /^(.*\D)\s+\(?(\d+(?:\.\d+)?(?:\s*[:/]\s*\d+(?:\.\d+)?)+)\)?(?:\s*(?:v\/v|by volume))*$/i;

/** The parts of a mixture as people write it; one part where it cannot be divided. */
export function partsOf(mixture: string): Part[] {
  const text = mixture.trim();
  const [, names, numbers] = ratio.exec(text) ?? [];
  if (names === undefined || numbers === undefined) return [{ solvent: solventNamed(text), share: 1 }];
  const shares = numbers.split(/[:/]/).map(Number);
  const parts = names
    .split(/\s*[:/]\s*|\s+and\s+|\s+[–—-]\s+|\s*\+\s*/)
    .map((name) => name.replace(/[,;\s]+$/, '').trim());
  const whole = shares.reduce((sum, share) => sum + share, 0);
  if (parts.length !== shares.length || parts.some((name) => name === '') || whole <= 0) {
    return [{ solvent: solventNamed(text), share: 1 }];
  }
  return parts.map((name, index) => ({ solvent: solventNamed(name), share: (shares[index] ?? 0) / whole }));
}

/** Halogenated waste goes apart, even a little of it. */
export type WasteStream = 'HALOGENATED' | 'NON_HALOGENATED';

export const wasteOf = (parts: readonly Part[]): WasteStream =>
  parts.some(({ solvent: { isHalogenated }, share }) => isHalogenated && share > 0) ? 'HALOGENATED' : 'NON_HALOGENATED';

/** What so many mL of a mixture take of each solvent, mL. */
export const millilitres = (parts: readonly Part[], wholeMl: number): { solvent: string; ml: number }[] =>
  parts.map(({ solvent: { name }, share }) => ({ solvent: name, ml: share * wholeMl }));
