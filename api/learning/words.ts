// What was learned in words: a factor, how far it lies from what was assumed, and from how much.

export type Kind = 'CLASS' | 'LOT' | 'CLOSURE' | 'CONTAINER' | 'OPEN_MOUTH' | 'BED' | 'HUMIDITY';

export interface Named {
  readonly kind: Kind;
  /** What it is about: a class, a lot with its sorbent, a closure, a label; empty where it is the whole lab. */
  readonly about: string;
}

export interface Stands {
  /** Of the logarithm; of relative humidity for HUMIDITY. */
  readonly ln: number;
  readonly sd: number;
  readonly weighings: number;
}

/** Closer to what was assumed than half of its own doubt, nothing is said to differ. */
const samePart = 0.5;

/** Half the width of a 90 % range, in sigmas. */
const ninety = 1.645;

const of = (weighings: number): string => `from ${weighings} ${weighings === 1 ? 'weighing' : 'weighings'}`;

/** Two figures: 0.68, 1.1, 12. */
export const times = (ln: number): string => {
  const value = Math.exp(ln);
  return value >= 9.95 ? value.toFixed(0) : value >= 0.995 ? value.toFixed(1) : value.toFixed(2);
};

const percentOf = (sd: number): string => `${Math.max(1, Math.round(100 * Math.expm1(sd)))} %`;

/** As a heading: "Tight lids". */
export function titleOf({ kind, about }: Named): string {
  switch (kind) {
    case 'CLASS':
      return `Water that ${about} holds`;
    case 'LOT':
      return `Water that ${about} holds`;
    case 'CLOSURE':
      return about;
    case 'CONTAINER':
      return `The closure of ${about}`;
    case 'OPEN_MOUTH':
      return 'Open mouths';
    case 'BED':
      return 'The way down through a bed';
    case 'HUMIDITY':
      return 'The loggers’ humidity';
  }
}

const verbs: Record<Exclude<Kind, 'HUMIDITY'>, (named: Named) => readonly [does: string, than: string]> = {
  CLASS: ({ about }) => [`${about} here holds`, 'the water that the table says'],
  LOT: ({ about }) => [`${about} holds`, 'the water that the table says'],
  CLOSURE: ({ about }) => [`${about} here let in`, 'what we assumed'],
  CONTAINER: ({ about }) => [`${about} lets in`, 'what its kind of closure does'],
  OPEN_MOUTH: () => ['Open mouths here let in', 'what we assumed'],
  BED: () => ['Water goes down through a bed here at', 'the speed that we assumed'],
};

/** The whole in one sentence. */
export function sentenceOf(named: Named, { ln, sd, weighings }: Stands): string {
  const isSame = Math.abs(ln) < samePart * sd;
  if (named.kind === 'HUMIDITY') {
    const points = Math.abs(100 * ln).toFixed(1);
    const within = `within ${(100 * sd).toFixed(1)} % RH`;
    if (isSame) return `The loggers read true, ${within}, ${of(weighings)}.`;
    return `The loggers read about ${points} % RH too ${ln > 0 ? 'low' : 'high'}, ${of(weighings)}.`;
  }
  const [does, than] = verbs[named.kind](named);
  if (isSame) return `${does} ${than}, within ${percentOf(sd)}, ${of(weighings)}.`;
  return `${does} about ${times(ln)} of ${than} (${times(ln - ninety * sd)} to ${times(ln + ninety * sd)}), ${of(weighings)}.`;
}
