// Suppliers' barcodes read as the GS1 General Specifications set them.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barcodeText, checkDigitHolds, dayOf } from '../../api/stock/gs1.ts';

const now = new Date('2026-11-25T12:00:00Z');
const read = (text: string) => barcodeText(text, now);
const FNC1 = '\u001d';

describe('an element string', () => {
  // The element string that GS1's DataMatrix Guideline uses as its running example:
  // (01)09501101020917(17)190508(10)ABCD1234(21)10
  const example = {
    code: '09501101020917',
    gtin: '09501101020917',
    lotNumber: 'ABCD1234',
    expiresOn: '2019-05-08',
    madeOn: null,
    serialNumber: '10',
  };

  it.each([
    ['with brackets, as printed', '(01)09501101020917(17)190508(10)ABCD1234(21)10'],
    ['with FNC1 after the lot', `01095011010209171719050810ABCD1234${FNC1}2110`],
    ['with the identifier of Data Matrix', `]d201095011010209171719050810ABCD1234${FNC1}2110`],
    ['with the identifier of GS1-128', `]C101095011010209171719050810ABCD1234${FNC1}2110`],
    ['with the first FNC1 sent too', `${FNC1}01095011010209171719050810ABCD1234${FNC1}2110`],
    ['with a needless FNC1 after what is of one length', `0109501101020917${FNC1}17190508${FNC1}10ABCD1234${FNC1}2110`],
  ])('%s gives trade item, lot, expiry and serial number', (_, text) => expect(read(text)).toEqual(example));

  it('may have its elements in any order, and elements that we do not ask for', () => {
    // (410) is a location number of 13 digits, of one length: no FNC1 after it (GS1 General Specifications, figure 7.8.5-2).
    expect(read('(01)03453120000011(17)120508(10)ABCD1234(410)9501101020917')).toMatchObject({
      gtin: '03453120000011',
      expiresOn: '2012-05-08',
      lotNumber: 'ABCD1234',
    });
    expect(read(`]d24109501101020917240A-7${FNC1}010345312000001110F-118`)).toMatchObject({
      gtin: '03453120000011',
      lotNumber: 'F-118',
    });
  });

  it('keeps a lot number with brackets of its own letters whole', () => {
    expect(read('(10)F(a)118(17)270531').lotNumber).toBe('F(a)118');
  });

  it('cut short gives what is whole', () => {
    expect(read(']d201095011010209171719')).toMatchObject({ gtin: '09501101020917', expiresOn: null });
  });
});

describe('a date of six digits', () => {
  it('with day 00 is the last of its month', () => {
    expect(dayOf('280200', now)).toBe('2028-02-29');
    expect(dayOf('270200', now)).toBe('2027-02-28');
  });
  it('is of the century that is nearest (section 7.12 of the General Specifications)', () => {
    // From 26: 76 is 50 ahead and still to come, 77 is 51 ahead and was.
    expect(dayOf('760101', now)).toBe('2076-01-01');
    expect(dayOf('770101', now)).toBe('1977-01-01');
    // From 2060: 09 is 51 behind, of the next century.
    expect(dayOf('090101', new Date('2060-06-01T00:00:00Z'))).toBe('2109-01-01');
    expect(dayOf('110101', new Date('2060-06-01T00:00:00Z'))).toBe('2011-01-01');
  });
  it.each(['261301', '260230', '26050', 'ABCDEF', ''])('%j is no day', (text) => expect(dayOf(text, now)).toBeNull());
});

describe('a trade item number', () => {
  // The worked example of GS1's check digit page: 629104150021 has check digit 3.
  it('has the check digit of the worked example', () => {
    expect(checkDigitHolds('6291041500213')).toBe(true);
    for (const digit of '012456789') expect(checkDigitHolds(`629104150021${digit}`)).toBe(false);
  });
  it('is the same from a retail code of 13 digits and from an element string', () => {
    expect(read('6291041500213').code).toBe('06291041500213');
    expect(read(']E06291041500213').code).toBe('06291041500213');
    expect(read('(01)06291041500213(10)7').code).toBe('06291041500213');
  });
  it('with one wrong digit is plain text', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 1, max: 9 }), (at, more) => {
        const digits = [...'6291041500213'];
        digits[at] = String((Number(digits[at]) + more) % 10);
        expect(read(digits.join(''))).toMatchObject({ gtin: null, code: digits.join('') });
      }),
    );
  });
});

describe('other text', () => {
  it('is learned as it is, without a lot', () => {
    expect(read('  MC-4711/SIL  ')).toEqual({
      code: 'MC-4711/SIL',
      gtin: null,
      lotNumber: null,
      expiresOn: null,
      madeOn: null,
      serialNumber: null,
    });
  });
  it('never fails, and never learns under nothing', () => {
    fc.assert(fc.property(fc.string({ minLength: 3 }), (text) => read(`x${text}`).code.length > 0));
  });
});
