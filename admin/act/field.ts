// A field of a form as data: what it is called, what it takes, and how its text becomes the API's value.
import { typedNumber } from '../say/water.ts';

export interface Choice {
  value: string;
  words: string;
}

export interface FieldSpec {
  /** The input's own name for it. */
  name: string;
  label: string;
  kind: 'number' | 'text' | 'choice' | 'time' | 'day' | 'tick';
  unit?: string;
  hint?: string;
  optional?: boolean;
  /** What stands in it at first. */
  initial?: string;
  choices?: readonly Choice[];
  /** The typed number times this is what the API takes (0.01 for percent to fraction). */
  scale?: number;
  /** Shown only while another field holds this. */
  when?: { field: string; is: string };
  /** Takes the whole width of its form. */
  wide?: boolean;
  /** Of a text: what would be right, where it is not. */
  check?: (text: string) => string | null;
}

export type Typed = Record<string, string>;

export const isShown = (field: FieldSpec, typed: Typed): boolean =>
  field.when === undefined || typed[field.when.field] === field.when.is;

export const emptyOf = (fields: readonly FieldSpec[]): Typed =>
  Object.fromEntries(
    fields.map(({ name, initial, kind, choices, optional }) => {
      const first = kind === 'choice' && !optional ? choices?.[0]?.value : undefined;
      return [name, initial ?? first ?? ''];
    }),
  );

export interface Read {
  values: Record<string, string | number | boolean>;
  /** What is wrong, by field name, said as what would be right. */
  wrong: Record<string, string>;
}

/** The input's values of what was typed; `toInstant` reads a field of date and time on the lab's clock. */
export function readFields(fields: readonly FieldSpec[], typed: Typed, toInstant: (text: string) => Date | null): Read {
  const values: Read['values'] = {};
  const wrong: Read['wrong'] = {};
  for (const field of fields) {
    if (!isShown(field, typed)) continue;
    const words = (typed[field.name] ?? '').trim();
    if (words === '') {
      if (!field.optional && field.kind !== 'tick') wrong[field.name] = `${field.label}: still empty`;
    } else if (field.kind === 'number') {
      const value = typedNumber(words);
      if (value === null)
        wrong[field.name] = `a number such as ${field.unit === '%' ? '4.1' : '50'}, without thousands`;
      else values[field.name] = field.scale === undefined ? value : Number((value * field.scale).toPrecision(12));
    } else if (field.kind === 'time') {
      const at = toInstant(words);
      if (at === null) wrong[field.name] = 'a day and a time';
      else values[field.name] = at.toISOString();
    } else if (field.kind === 'day') {
      // Noon of that day, so that it is the same day in the zones around.
      const at = toInstant(`${words}T12:00`);
      if (at === null) wrong[field.name] = 'a day';
      else values[field.name] = at.toISOString();
    } else if (field.kind === 'tick') {
      if (words === 'yes') values[field.name] = true;
    } else {
      const right = field.check?.(words) ?? null;
      if (right === null) values[field.name] = words;
      else wrong[field.name] = right;
    }
  }
  return { values, wrong };
}
