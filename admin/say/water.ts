// Water and other quantities in words, with no more digits than are known.

const GAP = '\u00a0';

/** Decimals worth showing of a percentage known to within `width` percent points: the last digit is at least a fiftieth of it. */
export function decimalsFor(width: number): number {
  if (!(width > 0)) return 1;
  return Math.min(2, Math.max(0, Math.ceil(-Math.log10(width / 5))));
}

/** A fraction as a percentage: "4.1 %". */
export function percent(fraction: number, decimals = 1): string {
  return `${(fraction * 100).toFixed(decimals)}${GAP}%`;
}

export interface Range {
  value: number;
  low: number;
  high: number;
}

/** A value and its 90 % range: "about 4.1 % (3.2 to 5.3)". */
export function aboutPercent({ value, low, high }: Range): string {
  const decimals = decimalsFor((high - low) * 100);
  const end = (fraction: number): string => (fraction * 100).toFixed(decimals);
  return `about ${percent(value, decimals)} (${end(low)} to ${end(high)})`;
}

/** The value alone, rounded as its range allows. */
export function shortPercent({ value, low, high }: Range): string {
  return percent(value, decimalsFor((high - low) * 100));
}

/** Text in which a number stays on one line with its unit. */
export const bound = (words: string): string =>
  words.replace(/(\d) (?=%|°|mm\b|min\b|h\b|g\b|kg\b|RH\b)/g, `$1${GAP}`).replace(/% RH/g, `%${GAP}RH`);

/** Grams to three figures, kilograms from 10 kg on: "210 g", "24.3 kg". */
export function grams(value: number): string {
  if (value >= 10_000) return `${Number((value / 1000).toPrecision(3))}${GAP}kg`;
  if (value >= 100) return `${Math.round(value)}${GAP}g`;
  return `${Number(value.toPrecision(3))}${GAP}g`;
}

/** "1 plate", "18 plates". */
export function plates(count: number): string {
  return `${count} ${count === 1 ? 'plate' : 'plates'}`;
}

/** Air in one line: "21.4 °C, 48 % RH". */
export function air(temperatureC: number | null, humidityPercent: number | null): string {
  const parts = [
    temperatureC === null ? null : `${temperatureC.toFixed(1)}${GAP}°C`,
    humidityPercent === null ? null : `${Math.round(humidityPercent)}${GAP}% RH`,
  ].filter((part) => part !== null);
  return parts.length > 0 ? parts.join(', ') : 'no air known';
}

/**
 * What a person typed as a number, decimal point or comma; null when it is none.
 * "1,200" is no number either: it is twelve hundred to one reader and one and a fifth to another.
 */
export function typedNumber(text: string): number | null {
  const plain = text.trim();
  if (/^[+-]?\d{1,3}(,\d{3})+$/.test(plain)) return null;
  return /^[+-]?(\d+[.,]?\d*|[.,]\d+)$/.test(plain) ? Number(plain.replace(',', '.')) : null;
}
