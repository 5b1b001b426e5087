// The band a container's water should lie in: its lot's, else its sorbent's, else its class's default.
import type { FleetLot } from '../database/fleet.ts';
import { referenceActivity } from '../science/air.ts';
import type { Target } from '../science/history.ts';
import { waterAtActivity, condensingActivity } from '../science/isotherm.ts';
import type { DryingIsotherm } from '../science/tray/isotherm.ts';
import { sorbentClass } from '../science/properties.ts';

/** "As received" without a band of its own: the lot's water at receipt, half a percent either side (invented default). */
const asReceivedBand = 0.005;

type Stated = Pick<
  FleetLot,
  'sorbentClass' | 'targetPolicy' | 'targetUpperWaterFraction' | 'targetLowerWaterFraction' | 'certificateWaterFraction'
> &
  Partial<Pick<FleetLot, 'targetBandWaterFraction'>>;

/** Where an end of the band comes from. */
export type BandOrigin = 'set' | 'class default' | 'certificate' | 'none';

export function targetOf(stated: Stated): Target & { from: BandOrigin } {
  const { targetUpperWaterFraction: upper, targetLowerWaterFraction: lower } = stated;
  if (stated.targetPolicy === 'DRY') {
    if (upper !== null) return { policy: 'dry', upper, lower: null, from: 'set' };
    const usual = sorbentClass(stated.sorbentClass)?.upperWaterFraction ?? null;
    return { policy: 'dry', upper: usual, lower: null, from: usual === null ? 'none' : 'class default' };
  }
  const policy = stated.targetPolicy === 'SET' ? 'set' : 'as received';
  if (upper !== null || lower !== null) return { policy, upper, lower, from: 'set' };
  const received = stated.certificateWaterFraction;
  if (policy === 'set' || received === null) return { policy, upper: null, lower: null, from: 'none' };
  const band = stated.targetBandWaterFraction ?? asReceivedBand;
  const low = received - band;
  return { policy, upper: received + band, lower: low > 0 ? low : null, from: 'certificate' };
}

/** The band of plates that were equilibrated: the water of their air, so much relative humidity (0 to 1) either side. */
export function equilibratedTarget(
  { humidity, temperatureC, band }: { humidity: number; temperatureC: number; band: number },
  isotherm: DryingIsotherm,
  capacity: number,
): Target {
  const water = (at: number) =>
    capacity *
    waterAtActivity(isotherm, Math.min(condensingActivity, referenceActivity(Math.max(0, at), temperatureC)));
  return {
    policy: 'equilibrated',
    upper: water(humidity + band),
    lower: humidity > band ? water(humidity - band) : null,
  };
}
