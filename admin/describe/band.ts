// A target band in words and as a form: as received is said first, the basis always stands beside.
import type { FieldSpec, Typed } from '../act/field.ts';
import { groupTitle, type State } from '../say/state.ts';
import { percent } from '../say/water.ts';
import { count, policyWord } from '../say/words.ts';
import type { BandInput, Lot, Opened, Sorbent } from './questions.ts';

export type Basis = 'AS_RECEIVED' | 'DRY';
export const basisWord: Record<Basis, string> = { AS_RECEIVED: 'as received', DRY: 'dry basis' };

/** Of the whole mass, from the dry one. */
export const ofWhole = (dry: number): number => dry / (1 + dry);
const onBasis = (dry: number, basis: Basis): number => (basis === 'DRY' ? dry : ofWhole(dry));

type Target = Pick<Sorbent, 'targetUpperWaterFraction' | 'targetLowerWaterFraction' | 'targetBandWaterFraction'> & {
  targetPolicy: Sorbent['targetPolicy'] | null;
};

/** Percent with as many decimals as tell the ends apart. */
const shown = (fraction: number): string => percent(fraction, fraction < 0.02 ? 2 : 1);

/** What its water should be, in one sentence; the default of its class is said to be one. */
export function bandWords(of: Target, classUpper: number | null, basis: Basis): string {
  const { targetUpperWaterFraction: upper, targetLowerWaterFraction: lower, targetBandWaterFraction: band } = of;
  const said = (dry: number): string => shown(onBasis(dry, basis));
  if (of.targetPolicy === null) return 'as its sorbent';
  if (of.targetPolicy === 'AS_RECEIVED') {
    const ends =
      upper !== null && lower !== null ? `${said(lower)} to ${said(upper)} water, ${basisWord[basis]}` : null;
    const sides = `each lot’s own water, ${percent(band ?? 0.005)} either side (dry basis)${band === null ? ', an invented default' : ''}`;
    return `kept as received: ${ends ?? sides}`;
  }
  if (upper === null && lower === null) {
    if (of.targetPolicy === 'SET') return 'set to a value that nobody gave yet';
    return classUpper === null
      ? 'kept dry, without an upper end: its class has no default'
      : `kept dry: at most ${said(classUpper)} water, ${basisWord[basis]}, the default of its class`;
  }
  const ends =
    lower === null || upper === null
      ? `${lower === null ? 'at most' : 'at least'} ${said(upper ?? lower ?? 0)}`
      : `${said(lower)} to ${said(upper)}`;
  return `${of.targetPolicy === 'SET' ? 'set to a value' : 'kept dry'}: ${ends} water, ${basisWord[basis]}`;
}

/** An invented default decides: it looks like one. */
export const isDefaultBand = (of: Target): boolean =>
  of.targetUpperWaterFraction === null && of.targetLowerWaterFraction === null && of.targetBandWaterFraction === null;

const when = (is: string): { when: FieldSpec['when'] } => ({ when: { field: 'policy', is } });

export function bandFields(grades: Opened['grades'], classUpper: number | null): FieldSpec[] {
  const usual = classUpper === null ? 'none is known for its class' : `${shown(ofWhole(classUpper))} as received`;
  const known = grades.filter(({ waterAsReceivedFraction }) => waterAsReceivedFraction > 0);
  const grade: FieldSpec = {
    name: 'grade',
    label: 'Or activity grade',
    kind: 'choice',
    optional: true,
    hint: 'Brockmann’s grades, from memory; printed variants disagree.',
    choices: known.map(({ grade: name, waterAsReceivedFraction }) => ({
      value: name,
      words: `${name}: ${percent(waterAsReceivedFraction, 0)} water of the whole`,
    })),
    ...when('DRY'),
  };
  const water = (name: string, label: string, policy: string): FieldSpec => ({
    name,
    label,
    kind: 'number',
    unit: '%',
    scale: 0.01,
    ...when(policy),
  });
  return [
    {
      name: 'policy',
      label: 'It is',
      kind: 'choice',
      choices: [
        { value: 'DRY', words: 'kept dry' },
        { value: 'AS_RECEIVED', words: 'kept as received' },
        { value: 'SET', words: policyWord.SET },
      ],
    },
    { ...water('upper', 'Water at most', 'DRY'), optional: true, hint: `Empty: the default, ${usual}.` },
    ...(known.length > 0 ? [grade] : []),
    {
      ...water('sides', 'Either side', 'AS_RECEIVED'),
      optional: true,
      hint: 'Percent points about the water on each lot’s certificate. Empty: 0.5.',
    },
    water('value', 'Water', 'SET'),
    { ...water('band', 'Either side', 'SET'), hint: 'Percent points.' },
    {
      name: 'basis',
      label: 'Counted on',
      kind: 'choice',
      hint: 'As received: of the whole mass. Dry: of the dry sorbent.',
      choices: [
        { value: 'AS_RECEIVED', words: 'as received' },
        { value: 'DRY', words: 'dry basis' },
      ],
    },
  ];
}

/** What the API calls the form's fields. */
export const bandUnder: Record<string, string> = {
  upper: 'upperWaterFraction',
  sides: 'bandWaterFraction',
  band: 'bandWaterFraction',
  value: 'valueWaterFraction',
};

const figure = (fraction: number): string => String(Number((100 * fraction).toFixed(3)));

/** What stands in the form for a target that is there. */
export function bandTyped(of: Target): Typed {
  const { targetUpperWaterFraction: upper, targetLowerWaterFraction: lower, targetBandWaterFraction: sides } = of;
  const policy = of.targetPolicy ?? 'DRY';
  const typed: Typed = { policy, basis: 'AS_RECEIVED' };
  if (policy === 'DRY' && upper !== null) typed['upper'] = figure(ofWhole(upper));
  if (sides !== null) typed['sides'] = figure(sides);
  if (policy === 'SET' && upper !== null && lower !== null) {
    const ends = [ofWhole(lower), ofWhole(upper)] as const;
    typed['value'] = figure((ends[0] + ends[1]) / 2);
    typed['band'] = figure((ends[1] - ends[0]) / 2);
  }
  return typed;
}

type Values = Record<string, string | number | boolean | null>;
const number = (value: Values[string] | undefined): number | null => (typeof value === 'number' ? value : null);
const text = (value: Values[string] | undefined): string | null => (typeof value === 'string' ? value : null);

/** The form's values as the API takes them. */
export function bandInput(values: Values): BandInput {
  const policy = (text(values['policy']) ?? 'DRY') as BandInput['policy'];
  const basis = (text(values['basis']) ?? 'AS_RECEIVED') as Basis;
  if (policy === 'DRY')
    return { policy, upperWaterFraction: number(values['upper']), grade: text(values['grade']), basis };
  if (policy === 'AS_RECEIVED') return { policy, bandWaterFraction: number(values['sides']) };
  return { policy, valueWaterFraction: number(values['value']), bandWaterFraction: number(values['band']), basis };
}

/** What puts a target back, as it was stored. */
export function bandBefore(of: Target): Omit<BandInput, 'policy'> & { policy: BandInput['policy'] | null } {
  if (of.targetPolicy === null) return { policy: null };
  if (of.targetPolicy === 'AS_RECEIVED')
    return { policy: 'AS_RECEIVED', bandWaterFraction: of.targetBandWaterFraction };
  const ends = { upperWaterFraction: of.targetUpperWaterFraction, lowerWaterFraction: of.targetLowerWaterFraction };
  return of.targetPolicy === 'SET'
    ? { policy: 'SET', ...ends, basis: 'DRY' }
    : { policy: 'DRY', upperWaterFraction: ends.upperWaterFraction, basis: 'DRY' };
}

/** "With this, 3 of 12 in use change their answer: 2 to redry first, 1 to good to use." */
export function changeWords(containers: number, changed: readonly { after: State }[]): string {
  if (containers === 0) return 'Nothing in use goes by it now.';
  if (changed.length === 0) return `With this, none of ${count(containers, 'container')} in use changes its answer.`;
  const to = new Map<State, number>();
  for (const { after } of changed) to.set(after, (to.get(after) ?? 0) + 1);
  const parts = [...to].map(([state, many]) => `${many} to “${groupTitle[state].toLowerCase()}”`);
  const verb = changed.length === 1 ? 'changes its answer' : 'change their answer';
  return `With this, ${changed.length} of ${containers} in use ${verb}: ${parts.join(', ')}.`;
}

/** A lot in one line: whose, since when, what its certificate says. */
export const certificateWords = (
  lot: Pick<Lot, 'certificateWaterFraction' | 'certificateMaxWaterFraction'>,
): string => {
  const { certificateWaterFraction: water, certificateMaxWaterFraction: most } = lot;
  if (water === null && most === null) return 'no water on its certificate';
  const parts = [
    water === null ? null : `${shown(ofWhole(water))} water`,
    most === null ? null : `at most ${shown(ofWhole(most))}`,
  ];
  return `certificate: ${parts.filter(Boolean).join(', ')}, as received`;
};
