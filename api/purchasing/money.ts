// Money: whole minor units of the lab's currency, told as a decimal ("84.50") and never reckoned as one.
import { invalid, missing } from '../errors.ts';

export interface Currency {
  /** ISO 4217. */
  readonly code: string;
  /** Digits behind the point: 2 for EUR, 0 for JPY. */
  readonly minorDigits: number;
}

/** The most that one figure may come to: what both databases hold in a whole number. */
export const mostMinor = 2_000_000_000;

const known = new Set(Intl.supportedValuesOf('currency'));

/** A currency by its code; the digits are those of ISO 4217, as the runtime carries them. */
export function currencyNamed(code: string, path: string): Currency {
  const wanted = code.trim().toUpperCase();
  if (!known.has(wanted)) throw invalid(path, code, 'the three letters of a currency (ISO 4217), such as EUR');
  const { maximumFractionDigits } = new Intl.NumberFormat('en', {
    style: 'currency',
    currency: wanted,
  }).resolvedOptions();
  return { code: wanted, minorDigits: maximumFractionDigits ?? 2 };
}

/** An amount as people type it, exactly; a comma is a point. */
export function minorOf(said: string, { code, minorDigits }: Currency, path: string): number {
  const text = said.trim().replace(',', '.');
  const right = `an amount in ${code} with at most ${minorDigits} digits behind the point, such as ${amountOf(8450, { code, minorDigits })}`;
  if (text === '') throw missing(path, right);
  const read = /^(\d{1,12})(?:\.(\d+))?$/.exec(text);
  const [, whole = '', behind = ''] = read ?? [];
  if (!read || behind.length > minorDigits) throw invalid(path, said, right);
  const minor = Number(`${whole}${behind.padEnd(minorDigits, '0')}`);
  if (minor > mostMinor) throw invalid(path, said, `at most ${amountOf(mostMinor, { code, minorDigits })}`);
  return minor;
}

/** The same where it may be left out, or taken away with null; empty text is neither. */
export const minorSaid = (
  said: string | null | undefined,
  currency: Currency,
  path: string,
): number | null | undefined => (said === null || said === undefined ? said : minorOf(said, currency, path));

/** `84.50`: as an input takes it. */
export function amountOf(minor: number, { minorDigits }: Currency): string {
  const digits = String(Math.abs(minor)).padStart(minorDigits + 1, '0');
  const cut = digits.length - minorDigits;
  const text = minorDigits === 0 ? digits : `${digits.slice(0, cut)}.${digits.slice(cut)}`;
  return minor < 0 ? `−${text}` : text;
}

/** `12 084.50 EUR`: as a screen and a letter say it, with a thin space from five digits on. */
export function moneyText(minor: number, currency: Currency): string {
  const [whole = '', behind] = amountOf(minor, currency).split('.');
  const grouped = whole.replace('−', '').length < 5 ? whole : whole.replace(/\B(?=(\d{3})+(?!\d))/g, '\u202f');
  return `${grouped}${behind === undefined ? '' : `.${behind}`} ${currency.code}`;
}
