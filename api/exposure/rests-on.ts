// What an estimate rests on: each number behind it, where it comes from, how sure it is. What is guessed is said to be.
import type { Context } from '../context.ts';
import type { Confidence, Container, Exposure, NumberOrigin } from '../database/generated/sqlite/client.ts';
import { loosePerRim, tightPerLitre, wellClosedPerLitre } from '../science/closures.ts';
import { sorbentClass } from '../science/properties.ts';
import { prior } from '../science/uncertainty.ts';
import { learnedGrounds } from './rests-on-learned.ts';
import { estimateSettingsOf } from './settings.ts';
import { targetOf } from './target.ts';

export interface Ground {
  name: string;
  value: number | null;
  unit: string;
  origin: NumberOrigin;
  confidence: Confidence;
  source: string;
}

const ground = (
  name: string,
  value: number | null,
  unit: string,
  origin: NumberOrigin,
  confidence: Confidence,
  source: string,
): Ground => ({ name, value, unit, origin, confidence, source });

const invented = (name: string, value: number, unit: string, source = 'invented default; the lab can set it'): Ground =>
  ground(name, value, unit, 'DEFAULT', 'GUESS', source);

function closureGround(closure: Container['closure']): Ground | null {
  const usp = 'USP <671> classes, from memory; converted to a conductance';
  if (closure === 'TIGHT') {
    return ground('closureConductance', tightPerLitre, 'm³/s per litre', 'TABLE', 'FROM_MEMORY', usp);
  }
  if (closure === 'WELL_CLOSED') {
    return ground('closureConductance', wellClosedPerLitre, 'm³/s per litre', 'TABLE', 'FROM_MEMORY', usp);
  }
  if (closure === 'LOOSELY_COVERED') {
    const source = 'a gap of 0.1 to 0.5 mm under a laid lid; geometric mean';
    return ground('closureConductance', loosePerRim, 'm³/s per 20 cm of rim', 'TABLE', 'DERIVED', source);
  }
  return null;
}

async function bandGrounds(context: Context, exposure: Exposure, container: Container): Promise<Ground[]> {
  const lot = await context.load.lot.load(container.lotId);
  const sorbent = lot && (await context.load.sorbent.load(lot.sorbentId));
  if (!lot || !sorbent) return [];
  const of = lot.targetPolicy ? lot : sorbent;
  const { from } = targetOf({
    sorbentClass: sorbent.sorbentClass,
    targetPolicy: lot.targetPolicy ?? sorbent.targetPolicy,
    targetUpperWaterFraction: of.targetUpperWaterFraction,
    targetLowerWaterFraction: of.targetLowerWaterFraction,
    targetBandWaterFraction: of.targetBandWaterFraction,
    certificateWaterFraction: lot.certificateWaterFraction,
  });
  const told = {
    set: ['MEASURED', 'CONFIRMED', lot.targetPolicy ? 'set for this lot' : 'set for this sorbent'],
    'class default': ['DEFAULT', 'GUESS', 'invented default of its class; set per sorbent or lot'],
    certificate: ['CERTIFICATE', 'CONFIRMED', 'water on the certificate, half a percent either side (invented band)'],
    none: ['UNKNOWN', 'GUESS', 'no band set'],
  } as const;
  const [origin, confidence, source] = told[from];
  const ends = [
    ['upperEnd', exposure.upperWaterFraction],
    ['lowerEnd', exposure.lowerWaterFraction],
  ] as const;
  return ends.flatMap(([name, value]) =>
    value === null ? [] : [ground(name, value, 'kg/kg', origin, confidence, source)],
  );
}

/** The water it began with; a certificate's, a given one, or none. */
async function startGround(context: Context, container: Container): Promise<Ground> {
  const first = await context.database.read.event.findFirst({
    where: { containerId: container.id, type: 'CAME_IN', stands: true },
    select: { detail: true },
  });
  if (!first) {
    const source = 'the water of what it was filled with, at that moment';
    return ground('startingWater', null, 'kg/kg', 'MEASURED', 'DERIVED', source);
  }
  const { startWaterFraction, startWaterFrom, bookedWaterFraction } = first.detail as {
    startWaterFraction: number | null;
    startWaterFrom: string;
    bookedWaterFraction: number;
  };
  if (startWaterFraction === null) {
    const source = 'not known; this is what its grams were booked with. Weigh a scoop';
    return ground('startingWater', bookedWaterFraction, 'kg/kg', 'UNKNOWN', 'GUESS', source);
  }
  return startWaterFrom === 'CERTIFICATE'
    ? ground('startingWater', startWaterFraction, 'kg/kg', 'CERTIFICATE', 'CONFIRMED', 'certificate of analysis')
    : ground('startingWater', startWaterFraction, 'kg/kg', 'MEASURED', 'CONFIRMED', 'given when it came in');
}

async function sizeGrounds(context: Context, container: Container): Promise<Ground[]> {
  const vessel = container.vesselId ? await context.load.vessel.load(container.vesselId) : null;
  const source = vessel ? `${vessel.name}: ${vessel.source}` : 'its own size, as given';
  const remembered = vessel !== null && /memory/i.test(vessel.source);
  const sizes = [
    ['innerDiameter', container.innerDiameterMm],
    ['height', container.heightMm],
    ['mouthDiameter', container.mouthDiameterMm],
    ['bedLength', container.bedLengthMm],
    ['layerThickness', container.layerThicknessMm],
  ] as const;
  return sizes.flatMap(([name, value]) =>
    value === null
      ? []
      : [ground(name, value, 'mm', vessel ? 'TABLE' : 'MEASURED', remembered ? 'FROM_MEMORY' : 'CONFIRMED', source)],
  );
}

function airGround({ uncertainAirFraction }: Exposure): Ground {
  const source = 'share of the last 30 days that was filled in by the typical day, or taken for granted';
  const isMostly = uncertainAirFraction === null || uncertainAirFraction > 0.5;
  return ground(
    'filledInAir',
    uncertainAirFraction,
    '1',
    isMostly ? 'DEFAULT' : 'MEASURED',
    isMostly ? 'GUESS' : 'CONFIRMED',
    uncertainAirFraction === null ? 'no air record' : source,
  );
}

/** Every number behind a container's estimate. */
export async function restsOn(context: Context, exposure: Exposure): Promise<Ground[]> {
  const container = await context.load.container.load(exposure.containerId);
  const lot = container && (await context.load.lot.load(container.lotId));
  if (!container || !lot) return [];
  const sorbent = await context.load.sorbent.load(lot.sorbentId);
  const properties = await context.load.properties.load(lot.sorbentId);
  const settings = estimateSettingsOf(context.lab.settings, context.lab.timeZone);
  const doubt = sorbentClass(sorbent?.sorbentClass ?? '')?.doubt;
  const closure = closureGround(container.closure);
  const still = 'still room air over an open mouth, 1.5 to 5 mm/s; flat plate and free convection';
  return [
    ...(await bandGrounds(context, exposure, container)),
    await startGround(context, container),
    airGround(exposure),
    ...(await sizeGrounds(context, container)),
    ...(closure ? [closure] : []),
    ...(await learnedGrounds(context, container)),
    ground('openMouthTransfer', 1000 * settings.filmMPerS, 'mm/s', 'TABLE', 'DERIVED', still),
    ...properties.map(({ name, value, unit, origin, confidence, source }) =>
      ground(name, value, unit, origin, confidence, source),
    ),
    ...(doubt
      ? [
          ground(
            'capacityDoubt',
            doubt.below,
            'ln, 1 σ',
            'TABLE',
            'DERIVED',
            'spread of published isotherms of its class',
          ),
        ]
      : []),
    ground('humidityDoubt', 100 * prior.bias, '% RH, 1 σ', 'TABLE', 'FROM_MEMORY', 'what makers of loggers state'),
    invented('scoop', 1000 * settings.scoopKg, 'g'),
    invented('redryFrom', settings.thresholds.redryChance, 'chance'),
    invented('useSoonFrom', settings.thresholds.useSoonChance, 'chance'),
    invented('useSoonWithin', settings.thresholds.useSoonHours, 'h'),
  ];
}
