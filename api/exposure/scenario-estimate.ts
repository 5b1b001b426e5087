// A scenario in the bench's units becomes a history in the estimator's, and its answers come back.
import { blockSeconds, roomAir } from '../science/climate.ts';
import { evenDay, heldBlocks, type Reading } from '../science/blocks.ts';
import { foldExposure } from '../science/exposure.ts';
import type { Action, BedSpec, FoldInput, Geometry, SorbentNumbers, Start } from '../science/history.ts';
import { usualThresholds } from '../science/judge.ts';
import { layerDensityKgPerM3, sorbentClass, sorbentNumbers } from '../science/properties.ts';
import { prior } from '../science/uncertainty.ts';
import { BadInput } from '../bad-input.ts';
import type { Scenario } from './scenario.ts';

const room = 'room';
/** A scoop implies a lid off for about five minutes. */
const scoopSeconds = 300;
/** One sigma of a weighed or dried water fraction, kg/kg: loss on drying of 1 to 2 g on a bench balance (common practice). */
const weighingSd = 0.0015;

/** What the command prints. Water fractions are kg per kg of dry sorbent. */
export function estimate(scenario: Scenario, readings: readonly Reading[]): unknown {
  const input = inputOf(scenario, readings);
  checkGrams(scenario, input.start.dryKg);
  const report = scenario.report.map((asOfS) => ({ asOfS, ...foldExposure({ ...input, asOfS }) }));
  const last = report.reduce((latest, one) => (one.asOfS > latest.asOfS ? one : latest));
  return {
    exposure: report.map(({ asOfS, answer }) => ({
      at: new Date(asOfS * 1000).toISOString().replace('.000Z', 'Z'),
      meanWaterFraction: answer.meanWaterFraction,
      topWaterFraction: answer.topWaterFraction,
      scoopWaterFraction: answer.scoopWaterFraction,
      low: answer.low,
      high: answer.high,
      scoopLow: answer.scoopLow,
      scoopHigh: answer.scoopHigh,
      chancePastLimit: answer.chancePastLimit,
      hoursToLimit: answer.hoursToLimit,
      state: answer.state,
      reason: answer.reason,
    })),
    waterGainedGrams: 1000 * last.waterGainedKg,
    steps: last.steps,
  };
}

function inputOf(scenario: Scenario, readings: readonly Reading[]): Omit<FoldInput, 'asOfS'> {
  const { container, start, report } = scenario;
  const sorbent = sorbentOf(scenario);
  const geometry = geometryOf(scenario);
  const upper = scenario.limitWaterFraction === undefined ? classLimit(scenario) : scenario.limitWaterFraction;
  const end = Math.max(start.at, ...report);
  const last = readings.at(-1);
  if (!last) throw new BadInput('missing climate, expected at least one reading');
  const spec: BedSpec = {
    key: 'container',
    sorbent,
    geometry,
    scoopKg: scenario.scoopGrams / 1000,
    topM: scenario.topMm / 1000,
    usualClosure: container.closure === 'open' ? 'tight' : container.closure,
    filmMPerS: scenario.filmMmPerS / 1000,
    pressurePa: scenario.pressurePa,
  };
  const water: Start['water'] =
    start.waterFraction === null
      ? { kind: 'unknown', assumedWaterFraction: 0.03 }
      : { kind: 'known', waterFraction: start.waterFraction, sdLn: prior.start };
  return {
    spec,
    checkpoint: null,
    actions: scenario.events.map(actionOf).sort((a, b) => a.atS - b.atS),
    factors: [],
    start: {
      atS: start.at,
      room,
      lid: container.closure,
      habit: null,
      scooping: 'top',
      dryKg: dryKgOf(scenario, sorbent, geometry),
      plates: 1,
      water,
    },
    airs: new Map([
      [room, roomAir(heldBlocks(readings, start.at, end + blockSeconds), evenDay(last.temperatureC, last.humidity))],
    ]),
    target: { upper, lower: scenario.lowestWaterFraction ?? null, policy: 'dry' },
    thresholds: usualThresholds,
  };
}

function sorbentOf({ sorbent, container }: Scenario): SorbentNumbers {
  const layer = container.kind === 'plate';
  if (typeof sorbent !== 'string') {
    // Of a lab's own numbers nothing else is said: as sure as the silica of the table.
    const doubt = {
      below: Math.log(1.3),
      above: sorbent.isotherm.poreCapacity > 0 ? Math.LN2 : Math.log(1.3),
      from: 0.6,
      to: 0.7,
    };
    return {
      ...sorbent,
      bulkDensityKgPerM3: layer ? layerDensityKgPerM3 : sorbent.bulkDensityKgPerM3,
      doubt,
      grades: null,
    };
  }
  const one = sorbentClass(sorbent);
  const numbers = one && sorbentNumbers(one, layer);
  if (!numbers) throw new BadInput(`unknown sorbent: ${sorbent}, expected a class whose isotherm is known`);
  return numbers;
}

const classLimit = ({ sorbent }: Scenario): number | null =>
  (typeof sorbent === 'string' && sorbentClass(sorbent)?.upperWaterFraction) || null;

const roundM2 = (diameterMm: number): number => Math.PI * (diameterMm / 2000) ** 2;

function geometryOf({ container, volumeL }: Scenario): Geometry {
  const litres = container.volumeL ?? volumeL;
  if (container.kind === 'plate') {
    const plateAreaM2 = container.areaCm2 / 1e4;
    // A plate shut in nothing said lies in a box 20 mm high.
    return {
      kind: 'plate',
      layerM: container.layerMm / 1000,
      plateAreaM2,
      volumeM3: litres === undefined ? plateAreaM2 * 0.02 : litres / 1000,
    };
  }
  const areaM2 = roundM2(container.bedDiameterMm);
  const heightM = (container.bedDepthMm + container.headspaceMm) / 1000;
  return {
    kind: 'bed',
    areaM2,
    mouthAreaM2: roundM2(container.mouthDiameterMm ?? container.bedDiameterMm),
    heightM,
    volumeM3: litres === undefined ? areaM2 * heightM : litres / 1000,
  };
}

function dryKgOf({ container }: Scenario, { bulkDensityKgPerM3 }: SorbentNumbers, geometry: Geometry): number {
  if (geometry.kind === 'plate') return geometry.plateAreaM2 * geometry.layerM * bulkDensityKgPerM3;
  const depthMm = container.kind === 'plate' ? 0 : container.bedDepthMm;
  return (geometry.areaM2 * depthMm * bulkDensityKgPerM3) / 1000;
}

function actionOf(event: Scenario['events'][number], i: number): Action {
  const atS = event.at;
  switch (event.type) {
    case 'opened':
      return { atS, kind: 'opened' };
    case 'mixed':
      return { atS, kind: 'mixed' };
    case 'closed':
      return { atS, kind: 'closed', closure: event.closure };
    case 'taken':
      return { atS, kind: 'taken', id: String(i), dryKg: event.grams / 1000, openSeconds: scoopSeconds };
    case 'dried':
      return { atS, kind: 'dried', waterFraction: event.waterFraction, sd: weighingSd };
    case 'weighed':
      return { atS, kind: 'observed', of: event.of, waterFraction: event.waterFraction, sd: weighingSd };
  }
}

function checkGrams({ events }: Scenario, dryKg: number): void {
  let left = dryKg * 1000;
  for (const [i, event] of [...events.entries()].sort(([, a], [, b]) => a.at - b.at)) {
    if (event.type !== 'taken') continue;
    if (event.grams > left + 1e-9)
      throw new BadInput(
        `invalid events[${i}].grams: ${event.grams}, expected at most the ${Math.floor(left * 10) / 10} g that are there`,
      );
    left -= event.grams;
  }
}
