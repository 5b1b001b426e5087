// What each type of event says beyond its columns. Units stand in the names; water fractions are
// kg water per kg dry sorbent, grams are as received (what the balance showed) unless called dry.
import { z } from 'zod';
import { inOvenDetail } from './in-oven.ts';

export const closures = ['OPEN', 'LOOSELY_COVERED', 'WELL_CLOSED', 'TIGHT', 'SEALED'] as const;
export const scoopings = ['TOP', 'SIDE', 'ROLLED'] as const;
const closure = z.enum(closures);
const scooping = z.enum(scoopings);
const fraction = z.number().min(0).max(10);
const amount = z.number().min(0);
const words = z.string().nullable();

/** Grams as they were said, with the water by which they were booked as dry. */
const weighedOut = {
  /** Null where plates were counted instead. */
  grams: amount.nullable(),
  /** As received is what the balance showed. */
  basis: z.enum(['DRY', 'AS_RECEIVED']),
  /** The water used for booking; null where none was needed. */
  bookedWaterFraction: fraction.nullable(),
  /** That water is an assumption, not an estimate or a measurement. */
  waterAssumed: z.boolean(),
};

/** The lid is off for this long, and the source stands open afterwards or not. */
const opening = { openMinutes: z.number().min(0), leftOpen: z.boolean() };

/** How the container that was filled stands from then on. */
const into = { into: z.object({ roomId: z.string(), closure }) };

/** Plates: where they stand from then on, taken out of the tank, the oven or the jar; as before when not said. */
const after = { after: z.object({ roomId: z.string(), closure }).optional() };

/** Plates: said to be dry of solvent. A timeline in which they were not cannot be true; older events do not say. */
const noSolvent = { noSolvent: z.literal(true).optional() };

/** How a column was packed, as somebody wrote it down. */
export const packing = z.object({
  method: z.enum(['DRY', 'SLURRY']).nullable(),
  tapping: words,
  flowMlPerMin: amount.nullable(),
  pressureBar: amount.nullable(),
  packer: words,
  dyeTest: words,
  /** Water of what was packed, as estimated then, and whether that was only assumed. */
  waterFraction: fraction.nullable(),
  waterAssumed: z.boolean(),
});

export const habit = z.object({ timesADay: z.number().min(0), minutes: z.number().min(0) });
export type Habit = z.infer<typeof habit>;

export const details = {
  CAME_IN: z.object({
    roomId: z.string(),
    closure,
    /** Null for plates. */
    grams: amount.nullable(),
    basis: z.enum(['DRY', 'AS_RECEIVED']),
    /** Null: not known, and unknown until weighed. */
    startWaterFraction: fraction.nullable(),
    /** Where the starting water comes from. */
    startWaterFrom: z.enum(['GIVEN', 'CERTIFICATE', 'NOWHERE']),
    bookedWaterFraction: fraction,
    waterAssumed: z.boolean(),
  }),
  OPENED: z.object({}),
  CLOSED: z.object({ closure }),
  MOVED: z.object({ roomId: z.string() }),
  PORTION_TAKEN: z.object({ ...weighedOut, ...opening, ...into, scooping: scooping.nullable() }),
  PLATES_TAKEN: z.object({ ...opening, ...into }),
  COLUMN_PACKED: z.object({ ...weighedOut, ...opening, ...into, packing: packing.optional() }),
  MIXED: z.object({}),
  DRIED: z.object({
    temperatureC: z.number().nullable(),
    minutes: amount.nullable(),
    vacuum: z.boolean(),
    /** Measured afterwards; null leaves it to the recipe. */
    waterFraction: fraction.nullable(),
    /** Which oven, by name or id. */
    oven: words.optional(),
    ...inOvenDetail,
    ...after,
    ...noSolvent,
  }),
  EQUILIBRATED: z.object({
    humidityPercent: z.number().min(0).max(100),
    temperatureC: z.number(),
    /** Over which saturated salt, or in which room's air. */
    over: words.optional(),
    hours: amount.nullable().optional(),
    ...after,
    ...noSolvent,
  }),
  WEIGHED: z.object({
    method: z.enum(['LOSS_ON_DRYING', 'KARL_FISCHER', 'GROSS']),
    /** Of the whole with its vessel. */
    gross: z.object({ grossGrams: amount, tareGrams: amount }).nullable().optional(),
    temperatureC: z.number().nullable(),
    of: z.enum(['WHOLE', 'SCOOP']),
    /** As it was said, on the basis it was said. */
    saidWaterFraction: fraction,
    basis: z.enum(['DRY', 'AS_RECEIVED']),
    /** The same on dry basis. */
    waterFraction: fraction,
  }),
  COUNTED: z.object({
    of: z.enum(['GRAMS', 'PLATES', 'GROSS']),
    ...weighedOut,
    grossGrams: amount.nullable(),
    tareGrams: amount.nullable(),
    /** What is there. */
    dryGrams: amount,
    plates: z.number().int().min(0).nullable(),
    /** What the book said when the count was written down. */
    bookDryGrams: amount,
    bookPlates: z.number().int().min(0).nullable(),
  }),
  TOUCHED_SOLVENT: z.object({ what: words }),
  HABIT_SET: z.object({ habit: habit.nullable().optional(), scooping: scooping.optional() }),
  COMBINED: z.object({ ...weighedOut, ...opening }),
  LOST: z.object({ ...weighedOut, why: words }),
  PRE_WASHED: z.object({
    solvent: words,
    direction: z.enum(['ALONG_HEIGHT', 'ALONG_WIDTH']).nullable().optional(),
    fullLength: z.boolean().nullable().optional(),
    /** What became of the dirty edge at the solvent front. */
    frontEdge: z.enum(['CUT', 'MARKED', 'LEFT']).nullable().optional(),
    isMobilePhase: z.boolean().optional(),
    tankLoads: z.number().int().min(0).nullable().optional(),
    mlPerLoad: amount.nullable().optional(),
    /** How long the solvent ran; then they were set in the hood. */
    tankMinutes: amount.optional(),
    ...after,
  }),
  SOLVENT_GONE: z.object({
    /** Not before so many hours in the hood: the lab's least when it was said. */
    leastHours: amount.optional(),
    seenBy: words.optional(),
  }),
  CONDITIONED: z.object({
    mobilePhase: words,
    columnVolumes: amount.nullable(),
    minutes: amount.nullable().optional(),
    flowMlPerMin: amount.nullable().optional(),
  }),
  INTERRUPTED: z.object({ why: words }),
  SPENT_ON_CHECK: z.object({ ...weighedOut, what: words }),
  USED_UP: z.object({}),
  DISCARDED: z.object({ ...weighedOut, all: z.boolean(), why: words }),
  NOT_FOUND: z.object({ why: words }),
  /** `standsId`: the version that counts again; null when the thing did not happen at all. */
  CORRECTED: z.object({ standsId: z.string().nullable(), why: words }),
} as const;

export type EventType = keyof typeof details;
export const eventTypes = Object.keys(details) as EventType[];
export type DetailOf<T extends EventType> = z.infer<(typeof details)[T]>;

/** A type with what it says. */
export type Said = { [T in EventType]: { type: T; detail: DetailOf<T> } }[EventType];

/** Reads what is stored; throws when it is not what the type says. */
export function saidOf(type: EventType, detail: unknown): Said {
  return { type, detail: details[type].parse(detail) } as Said;
}
