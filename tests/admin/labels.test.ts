// Labels: where each lies on its sheet, and what stands on it, however long a name is and however small the label.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutTo, layoutOf, leading, widthMm, wrapped } from '../../admin/label/layout.ts';
import { emptyOf } from '../../admin/act/field.ts';
import { allFields, ownMeasures, sheetOf } from '../../admin/label/settings.ts';
import { laidOn, pageOf, pageRule, perPage, placeAt, presets, sheetWords, wrongIn } from '../../admin/label/sheet.ts';
import { symbolText } from '../../admin/label/symbol.ts';
import { bandWords, dayOnPaper, type LabelOf } from '../../admin/label/words.ts';

describe('a sheet of labels', () => {
  it.each(presets.map((sheet) => [sheetWords(sheet), sheet] as const))('%s lies whole on its page', (_, sheet) => {
    expect(wrongIn(sheet)).toEqual({});
    const last = placeAt(sheet, perPage(sheet) - 1);
    const page = pageOf(sheet);
    expect(last.leftMm + sheet.labelWidthMm).toBeLessThanOrEqual(page.widthMm + 0.15);
    expect(last.topMm + sheet.labelHeightMm).toBeLessThanOrEqual(page.heightMm + 0.15);
  });

  it('is filled row by row, and goes on at the first place of the next', () => {
    const [sheet] = presets;
    if (!sheet) throw new Error('no sheet');
    // 3 × 8 of 70 × 36 mm on A4, 4.5 mm from the top: by hand.
    expect(placeAt(sheet, 0)).toEqual({ page: 0, leftMm: 0, topMm: 4.5 });
    expect(placeAt(sheet, 4)).toEqual({ page: 0, leftMm: 70, topMm: 40.5 });
    expect(placeAt(sheet, 23)).toEqual({ page: 0, leftMm: 140, topMm: 256.5 });
    expect(placeAt(sheet, 24)).toEqual({ page: 1, leftMm: 0, topMm: 4.5 });
  });

  it('carries every copy once, and no two at one place', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...presets),
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 1, max: 4 }),
        fc.nat(64),
        (sheet, things, copies, from) => {
          const start = from % perPage(sheet);
          const labels = Array.from({ length: things }, (_, i) => i);
          const placed = laidOn(sheet, labels, copies, start).flat();
          expect(placed.map(({ of }) => of)).toEqual(labels.flatMap((of) => Array.from({ length: copies }, () => of)));
          const places = placed.map(({ page, leftMm, topMm }) => `${page} ${leftMm} ${topMm}`);
          expect(new Set(places).size).toBe(places.length);
          expect(placed[0]).toMatchObject({ ...placeAt(sheet, start), page: 0 });
        },
      ),
    );
  });

  it('of a roll is a page a label', () => {
    const roll = presets.find(({ page }) => page === 'ROLL');
    if (!roll) throw new Error('no roll');
    expect(pageRule(roll)).toBe('@page { size: 57mm 32mm; margin: 0; }');
    expect(laidOn(roll, ['a', 'b'], 2, 5)).toHaveLength(4);
  });

  it('of the lab’s own measures is read as typed, with a comma too', () => {
    const typed = {
      ...emptyOf(allFields),
      sheet: ownMeasures,
      labelWidthMm: '63,5',
      labelHeightMm: '38.1',
      rows: '7',
      topMm: '15',
      leftMm: '7,2',
      gapXMm: '2.5',
    };
    expect(sheetOf(typed).sheet).toMatchObject({ page: 'A4', labelWidthMm: 63.5, columns: 3, rows: 7, leftMm: 7.2 });
  });

  it.each([
    [{ labelWidthMm: '75' }, 'labelWidthMm', 'together the labels reach 225 mm across, and the page has 210 mm'],
    [{ rows: '9' }, 'labelHeightMm', 'together the labels reach 328.5 mm down, and the page has 297 mm'],
    [{ columns: '2.5' }, 'columns', 'a whole number from 1 to 12'],
    [{ gapXMm: 'none' }, 'gapXMm', 'a number such as 38.1'],
    [{ labelHeightMm: '5' }, 'labelHeightMm', 'from 12 to 300 mm'],
  ])('with %j cannot be, and that is said beside %s', (change, name, words) => {
    const { sheet, wrong } = sheetOf({ ...emptyOf(allFields), sheet: ownMeasures, ...change });
    expect(sheet).toBeNull();
    expect(wrong[name]).toBe(words);
  });
});

const label = (more: Partial<LabelOf> = {}): LabelOf => ({
  label: '4M7-2XK',
  sorbent: 'Silica 40 to 63 µm',
  lot: 'F-118',
  openedOn: null,
  band: 'at most 5 % water',
  cautions: ['dry powder: hood or mask', 'warms when wetted'],
  ...more,
});
const longName = 'Neutral aluminium oxide 50 to 200 µm for column work, second cut';
const mmPerPt = 25.4 / 72;

describe('what stands on a label', () => {
  const fits = (of: LabelOf, width: number, height: number) => {
    const { symbolMm, paddingMm, codePt, lines } = layoutOf(of, width, height);
    const stacked = width < 30 && height > width * 1.2;
    const sum = [codePt, ...lines.map(({ pt }) => pt)].reduce((total, pt) => total + pt * leading * mmPerPt, 0);
    expect(sum + 2 * paddingMm + (stacked ? symbolMm : 0)).toBeLessThanOrEqual(height + 0.01);
    const room = stacked ? width - 2 * paddingMm : width - 2 * paddingMm - symbolMm - 1.4;
    for (const { text, pt, bold } of lines) expect(widthMm(text, pt, bold)).toBeLessThanOrEqual(room + 0.01);
    return lines;
  };

  it('is all of it in letters of 10 pt and more where there is room', () => {
    const lines = fits(label(), 99.1, 38.1);
    expect(lines.map(({ text }) => text)).toEqual([
      'Silica 40 to 63 µm',
      'lot F-118',
      'opened',
      'at most 5 % water',
      'dry powder: hood or mask',
      'warms when wetted',
    ]);
    expect(Math.min(...lines.map(({ pt }) => pt))).toBeGreaterThanOrEqual(8);
  });

  it('has a line to write the day on until it was opened', () => {
    expect(fits(label(), 70, 36).find(({ text }) => text === 'opened')?.blank).toBe(true);
    const opened = fits(label({ openedOn: '24 Nov 2026' }), 70, 36);
    expect(opened.some(({ text, blank }) => text === 'opened 24 Nov 2026' && !blank)).toBe(true);
  });

  it('of a name of 60 signs is smaller, or goes over lines, but says what it is', () => {
    expect(longName.length).toBeGreaterThanOrEqual(60);
    const lines = fits(label({ sorbent: longName }), 70, 36);
    const name = lines.filter(({ bold }) => bold).map(({ text }) => text);
    expect(name.join(' ')).toBe(longName);
  });

  it('on a label of 38 × 21 mm is what one needs most; cautions go before the lot does', () => {
    const lines = fits(label({ sorbent: longName }), 38.1, 21.2).map(({ text }) => text);
    expect(lines[0]).toMatch(/^Neutral/);
    expect(lines).toContain('lot F-118');
    expect(lines.join(' ')).not.toContain('warms when wetted');
  });

  it('never runs over its edge, whatever the label and the words', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 25, max: 120 }),
        fc.integer({ min: 12, max: 80 }),
        fc.string({ minLength: 1, maxLength: 120 }).filter((text) => text.trim() !== ''),
        fc.string({ minLength: 1, maxLength: 60 }).filter((text) => text.trim() !== ''),
        (width, height, sorbent, lot) => void fits(label({ sorbent, lot }), width, height),
      ),
    );
  });

  it('is wrapped between words, and cut with a sign that there was more', () => {
    expect(wrapped('one two three', 10, widthMm('one two', 10) + 0.1)).toEqual(['one two', 'three']);
    const cut = cutTo(['one two', 'three'], 1, 10, widthMm('one two', 10));
    expect(cut).toHaveLength(1);
    expect(cut[0]).toMatch(/^one.*…$/);
  });
});

describe('the words of a label', () => {
  it.each([
    [null, 0.05, 'at most 5 % water'],
    [0, 0.03, 'at most 3 % water'],
    [0.04, 0.06, '4 to 6 % water'],
    [0.055, 0.0651, '5.5 to 6.5 % water'],
    [0.02, null, 'at least 2 % water'],
    [null, null, null],
  ])('of a band from %s to %s are %j', (lower, upper, words) => expect(bandWords(lower, upper)).toBe(words));

  it('say a day with its month in letters, on the lab’s own clock', () => {
    expect(dayOnPaper(new Date('2026-11-24T23:30:00Z'), 'Europe/Helsinki')).toBe('25 Nov 2026');
  });

  it('of its symbol are the code alone', () => {
    expect(symbolText('4M7-2XK')).toBe('4M72XK');
  });
});
