// What weighings taught about a container, as numbers that its estimate rests on.
import type { Context } from '../context.ts';
import type { Container } from '../database/generated/sqlite/client.ts';
import type { Taught } from '../science/calibration/taught.ts';
import { learnedOf } from './learned.ts';
import type { Ground } from './rests-on.ts';

const from = (count: number): string =>
  count === 0 ? 'learned from its class' : `learned from ${count} ${count === 1 ? 'weighing' : 'weighings'}`;

/** A factor with one sigma of it; a humidity is added and told in points. */
function learnedGround(name: string, { lnValue, lnSd, because }: Taught): Ground {
  const isHumidity = name === 'learnedHumidity';
  const value = isHumidity ? 100 * lnValue : Math.exp(lnValue);
  const sd = isHumidity ? 100 * lnSd : value * lnSd;
  const digits = isHumidity ? 1 : 2;
  return {
    name,
    value: Number(value.toPrecision(4)),
    unit: isHumidity ? '% RH, added' : 'times what was assumed',
    origin: 'MEASURED',
    confidence: 'DERIVED',
    source: `${from(because.weighings)}: ${value.toFixed(digits)} ± ${sd.toFixed(digits)} (1 σ)`,
  };
}

/** Only what weighings bear on; none while nothing was learned. */
export async function learnedGrounds(
  context: Context,
  container: Pick<Container, 'id' | 'lotId' | 'closure'>,
): Promise<Ground[]> {
  const learned = await learnedOf(context.database, context.lab.id);
  if (!learned) return [];
  const told = [
    ['learnedCapacity', `capacity:${container.lotId}`],
    ['learnedClosure', `closure:${container.closure}`],
    ['learnedContainer', `container:${container.id}`],
    ['learnedOpenMouth', 'open'],
    ['learnedBed', 'bed'],
    ['learnedHumidity', 'bias'],
  ] as const;
  return told.flatMap(([name, factor]) => {
    const row = learned.rows.get(factor);
    if (!row) return [];
    // A lot that nobody weighed has learned from its class.
    return row.because.weighings > 0 || (name === 'learnedCapacity' && row.lnSd < row.because.priorSd)
      ? [learnedGround(name, row)]
      : [];
  });
}
