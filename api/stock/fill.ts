// Sorbent or plates go from one container into another: poured, taken, packed, emptied back.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Container } from '../database/generated/sqlite/client.ts';
import { invalid, missing } from '../errors.ts';
import { write, type Work } from '../work.ts';
import { containerOf, roomOf } from './find.ts';
import { happened } from './happen.ts';
import { bulkDensityName } from './properties.ts';
import { columnShape, hasShape, madeContainer, plateShape, shapeSaid, vesselShape } from './made.ts';
import { packingSaid } from './outgoing.ts';
import type { Recorded } from './record.ts';
import { fits } from './rules.ts';
import { eventInput, said } from './said.ts';

const opening = { leftOpen: z.boolean().nullish(), openMinutes: said.minutes.nullish() };
const target = { room: said.name.nullish(), closure: said.closure.nullish() };

export const takePortionSaid = z.object({
  ...eventInput,
  ...opening,
  ...target,
  ...shapeSaid,
  grams: said.grams,
  basis: said.basis,
  scooping: said.scooping.nullish(),
});

export const takePlatesSaid = z.object({
  ...eventInput,
  ...opening,
  ...target,
  plates: said.plates,
  usualClosure: shapeSaid.usualClosure,
});

export const packColumnSaid = z.object({
  ...eventInput,
  ...opening,
  ...target,
  grams: said.grams,
  basis: said.basis,
  innerDiameterMm: said.mm,
  bedLengthMm: said.mm,
  tareGrams: said.gramsOrNone,
  ...packingSaid.shape,
});

export const combineSaid = z.object({
  ...eventInput,
  ...opening,
  into: said.label,
  grams: said.grams,
  basis: said.basis,
});

type SaidTarget = { [K in keyof typeof target]?: z.output<(typeof target)[K]> };

/** Where what is filled stands, and how it is shut; refuses a source of the wrong kind before anything is made. */
async function filling(work: Work, source: Container, said: SaidTarget, type: Parameters<typeof fits>[0]) {
  const unfit = fits(type, source.kind);
  if (unfit) throw invalid('input.label', source.label, `${unfit.why}; ${unfit.expected}`);
  const room = said.room ? await roomOf(work, said.room) : null;
  return { roomId: room?.id ?? source.roomId, closure: said.closure ?? ('OPEN' as const) };
}

/** Pours a portion into a vessel of its own, within a larger act; without a vessel nothing is kept of it. */
export async function portionPoured(work: Work, input: z.output<typeof takePortionSaid>): Promise<Recorded> {
  const source = await containerOf(work, input.label);
  const at = input.at ?? work.now;
  const { grams, basis, leftOpen, openMinutes, scooping, note, tareGrams } = input;
  const stands = await filling(work, source, input, 'PORTION_TAKEN');
  const said = { grams, basis, leftOpen, openMinutes, scooping, ...stands };
  const happens = { type: 'PORTION_TAKEN', container: source, at, note, said } as const;
  if (!hasShape(input)) return happened(work, happens);
  const shape = await vesselShape(work, input, 'input');
  const usualClosure = input.usualClosure ?? 'WELL_CLOSED';
  const fresh = { lotId: source.lotId, takenFromId: source.id, shape, tareGrams, usualClosure, at };
  const other = await madeContainer(work, { kind: 'PORTION', ...fresh, ...stands });
  return happened(work, { ...happens, other });
}

/** Pours a portion into a vessel of its own; without a vessel it is used at once. */
export const portionTaken = (context: Context, input: z.output<typeof takePortionSaid>): Promise<Recorded> =>
  write(context, 'takePortion', input, (work) => portionPoured(work, input));

/** Takes plates into a box of their own, of the same make, within a larger act. */
export async function platesMoved(work: Work, input: z.output<typeof takePlatesSaid>): Promise<Recorded> {
  const source = await containerOf(work, input.label);
  const at = input.at ?? work.now;
  const { plates, leftOpen, openMinutes, note } = input;
  const stands = await filling(work, source, input, 'PLATES_TAKEN');
  const usualClosure = input.usualClosure ?? source.usualClosure;
  const fresh = {
    lotId: source.lotId,
    takenFromId: source.id,
    shape: plateShape(source),
    tareGrams: null,
    usualClosure,
    at,
  };
  const made = await madeContainer(work, { kind: 'PLATE_BOX', ...fresh, ...stands });
  const said = { plates, leftOpen, openMinutes, ...stands };
  return happened(work, { type: 'PLATES_TAKEN', container: source, other: made, at, note, said });
}

/** Takes plates into a box of their own. */
export const platesTaken = (context: Context, input: z.output<typeof takePlatesSaid>): Promise<Recorded> =>
  write(context, 'takePlates', input, (work) => platesMoved(work, input));

/** Dry grams that fill a bed of this volume at the sorbent's bulk density. */
async function bedDryGrams(work: Work, source: Container, volumeMl: number): Promise<number> {
  const lot = await work.tx.lot.findUniqueOrThrow({ where: { id: source.lotId } });
  const where = { sorbentId_name: { sorbentId: lot.sorbentId, name: bulkDensityName } };
  const density = (await work.tx.sorbentProperty.findUnique({ where }))?.value;
  if (!density) throw missing('input.grams', 'the grams packed: the bulk density of this sorbent is not known');
  // kg/m³ is g/L.
  return (volumeMl / 1000) * density;
}

/** Packs a column within a larger act: so many grams, or what its bed holds at the bulk density. */
export async function columnFilled(work: Work, input: z.output<typeof packColumnSaid>): Promise<Recorded> {
  const source = await containerOf(work, input.label);
  const at = input.at ?? work.now;
  const { leftOpen, openMinutes, note, tareGrams } = input;
  const stands = await filling(work, source, input, 'COLUMN_PACKED');
  const shape = columnShape(input.innerDiameterMm, input.bedLengthMm);
  const amount =
    input.grams === null
      ? { grams: await bedDryGrams(work, source, shape.volumeMl ?? 0), basis: 'DRY' as const }
      : { grams: input.grams, basis: input.basis };
  const fresh = {
    lotId: source.lotId,
    takenFromId: source.id,
    shape,
    tareGrams,
    usualClosure: 'WELL_CLOSED' as const,
    at,
  };
  const made = await madeContainer(work, { kind: 'COLUMN', ...fresh, ...stands });
  const { method, tapping, flowMlPerMin, pressureBar, packer, dyeTest } = input;
  const packing = { method, tapping, flowMlPerMin, pressureBar, packer, dyeTest };
  const said = { ...amount, leftOpen, openMinutes, ...stands, packing };
  return happened(work, { type: 'COLUMN_PACKED', container: source, other: made, at, note, said });
}

/** Packs a column. */
export const columnPacked = (context: Context, input: z.output<typeof packColumnSaid>): Promise<Recorded> =>
  write(context, 'packColumn', input, (work) => columnFilled(work, input));

/** Empties one container into another of the same lot: trays back into one jar. */
export function combined(context: Context, input: z.output<typeof combineSaid>): Promise<Recorded> {
  return write(context, 'combineContainers', input, async (work) => {
    const container = await containerOf(work, input.label);
    const other = await containerOf(work, input.into, 'input.into');
    if (other.id === container.id) throw invalid('input.into', other.label, 'another container');
    if (other.lotId !== container.lotId)
      throw invalid('input.into', other.label, 'a container of the same lot: lots are not mixed');
    const unfit = fits('COMBINED', other.kind);
    if (unfit) throw invalid('input.into', other.label, `${unfit.why}; ${unfit.expected}`);
    const { grams, basis, leftOpen, openMinutes, note } = input;
    const said = { grams, basis, leftOpen, openMinutes };
    return happened(work, { type: 'COMBINED', container, other, at: input.at ?? work.now, note, said });
  });
}
