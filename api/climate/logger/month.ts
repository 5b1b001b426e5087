/** Months by name, as far as their first letters tell them apart. */

/** English, German, French, Spanish, Italian, Dutch; diacritics taken off. From memory. */
const BEGINNINGS: readonly (readonly string[])[] = [
  ['jan', 'ene', 'gen'],
  ['feb', 'fev'],
  ['mar', 'mrz', 'maer', 'mrt', 'maa'],
  ['apr', 'avr', 'abr'],
  ['may', 'mai', 'mei', 'mag'],
  ['jun', 'juin', 'giu'],
  ['jul', 'juil', 'lug'],
  ['aug', 'aou', 'ago'],
  ['sep', 'set'],
  ['oct', 'okt', 'ott'],
  ['nov'],
  ['dec', 'dez', 'dic'],
];

/** 1 to 12; null for a word that is no month. */
export function monthNamed(word: string): number | null {
  const plain = word.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  const index = BEGINNINGS.findIndex((beginnings) => beginnings.some((beginning) => plain.startsWith(beginning)));
  return index < 0 ? null : index + 1;
}
