// What a supplier's barcode says: GS1 element strings as the GS1 General Specifications set them, else its plain text.
//
// A scanner hands an element string on as digits and signs without brackets; where an element of variable length is
// followed by another, FNC1 ends it and arrives as ASCII 29 (section 7.8). Human-readable text has brackets instead.

/** FNC1 between two elements, as scanners send it. */
const separator = '\u001d';

/** Symbology identifiers (ISO/IEC 15424) that say: GS1 elements follow. */
const gs1Symbology = /^\](?:C1|e[0-3]|d2|Q3|J1)/;
const anySymbology = /^\][A-Za-z][0-9A-Za-z]/;

/** Lengths with their application identifier of elements that need no FNC1, by its first two digits (figure 7.8.5-2). */
const wholeLengths: Readonly<Record<string, number>> = {
  '00': 20,
  '01': 16,
  '02': 16,
  '03': 16,
  '04': 18,
  '11': 8,
  '12': 8,
  '13': 8,
  '14': 8,
  '15': 8,
  '16': 8,
  '17': 8,
  '18': 8,
  '19': 8,
  '20': 4,
  '31': 10,
  '32': 10,
  '33': 10,
  '34': 10,
  '35': 10,
  '36': 10,
  '41': 16,
};

/** The check digit is right: weights 3 and 1 in turn from the right, the sum a multiple of ten (section 7.9). */
export function checkDigitHolds(digits: string): boolean {
  const sum = [...digits].reverse().reduce((total, digit, at) => total + Number(digit) * (at % 2 === 0 ? 1 : 3), 0);
  return /^\d+$/.test(digits) && sum % 10 === 0;
}

/** A trade item's number with 14 digits, of 8, 12, 13 or 14; null when it is none. */
function gtinOf(digits: string): string | null {
  const is = /^(\d{8}|\d{12,14})$/.test(digits) && checkDigitHolds(digits);
  return is ? digits.padStart(14, '0') : null;
}

/** YYMMDD as a day: the century nearest to now (section 7.12), day 00 as the month's last. Null when it is no day. */
export function dayOf(digits: string, now: Date): string | null {
  const read = /^(\d\d)(\d\d)(\d\d)$/.exec(digits);
  if (!read) return null;
  const [yy = 0, month = 0, day = 0] = read.slice(1).map(Number);
  const thisYear = now.getUTCFullYear();
  const century = thisYear - (thisYear % 100);
  const ahead = yy - (thisYear % 100);
  const year = century + yy + (ahead >= 51 ? -100 : ahead <= -50 ? 100 : 0);
  const last = new Date(Date.UTC(year, month, 0)).getUTCDate();
  if (month < 1 || month > 12 || day > last) return null;
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${year}-${two(month)}-${two(day === 0 ? last : day)}`;
}

type Elements = Map<string, string>;

/** Elements of text with brackets: (01)09506000134352(10)ABC123. */
function bracketed(text: string): Elements {
  const elements: Elements = new Map();
  for (const [, identifier = '', value = ''] of text.matchAll(/\((\d{2,4})\)((?:(?!\(\d{2,4}\)).)*)/g))
    if (!elements.has(identifier)) elements.set(identifier, value.trim());
  return elements;
}

/** Elements as a scanner sends them; what follows an element that does not fit is left alone. */
function transmitted(text: string): Elements {
  const elements: Elements = new Map();
  let rest = text;
  while (rest.length > 2) {
    if (rest.startsWith(separator)) {
      rest = rest.slice(1);
      continue;
    }
    const identifier = rest.slice(0, 2);
    const end = rest.indexOf(separator);
    const length = wholeLengths[identifier] ?? (end < 0 ? rest.length : end);
    if (!/^\d\d$/.test(identifier) || rest.length < length) break;
    if (!elements.has(identifier)) elements.set(identifier, rest.slice(2, length));
    rest = rest.slice(length);
  }
  return elements;
}

/** Null when the text is no element string. */
function elementsOf(text: string): Elements | null {
  if (/^\(\d{2,4}\)/.test(text)) return bracketed(text);
  const bare = text.replace(gs1Symbology, '');
  const announced = bare !== text || text.startsWith(separator);
  const begins = /^01\d{14}/.test(bare) && checkDigitHolds(bare.slice(2, 16)) && bare.length > 16;
  return announced || begins || /^01\d{14}$/.test(bare) ? transmitted(bare) : null;
}

export interface BarcodeText {
  /** What is learned: the trade item's number with 14 digits where there is one, else the whole text. */
  code: string;
  gtin: string | null;
  lotNumber: string | null;
  /** Days as YYYY-MM-DD. */
  expiresOn: string | null;
  madeOn: string | null;
  serialNumber: string | null;
}

/** What a barcode's text says, given the day it is read on. */
export function barcodeText(scanned: string, now: Date): BarcodeText {
  const text = scanned.trim();
  const elements = elementsOf(text) ?? new Map<string, string>();
  const plain = text.replace(anySymbology, '');
  const gtin = gtinOf(elements.get('01') ?? (elements.size === 0 ? plain : ''));
  return {
    code: gtin ?? plain.replaceAll(separator, ' '),
    gtin,
    lotNumber: elements.get('10') || null,
    expiresOn: dayOf(elements.get('17') ?? '', now),
    madeOn: dayOf(elements.get('11') ?? '', now),
    serialNumber: elements.get('21') || null,
  };
}
