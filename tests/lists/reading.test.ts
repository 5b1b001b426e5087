// Lists as labs write them, in five languages, as text and as workbooks of an independent writer; and hostile ones.
import { deflateRawSync } from 'node:zlib';
import * as XLSX from '@e965/xlsx';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { listIn, mostLines } from '../../api/lists/read.ts';
import { asked, fixture, littleLab, read } from './understood.ts';
import { understand } from '../../api/lists/understood.ts';
import { noAnswers } from '../../api/lists/questions.ts';

const jars = { 'vessel:500': 'is:jar 1 L', 'vessel:1000': 'is:jar 2.5 L', 'vessel:2500': 'is:drum 10 L' };
const bytesOf = (book: XLSX.WorkBook): Uint8Array =>
  new Uint8Array(XLSX.write(book, { type: 'buffer', bookType: 'xlsx' }) as Buffer);
const bookOf = (sheets: Record<string, XLSX.WorkSheet>, date1904 = false): Uint8Array => {
  const book = XLSX.utils.book_new();
  for (const [name, sheet] of Object.entries(sheets)) XLSX.utils.book_append_sheet(book, sheet, name);
  book.Workbook = { ...book.Workbook, WBProps: { date1904 } };
  return bytesOf(book);
};

describe('a list pasted in English', () => {
  it('is matched by its headings; what is left counts, sums and empty packs are left out with why', async () => {
    const list = await read(fixture('english.tsv'), { ...jars });
    expect(list.problems).toEqual([]);
    expect(asked(list)).toEqual([]);
    expect(list.rows.map(({ line, grams, vessel, closure }) => ({ line, grams, vessel, closure }))).toEqual([
      { line: 4, grams: 620, vessel: 'jar 2.5 L', closure: 'WELL_CLOSED' },
      { line: 5, grams: 1000, vessel: 'jar 2.5 L', closure: 'SEALED' },
      { line: 7, grams: 340, vessel: 'jar 1 L', closure: 'OPEN' },
    ]);
    // A name that differs only by its dash is ours.
    expect(list.rows[0]?.sorbent).toBe('Silica 40–63 µm');
    // Noon in Helsinki, winter time.
    expect(list.rows[0]?.openedAt?.toISOString()).toBe('2026-02-02T10:00:00.000Z');
    expect(list.leftOut.map(({ line }) => line)).toEqual([1, 6, 8]);
  });
});

describe('a list of another language', () => {
  it('in German has decimal commas, its unit in the heading, and a merged cell that is asked about', async () => {
    const names = {
      'name:SORBENT:kieselgel 60': 'make:silica',
      'name:SORBENT:aluminiumoxid neutral': 'is:Alumina, neutral',
      'name:ROOM:nasslabor': 'is:wet bench',
      'name:ROOM:kühlraum': 'make:COLD_STORE',
      'empty:SORBENT': 'above',
    };
    const list = await read(fixture('german.csv'), { ...jars, ...names });
    expect(asked(list)).toEqual([]);
    expect(list.problems).toEqual([]);
    expect(list.rows.map(({ sorbent, grams, room }) => [sorbent, grams, room])).toEqual([
      ['Kieselgel 60', 2500, 'wet bench'],
      ['Kieselgel 60', 1000, 'wet bench'],
      ['Alumina, neutral', 500, 'Kühlraum'],
    ]);
    expect(list.makes).toEqual([
      { what: 'SORBENT', name: 'Kieselgel 60', as: 'silica' },
      { what: 'ROOM', name: 'Kühlraum', as: 'COLD_STORE' },
    ]);
  });

  it('in French has dates that could be read both ways: asked, and read as answered', async () => {
    expect(asked(await read(fixture('french.csv')))).toContain('dates');
    const names = {
      'name:SORBENT:silice 60': 'make:silica',
      'name:SORBENT:alumine': 'make:alumina',
      'name:ROOM:paillasse': 'make:ROOM',
      'name:ROOM:chambre froide': 'make:COLD_STORE',
    };
    const days = async (dates: string) =>
      (await read(fixture('french.csv'), { ...jars, ...names, dates })).rows.map(({ receivedAt }) =>
        receivedAt?.toISOString().slice(0, 10),
      );
    expect(await days('day-first')).toEqual(['2026-02-03', '2026-02-04']);
    expect(await days('month-first')).toEqual(['2026-03-02', '2026-04-02']);
  });

  it('in Spanish calls a name "nombre", in which a comma stands in quotes', async () => {
    const list = await read(fixture('spanish.csv'), {
      ...jars,
      'name:SORBENT:sílice 60, fina': 'make:silica',
      'name:SORBENT:placas tlc sílice': 'make:silica',
      'name:ROOM:sala 1': 'make:ROOM',
    });
    expect(list.problems).toEqual([]);
    expect(list.rows.map(({ kind, grams, plates }) => [kind, grams, plates])).toEqual([
      ['DRUM', 500, null],
      ['PLATE_BOX', null, 25],
    ]);
  });

  it('in Finnish is matched too', async () => {
    const list = await read(fixture('finnish.csv'));
    expect(list.columns.map(({ field }) => field)).toEqual([
      'SORBENT',
      'SUPPLIER',
      'LOT_NUMBER',
      'AMOUNT',
      'RECEIVED',
      'OPENED',
      'ROOM',
    ]);
  });
});

describe('numbers', () => {
  const list = (amount: string, heading = 'amount') =>
    `sorbent\tlot\troom\t${heading}\nSilica 40–63 µm\tK1\twet bench\t${amount}\n`;
  const any = { known: { vessels: [{ name: 'jar', volumeMl: 1e9 }] } };
  const gramsOf = async (amount: string, answers: Record<string, string> = {}, heading = 'amount') => {
    const first = await read(list(amount, heading), answers, any);
    const vessel = first.questions.find(({ key }) => key.startsWith('vessel:'))?.key ?? '';
    return (await read(list(amount, heading), { ...answers, [vessel]: 'is:jar' }, any)).rows[0]?.grams;
  };

  it.each([
    ['2,5 kg', 2500],
    ['2.5 kg', 2500],
    ['500g', 500],
    ['1.250,5 g', 1250.5],
    ["1'250.5 g", 1250.5],
    ['1 250 g', 1250],
    ['750 mg', 0.75],
    ['2 x 500 g', 500],
  ])('%s is %d g', async (amount, grams) => {
    expect(await gramsOf(amount)).toBeCloseTo(grams, 9);
  });

  it('without a unit are asked about, and a heading that names one answers', async () => {
    expect(asked(await read(list('500')))).toContain('unit:AMOUNT');
    expect(await gramsOf('500', { 'unit:AMOUNT': 'g' })).toBe(500);
    expect(await gramsOf('0,5', {}, 'amount [kg]')).toBe(500);
  });

  it('that are 1,000 g or 1.000 g are asked about, never guessed', async () => {
    expect(asked(await read(list('1,000 g')))).toContain('decimal');
    expect(await gramsOf('1,000 g', { decimal: 'point' })).toBe(1000);
    expect(await gramsOf('1,000 g', { decimal: 'comma' })).toBe(1);
  });

  it('of water are as received or dry: asked; 2 % as received is 2.04 % of the dry', async () => {
    const water = 'sorbent\tlot\troom\tamount\tvessel\twater %\nSilica 40–63 µm\tK1\twet bench\t500 g\tjar 1 L\t2,0\n';
    expect(asked(await read(water))).toEqual(['basis:START_WATER']);
    const fraction = async (basis: string) =>
      (await read(water, { 'basis:START_WATER': basis })).rows[0]?.startWaterFraction;
    expect(await fraction('dry')).toBeCloseTo(0.02, 12);
    expect(await fraction('received')).toBeCloseTo(0.02 / 0.98, 12);
  });
});

describe('a workbook', () => {
  const rows = [
    ['Sorbent', 'Lot', 'Amount (g)', 'Vessel', 'Received', 'Room'],
    ['Silica 40–63 µm', 'K1', 500, 'jar 1 L', new Date(Date.UTC(2026, 1, 3)), 'wet bench'],
  ];

  it.each([false, true])('keeps its days, numbers and formulas, counted from 1904: %s', async (date1904) => {
    const sheet = XLSX.utils.aoa_to_sheet(rows, { UTC: true, cellDates: !date1904, dateNF: 'yyyy-mm-dd' });
    sheet['C2'] = { t: 'n', v: 500, f: '250*2' };
    if (date1904) {
      // 2026-02-03 as days since 1904-01-01.
      sheet['E2'] = { t: 'n', v: (Date.UTC(2026, 1, 3) - Date.UTC(1904, 0, 1)) / 86_400_000, z: 'yyyy-mm-dd' };
    }
    const list = await read(bookOf({ stock: sheet }, date1904));
    expect(list.problems).toEqual([]);
    expect(list.rows[0]).toMatchObject({ line: 2, grams: 500, vessel: 'jar 1 L' });
    expect(list.rows[0]?.receivedAt?.toISOString()).toBe('2026-02-03T10:00:00.000Z');
  });

  it('of several sheets is asked which one; empty lines keep their numbers', async () => {
    const sheet = XLSX.utils.aoa_to_sheet([
      rows[0] ?? [],
      [],
      ['Silica 40–63 µm', '', 500, 'jar 1 L', '', 'wet bench'],
    ]);
    const bytes = bookOf({ prices: XLSX.utils.aoa_to_sheet([['x']]), stock: sheet });
    expect(asked(await read(bytes))).toEqual(['sheet']);
    const list = await read(bytes, { sheet: 'stock' });
    expect(list.problems.map(({ line, column }) => [line, column])).toEqual([[3, 'Lot']]);
  });

  it('of the old kind is refused with what would do', async () => {
    const old = new Uint8Array(
      XLSX.write(
        { SheetNames: ['s'], Sheets: { s: XLSX.utils.aoa_to_sheet(rows) } },
        { type: 'buffer', bookType: 'xls' },
      ) as Buffer,
    );
    expect(await listIn(old)).toEqual({
      is: 'an old .xls workbook',
      expected: 'the same workbook saved as .xlsx, or as CSV',
    });
  });

  it('that unpacks to more than any list is refused before it is unpacked', async () => {
    const whole = Buffer.from(bookOf({ stock: XLSX.utils.aoa_to_sheet(rows) }));
    // One more part: 400 MB of zeros, which deflate to 400 kB, while the directory claims that they are 10 bytes.
    const packed = deflateRawSync(Buffer.alloc(400_000_000), { level: 9 });
    const header = Buffer.alloc(46);
    header.writeUInt32LE(0x02014b50, 0);
    header.writeUInt16LE(8, 10);
    header.writeUInt32LE(packed.length, 20);
    header.writeUInt32LE(10, 24);
    header.writeUInt16LE(1, 28);
    const end = whole.lastIndexOf(Buffer.from('504b0506', 'hex'));
    const directory = whole.readUInt32LE(end + 16);
    const local = Buffer.alloc(31);
    local.writeUInt32LE(0x04034b50, 0);
    local.writeUInt16LE(1, 26);
    header.writeUInt32LE(directory, 42);
    const old = whole.subarray(directory, end);
    const tail = Buffer.from(whole.subarray(end));
    tail.writeUInt16LE(tail.readUInt16LE(10) + 1, 10);
    tail.writeUInt32LE(directory + local.length + packed.length, 16);
    const bomb = Buffer.concat([whole.subarray(0, directory), local, packed, old, header, Buffer.from('z'), tail]);
    const began = process.cpuUsage();
    expect(await listIn(new Uint8Array(bomb))).toMatchObject({ is: expect.stringContaining('unpacks to more') });
    expect(process.cpuUsage(began).user / 1e6).toBeLessThan(5);
  });
});

describe('what is no list', () => {
  it.each([
    ['nothing', new Uint8Array(), 'empty'],
    ['a picture', Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), 'a PNG picture'],
    ['100,000 lines', new TextEncoder().encode('a\tb\n'.repeat(100_000)), '100000 lines long'],
  ])('%s is refused', async (_, bytes, is) => {
    expect(await listIn(bytes)).toMatchObject({ is });
  });

  it(`of ${mostLines} lines is still one, and a cell of 5 MB is quoted shortly`, async () => {
    const list = `sorbent\tlot\troom\tamount\n${'x'.repeat(5_000_000)}\tK\twet bench\t5 g\n`;
    const [problem] = (await read(list)).problems;
    expect(problem).toMatchObject({ line: 2, column: 'sorbent', expected: 'at most 120 signs' });
    expect(problem?.value.length).toBeLessThan(80);
  });
});

describe('whatever is pasted', () => {
  const cell = fc.oneof(
    fc.constantFrom(
      '',
      'Silica 40–63 µm',
      'K-1',
      '500 g',
      '2,5',
      '1.000',
      '03/04/2026',
      'wet bench',
      'lot',
      'sorbent',
      'Total',
      'open',
      '"',
      "'",
      '-',
    ),
    fc.string({ maxLength: 12, unit: 'grapheme' }).map((text) => text.replace(/[\t\r\n]/g, ' ')),
  );
  const table = fc.array(fc.array(cell, { minLength: 1, maxLength: 7 }), { minLength: 1, maxLength: 12 });

  it('never throws, and every line with something in it is a row, left out with why, wrong, or waits for an answer', async () => {
    await fc.assert(
      fc.asyncProperty(table, fc.constantFrom('\t', ';', ','), async (rows, separator) => {
        const bytes = new TextEncoder().encode(rows.map((row) => row.join(separator)).join('\n'));
        const sheets = await listIn(bytes);
        if ('is' in sheets) return;
        const list = understand(sheets, noAnswers, littleLab);
        const filled = sheets.sheets[0]?.lines ?? [];
        const told = [...list.rows, ...list.leftOut].map(({ line }) => line);
        const wrong = new Set(list.problems.flatMap(({ line }) => line ?? []));
        for (const line of told) expect(wrong.has(line) && list.leftOut.some((left) => left.line === line)).toBe(false);
        const headings = list.headings === null ? 0 : 1;
        const own = [...wrong].filter((line) => !told.includes(line)).length;
        expect(new Set(told).size + own + list.waiting + headings).toBe(filled.length);
      }),
      { numRuns: 400 },
    );
  });
});
