// One line of a list: a row to book, left out with why, or what is wrong with it.
import { dayIn, tillNow } from './days.ts';
import type { Facts } from './facts.ts';
import { backingMeant, closureMeant, fieldWord, isNo, kindMeant, type Field } from './fields.ts';
import { timesIn } from './numbers.ts';
import type { Problem } from './questions.ts';
import type { Known, Resolver } from './resolve.ts';
import { amountIn, isTold, lengthIn, plateSizeIn, waterIn, wholeIn, type Told } from './said-cell.ts';
import { cellText, shown, type Cell } from './sheet.ts';

export type Closure = 'OPEN' | 'LOOSELY_COVERED' | 'WELL_CLOSED' | 'TIGHT' | 'SEALED';

/** What a line says, ready to be booked. Water as dry-basis fractions. */
export interface Row {
  line: number;
  sorbent: string;
  supplier: string | null;
  lotNumber: string;
  kind: 'DRUM' | 'PLATE_BOX';
  count: number;
  grams: number | null;
  plates: number | null;
  vessel: string | null;
  innerDiameterMm: number | null;
  heightMm: number | null;
  mouthDiameterMm: number | null;
  tareGrams: number | null;
  room: string;
  receivedAt: Date | null;
  openedAt: Date | null;
  retestOn: Date | null;
  closure: Closure | null;
  startWaterFraction: number | null;
  certificateWaterFraction: number | null;
  certificateMaxWaterFraction: number | null;
  backing: 'GLASS' | 'ALUMINIUM' | 'PLASTIC' | null;
  layerThicknessMm: number | null;
  plateWidthMm: number | null;
  plateHeightMm: number | null;
  oldCode: string | null;
  note: string | null;
}

export type Outcome = { row: Row } | { leftOut: string } | { problems: Problem[]; open: boolean };

export interface Reading {
  facts: Facts;
  known: Known;
  resolve: Resolver;
  /** What stands for an empty cell: the text of the line above, or what somebody said. */
  instead: (field: Field) => string | null;
  headingOf: (field: Field) => string | null;
  is1904: boolean;
}

const longest = 120;

/** `cells` by field. Everything wrong is told, not the first thing only. */
export function lineRead(line: number, cells: ReadonlyMap<Field, Cell>, reading: Reading): Outcome {
  const { facts, known, resolve, instead, headingOf } = reading;
  const problems: Problem[] = [];
  let open = false;
  const at = (field: Field): Cell => cells.get(field) ?? '';
  const text = (field: Field): string => cellText(at(field)) || (instead(field) ?? '');
  const wrong = (field: Field, expected: string, kind: 'invalid' | 'missing' | 'unknown' = 'invalid'): null => {
    const value = shown(at(field));
    const what = kind === 'missing' ? `missing ${fieldWord[field]}` : `${kind} ${fieldWord[field]}: ${value}`;
    problems.push({ line, column: headingOf(field), value, message: `${what}, ${expected}`, expected });
    return null;
  };
  const told = <T>(field: Field, read: (cell: Cell) => Told<T>): T | null => {
    if (cellText(at(field)) === '') return null;
    const read1 = read(at(field));
    return isTold(read1) ? read1.value : wrong(field, read1.expected);
  };
  const short = (field: Field): string | null => {
    const said = text(field).replace(/\s+/g, ' ');
    if (said === '') return null;
    return said.length > longest ? wrong(field, `at most ${longest} signs`) : said;
  };
  const name = (field: 'SORBENT' | 'SUPPLIER' | 'ROOM' | 'VESSEL'): string | null => {
    const said = short(field);
    if (said === null) return null;
    const meant = resolve.named(field, said);
    if (meant === undefined) open = true;
    return meant ?? null;
  };
  const day = (field: Field): Date | null => {
    const said = at(field);
    if (cellText(said) === '' || (field === 'OPENED' && isNo(cellText(said)))) return null;
    const read = dayIn(said, facts.order, known.timeZone, reading.is1904);
    if (!read) return wrong(field, 'a day such as 2026-03-02');
    if (field === 'RETEST') return read.at;
    const told = tillNow(read, known.now, known.timeZone);
    return told <= known.now ? told : wrong(field, 'a day that is not ahead');
  };
  const water = (field: Field): number | null =>
    told(field, (cell) =>
      waterIn(cell, facts.mark, { isFraction: facts.fractions.has(field), basis: facts.basis[field] ?? 'received' }),
    );
  const length = (field: Field): number | null =>
    told(field, (cell) => lengthIn(cell, facts.mark, facts.units[field] ?? null));

  const oldCode = short('OLD_CODE');
  const there = oldCode === null ? undefined : known.oldCodes.get(oldCode.toLowerCase());
  if (there !== undefined) return { leftOut: `${shown(oldCode ?? '')} is on the book already, as ${there}` };

  const sorbent = name('SORBENT');
  if (text('SORBENT') === '') wrong('SORBENT', 'the sorbent in it', 'missing');
  const lotNumber = short('LOT_NUMBER');
  if (text('LOT_NUMBER') === '') wrong('LOT_NUMBER', 'the lot number as printed', 'missing');
  const room = name('ROOM');
  if (text('ROOM') === '') wrong('ROOM', 'the room it stands in', 'missing');
  const supplier = name('SUPPLIER');

  const amountField: Field = cellText(at('LEFT')) === '' ? 'AMOUNT' : 'LEFT';
  const times = timesIn(cellText(at(amountField)));
  const unit = facts.units[amountField] ?? facts.units.AMOUNT ?? null;
  const amount = told(amountField, (cell) => amountIn(times?.rest ?? cell, facts.mark, unit));
  const saidPlates = told('PLATES', (cell) => wholeIn(cell, facts.mark, 100_000));
  const kindText = cellText(at('KIND'));
  const kindSaid = kindMeant(kindText);
  if (kindSaid === 'COLUMN') wrong('KIND', 'a drum, bottle or jar, or a box of plates; columns are packed here');
  else if (kindText !== '' && kindSaid === null) wrong('KIND', 'a drum, bottle or jar, or a box of plates', 'unknown');
  const isPlates =
    kindText === '' ? saidPlates !== null || (amount !== null && 'pieces' in amount) : kindSaid === 'PLATE_BOX';
  const kind = isPlates ? 'PLATE_BOX' : 'DRUM';
  // A vessel is as large as the pack it came as, whatever is left in it.
  const pack = amountIn(timesIn(cellText(at('AMOUNT')))?.rest ?? at('AMOUNT'), facts.mark, facts.units.AMOUNT ?? null);
  const packGrams = isTold(pack) && 'grams' in pack.value ? pack.value.grams : null;
  const pieces = amount !== null && 'pieces' in amount ? amount.pieces : null;
  const grams = amount !== null && 'grams' in amount ? amount.grams : null;
  const plates = amountField === 'LEFT' ? (pieces ?? saidPlates) : (saidPlates ?? pieces);
  if ((isPlates ? plates : grams) === 0) return { leftOut: 'nothing is left of it' };
  const isBad = (field: Field) => problems.some(({ column }) => column === headingOf(field));
  if (!isPlates && grams === null && !isBad(amountField))
    wrong(amountField, 'an amount such as 500 g or 2.5 kg', cellText(at(amountField)) === '' ? 'missing' : 'invalid');
  if (!isPlates && grams !== null && grams > 1e7) wrong(amountField, 'at most 10000 kg');
  if (isPlates && plates === null && !isBad('PLATES')) wrong('PLATES', 'the number of plates', 'missing');
  if (plates !== null && !Number.isInteger(plates)) wrong(amountField, 'a whole number of plates');

  const counted = told('COUNT', (cell) => wholeIn(cell, facts.mark, 200));
  if (counted === 0) return { leftOut: 'none of it: how many alike is 0' };
  const count = (counted ?? 1) * (times?.times ?? 1);
  if (count > 200) wrong('COUNT', 'at most 200 alike in one line');

  const receivedAt = day('RECEIVED');
  const openedAt = day('OPENED');
  const retestOn = day('RETEST');
  if (receivedAt && openedAt && openedAt < receivedAt) wrong('OPENED', 'a day on which it had come in already');
  const closureText = cellText(at('CLOSURE'));
  const closure = closureText === '' ? null : closureMeant(closureText);
  if (closureText !== '' && closure === null)
    wrong('CLOSURE', 'sealed, tight, well closed, loosely covered or open', 'unknown');
  if (closure === 'SEALED' && openedAt)
    wrong('CLOSURE', 'how it is closed since it was opened: tight, well closed, open');

  const innerDiameterMm = length('INNER_DIAMETER');
  const heightMm = length('HEIGHT');
  const mouthDiameterMm = length('MOUTH_DIAMETER');
  let vessel: string | null = null;
  if (!isPlates) {
    if (text('VESSEL') !== '') vessel = name('VESSEL');
    else if (innerDiameterMm !== null && heightMm === null)
      wrong('HEIGHT', 'the inner height beside the diameter', 'missing');
    else if (innerDiameterMm === null && grams !== null) {
      vessel = resolve.vesselFor(packGrams ?? grams) ?? null;
      if (vessel === null) open = true;
    }
  }
  const tare = told('TARE', (cell) => amountIn(cell, facts.mark, facts.units.TARE ?? 'g'));
  const tareGrams = tare === null ? null : 'grams' in tare ? tare.grams : wrong('TARE', 'a weight such as 820 g');
  const startWaterFraction = water('START_WATER');
  const certificateWaterFraction = water('CERTIFICATE_WATER');
  const certificateMaxWaterFraction = water('CERTIFICATE_MAX_WATER');
  const backingText = cellText(at('BACKING'));
  const backing = backingText === '' ? null : backingMeant(backingText);
  if (backingText !== '' && backing === null && isPlates) wrong('BACKING', 'glass, aluminium or plastic', 'unknown');
  const layerThicknessMm = isPlates ? length('LAYER_THICKNESS') : null;
  if (layerThicknessMm !== null && layerThicknessMm > 5) wrong('LAYER_THICKNESS', 'at most 5 mm');
  const size = isPlates ? told('PLATE_SIZE', (cell) => plateSizeIn(cell, facts.mark)) : null;
  const note = cellText(at('NOTE'));
  if (note.length > 2000) wrong('NOTE', 'at most 2000 signs');

  if (problems.length > 0 || open) return { problems, open };
  return {
    row: {
      line,
      sorbent: sorbent ?? '',
      supplier,
      lotNumber: lotNumber ?? '',
      kind,
      count,
      grams: isPlates ? null : grams,
      plates: isPlates ? plates : null,
      vessel,
      innerDiameterMm: isPlates ? null : innerDiameterMm,
      heightMm: isPlates ? null : heightMm,
      mouthDiameterMm: isPlates ? null : mouthDiameterMm,
      tareGrams,
      room: room ?? '',
      receivedAt,
      openedAt,
      retestOn,
      closure,
      startWaterFraction,
      certificateWaterFraction,
      certificateMaxWaterFraction,
      backing: isPlates ? backing : null,
      layerThicknessMm,
      plateWidthMm: size?.plateWidthMm ?? null,
      plateHeightMm: size?.plateHeightMm ?? null,
      oldCode,
      note: note || null,
    },
  };
}
