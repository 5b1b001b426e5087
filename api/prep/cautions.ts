// What to mind at a step, one short sentence each. Common practice or from memory; published limits with their source
// stand in api/science/prep/solvents.ts. The lab's rules come first.
import type { Part } from '../science/prep/solvents.ts';
import type { Backing } from '../database/generated/sqlite/client.ts';

export const lastWord = 'Follow your lab’s rules and the safety data sheet.';

const texts = {
  solventHood: 'Fume hood, no ignition source; the gloves your lab prescribes, changed at once on a splash.',
  chloroform:
    'Chloroform: thin nitrile gloves hold it for minutes only. Never with acetone and base, strong alkali or reactive metals, waste included.',
  halogenatedWaste: 'Halogenated waste apart.',
  plasticWash: 'Plastic backing: try the solvent on one plate first.',
  plasticOven: 'Plastic backing: at most 90 °C, flat on glass or metal, or they curl.',
  peroxides: 'Forms peroxides: look at the test date; never evaporated to dryness.',
  solventWet: 'Solvent-wet plates never go into a hot or vacuum oven. By time and airflow, never by smell.',
  powder: 'Dry powder: pour and tap in a hood or with the mask your lab prescribes.',
  vacuum: 'Pump slowly, cover trays, let air or nitrogen in slowly. Single layers, or warm first and then pull vacuum.',
  hot: 'Hot: heat gloves; not sealed at once.',
  wetting: 'Freshly dried it warms when wetted: weakest eluent first, slowly, until heat and bubbles are gone.',
  aluminaPeroxides: 'Alumina used on peroxide formers concentrates peroxides.',
  aluminaGrade: 'Dried so, alumina is dry but not grade I: that takes 300 to 400 °C.',
  pressure: 'Glass column under pressure: shield and relief.',
} as const;

export type CautionKey = keyof typeof texts;

const isKey = (key: string): key is CautionKey => key in texts;

export interface Caution {
  key: string;
  text: string;
}

/** In the words of the sheet; what is no longer known is left out. */
export const cautionsSaid = (keys: readonly string[]): Caution[] =>
  keys.filter(isKey).map((key) => ({ key, text: `${texts[key]} ${lastWord}` }));

/** Of solvents, the most urgent first. */
export function solventCautions(parts: readonly Part[]): CautionKey[] {
  const has = (is: (part: Part) => boolean) => parts.some(is);
  return [
    'solventHood',
    ...(has(({ solvent }) => solvent.name === 'chloroform') ? (['chloroform'] as const) : []),
    ...(has(({ solvent }) => solvent.isHalogenated) ? (['halogenatedWaste'] as const) : []),
    ...(has(({ solvent }) => solvent.formsPeroxides) ? (['peroxides'] as const) : []),
  ];
}

export const washCautions = (parts: readonly Part[], backing: Backing | null): CautionKey[] => [
  ...solventCautions(parts),
  ...(backing === 'PLASTIC' ? (['plasticWash'] as const) : []),
];

export function ovenCautions(of: { backing: Backing | null; isVacuum: boolean; sorbentClass: string }): CautionKey[] {
  return [
    ...(of.backing === null ? [] : (['solventWet'] as const)),
    ...(of.backing === 'PLASTIC' ? (['plasticOven'] as const) : []),
    ...(of.isVacuum ? (['vacuum'] as const) : []),
    'hot',
    ...(of.sorbentClass === 'alumina' && of.backing === null ? (['aluminaGrade'] as const) : []),
  ];
}
