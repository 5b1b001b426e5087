// What to mind with a sorbent, one short sentence each. Common practice or from memory; the lab's rules come first.
import type { Backing, ContainerKind } from '../database/generated/sqlite/client.ts';

const rules = "Follow your lab's rules and the safety data sheet.";

const powder = `Dry powder: pour and tap in a hood or with the mask your lab prescribes. ${rules}`;
const wetting = `Freshly dried it warms when wetted: wet first with the weakest eluent, slowly, and wait until heat and bubbles are gone. ${rules}`;

/** By class; every class has the first. */
const more: Record<string, string[]> = {
  silica: [wetting],
  alumina: [
    wetting,
    `Used on peroxide formers it concentrates peroxides. ${rules}`,
    'Dried at 130 to 160 °C it is dry, but not grade I: that takes 300 to 400 °C.',
  ],
  'magnesium silicate': [wetting],
  kieselguhr: [`Calcined grades hold crystalline silica. ${rules}`],
  'silver-impregnated silica': [`Keep dark; silver nitrate stains and burns skin. ${rules}`],
  'desiccant gel': ['Half-spent (20 to 40 % RH) it wets what is drier: renew it in time.'],
};

export const cautionsOf = (sorbentClass: string): string[] => [powder, ...(more[sorbentClass] ?? [])];

/** The same in a few words, for a label; the most urgent first. */
const onLabel: Record<string, string[]> = {
  silica: ['warms when wetted'],
  alumina: ['concentrates peroxides', 'warms when wetted'],
  'magnesium silicate': ['warms when wetted'],
  kieselguhr: ['calcined: crystalline silica'],
  'silver-impregnated silica': ['keep dark, stains skin'],
  'desiccant gel': ['half-spent it wets: renew in time'],
};

/** What a container is, as far as its cautions go. */
export interface Cautioned {
  kind: ContainerKind;
  backing: Backing | null;
  touchedSolventAt: Date | null;
}

/** What to mind with a container, in a few words each, as they fit on a label. */
export function labelCautionsOf(sorbentClass: string, of: Cautioned): string[] {
  const solvent = of.touchedSolventAt ? ['touched solvent: never in an oven'] : [];
  if (of.kind === 'PLATE_BOX') {
    const flat = of.backing === 'PLASTIC' ? ['plastic backing: at most 90 °C, flat'] : [];
    return [...solvent, ...flat];
  }
  if (of.kind === 'COLUMN') return solvent;
  return [...solvent, 'dry powder: hood or mask', ...(onLabel[sorbentClass] ?? [])];
}
