// The short code on a container: `4M7-2XK`, read aloud easily, still readable after a smudge.
//
// Twenty-nine signs without look-alikes, five that say which and one that checks. Twenty-nine is
// a prime, and the weights 6 to 1 differ, so Σ weight · sign ≡ 0 (mod 29) breaks with every single
// wrong sign and with every swap of two, and one sign that cannot be read follows from the others.
import { invalid, missing } from '../errors.ts';

const signs = '0123456789ACDEFGHJKMNPQRTVWXY';
const base = signs.length;
const weights = [6, 5, 4, 3, 2, 1];

/** Signs that people write or read for one of ours. */
const lookAlikes: Record<string, string> = { O: '0', I: '1', L: '1', Z: '2', S: '5', B: '8', U: 'V' };

/** How many labels a lab can have. */
export const labelCount = base ** 5;

// n → a n + b is a bijection modulo 29⁵, since 29 does not divide a. a is near the golden section
// of 29⁵, so that running numbers land far apart and neighbours on a shelf do not look alike.
const scatter = { a: 12_676_583, b: 7_340_033 };

const scattered = (n: number): number =>
  Number((BigInt(n) * BigInt(scatter.a) + BigInt(scatter.b)) % BigInt(labelCount));

const sum = (values: readonly number[]): number =>
  values.reduce((total, value, at) => total + value * (weights[at] ?? 0), 0) % base;

const written = (values: readonly number[]): string => {
  const text = values.map((value) => signs[value] ?? '').join('');
  return `${text.slice(0, 3)}-${text.slice(3)}`;
};

/** The label of a running number, 0 ≤ n < 29⁵; different for each. */
export function labelOf(n: number): string {
  if (!Number.isInteger(n) || n < 0 || n >= labelCount) {
    throw new RangeError(`invalid n: ${n}, a whole number from 0 to ${labelCount - 1}`);
  }
  const scrambled = scattered(n);
  const values = [4, 3, 2, 1, 0].map((power) => Math.floor(scrambled / base ** power) % base);
  const check = (base - sum(values)) % base;
  return written([...values, check]);
}

/** x with weight · x ≡ rest (mod 29); 29 is prime, so there is exactly one. */
function solved(weight: number, rest: number): number {
  for (let x = 0; x < base; x += 1) if ((weight * x) % base === rest) return x;
  throw new RangeError(`invalid weight: ${weight}, not a multiple of ${base}`);
}

/** The signs of what was typed: case, spaces and dashes do not matter, look-alikes are ours. */
export const signsRead = (text: string): string =>
  [...text.toUpperCase().replace(/[\s\-–—_.]/g, '')].map((sign) => lookAlikes[sign] ?? sign).join('');

const example = 'six signs such as 4M7-2XK, with ? for one that cannot be read';

/**
 * The label that somebody meant: case, spaces and dashes do not matter, look-alikes are taken
 * for ours (O for 0, I and L for 1, Z 2, S 5, B 8, U V), and one `?` is found from the check sign.
 * Refuses what has a wrong sign, naming `path`.
 */
export function labelMeant(text: string, path = 'input.label'): string {
  const read = [...signsRead(text)];
  if (read.length === 0) throw missing(path, example);
  const strange = read.find((sign) => sign !== '?' && !signs.includes(sign));
  if (strange !== undefined) throw invalid(path, text, `${strange} is no sign of a label; ${example}`);
  if (read.length !== 6) throw invalid(path, text, example);
  const values = read.map((sign) => signs.indexOf(sign));
  const unread = values.filter((value) => value < 0).length;
  if (unread > 1) throw invalid(path, text, 'at most one sign may be missing');
  if (unread === 1) {
    const at = values.indexOf(-1);
    const known = sum(values.map((value) => Math.max(value, 0)));
    values[at] = solved(weights[at] ?? 1, (base - known) % base);
    return written(values);
  }
  if (sum(values) !== 0) {
    throw invalid(
      path,
      text,
      'a sign is wrong or two are swapped: read it once more, with ? for one that cannot be read',
    );
  }
  return written(values);
}
