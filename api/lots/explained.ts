// Is it the lot, the plate, the person or the air? What of a retention goes with the water at use, the humidity, the
// activation, the lot and the user.
import type { Context } from '../context.ts';
import type { RetentionRun, Sorbent } from '../database/generated/sqlite/client.ts';
import { explainedBy, type Explained, type Explanation } from '../science/lots/explained.ts';
import { fewestForShares } from '../science/lots/spread.ts';
import { sorbentOf } from '../stock/service.ts';
import { valuesOf, type Point } from './charted.ts';
import { runRead } from './compared.ts';
import type { CompoundSpread } from './rules.ts';
import type { Retention } from './said.ts';
import { spotsOfCompound } from './spots.ts';
import { spreadApart } from './spread-apart.ts';
import { listed } from './words.ts';

export type Named = 'water' | 'humidity' | 'activation' | 'lot' | 'user';

export interface Answered {
  readonly sorbent: Sorbent;
  readonly compound: string;
  readonly retention: Retention;
  readonly points: readonly Point[];
  /** Plates with all that is asked about. */
  readonly plates: number;
  readonly each: readonly (Explained & { readonly sentence: string })[];
  readonly shared: number | null;
  readonly unexplained: number | null;
  /** What could not be asked about, and why. */
  readonly leftOut: readonly string[];
  readonly sentence: string;
  readonly spread: CompoundSpread | null;
}

const wordOf: Record<Named, string> = {
  water: 'the water at use',
  humidity: 'the humidity',
  activation: 'the activation',
  lot: 'the lot',
  user: 'the person',
};

/** The newest plates are asked; older ones are another story. */
const mostPlates = 300;

/** An explanation noted on fewer plates than this share is left out, so that the others keep their plates. */
const knownShare = 0.7;

const valueOf: Record<Named, (run: RetentionRun) => number | string | null> = {
  water: ({ waterFraction }) => waterFraction,
  humidity: ({ humidityPercent }) => humidityPercent,
  // A run without a regime was of plates that were not prepared.
  activation: ({ regime }) => regime ?? 'none',
  lot: ({ lotId }) => lotId,
  user: ({ ranById }) => ranById,
};

/** The plates that tell all that can be asked about, and what is left out. */
function complete(rows: readonly Point[]): { names: Named[]; kept: Point[]; leftOut: string[] } {
  const leftOut: string[] = [];
  const names = (Object.keys(valueOf) as Named[]).filter((name) => {
    const known = rows.filter(({ run }) => valueOf[name](run) !== null);
    const isKnown = known.length >= knownShare * rows.length && known.length > 0;
    if (!isKnown) leftOut.push(`${wordOf[name]}: noted on ${known.length} of ${rows.length} plates`);
    const levels = new Set(known.map(({ run }) => valueOf[name](run)));
    if (isKnown && levels.size < 2) leftOut.push(`${wordOf[name]}: the same on all plates`);
    return isKnown && levels.size > 1;
  });
  const kept = rows.filter(({ run }) => names.every((name) => valueOf[name](run) !== null));
  const missing = rows.length - kept.length;
  if (missing > 0) leftOut.push(`${missing} of ${rows.length} plates, on which something of this was not noted`);
  return { names, kept, leftOut };
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;

function sentenceOf({ name, told, share, togetherWith }: Explained): string {
  const what = wordOf[name as Named];
  const range = `${percent(share.low)} to ${percent(share.high)} of the spread`;
  const subject = what.charAt(0).toUpperCase() + what.slice(1);
  if (told === 'seen') return `${subject} is seen: ${percent(share.value)} (${range}).`;
  if (told === 'little') return `${subject} explains little: at most ${percent(share.high)}.`;
  const others = togetherWith.map((other) => wordOf[other as Named]);
  const beside = others.length > 0 ? `; in these data it went together with ${listed(others)}` : '';
  if (told === 'cannot tell') return `${subject}: the data cannot tell (${range})${beside}.`;
  return `${subject}: too few plates to tell.`;
}

function leadOf(plates: number, each: readonly Explained[], isKnown: boolean): string {
  if (plates < fewestForShares)
    return `${plates} ${plates === 1 ? 'plate' : 'plates'} so far: from about ${fewestForShares} on it can be said what the values go with.`;
  if (!isKnown) return 'These plates all ran the same, or there are more explanations than plates can part.';
  const seen = each.filter(({ told }) => told === 'seen').map(({ name }) => wordOf[name as Named]);
  const open = each.filter(({ told }) => told === 'cannot tell').map(({ name }) => wordOf[name as Named]);
  if (seen.length > 0) {
    const rest = open.length > 0 ? ` Of ${listed(open)} the data cannot tell.` : '';
    return `It is ${listed(seen)}.${rest}`;
  }
  return open.length > 0
    ? `The data cannot tell: it may be ${listed(open)}.`
    : 'None of these: the plates differ among themselves.';
}

export async function explained(
  context: Context,
  asked: { sorbent: string; compound: string; retention?: Retention | null | undefined },
): Promise<Answered> {
  const { database, lab } = context;
  const sorbent = await sorbentOf({ tx: database.read, labId: lab.id }, asked.sorbent, 'sorbent');
  const retention = asked.retention ?? 'RF';
  const of = { sorbentId: sorbent.id, compound: asked.compound, retention };
  const rows = await valuesOf(context, of, mostPlates);
  const { names, kept, leftOut } = complete(rows);
  const explanations: Explanation[] = names.map((name) => ({
    name,
    values: kept.map(({ run }) => valueOf[name](run)) as number[] | string[],
  }));
  const values = kept.map(({ value }) => value);
  const enough = values.length >= fewestForShares;
  const found = enough ? explainedBy(values, explanations) : null;
  const runs = rows.map(({ run }) => {
    const read = runRead(run, null, lab.timeZone);
    return { ...read, spots: spotsOfCompound(read.spots, asked.compound) };
  });
  const spread = enough ? (await spreadApart(runs))[0] : null;
  return {
    ...{ sorbent, compound: asked.compound, retention, points: rows, plates: kept.length },
    each: (found?.each ?? []).map((one) => ({ ...one, sentence: sentenceOf(one) })),
    shared: found?.shared ?? null,
    unexplained: found?.unexplained ?? null,
    leftOut: rows.length === 0 ? [] : leftOut,
    sentence: leadOf(kept.length, found?.each ?? [], found !== null),
    spread: spread ?? null,
  };
}
