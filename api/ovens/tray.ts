// What the tray model says of one load in one oven: the water it has reached after so many minutes.
import type { Oven } from '../database/generated/sqlite/client.ts';
import { forecast } from '../science/tray/forecast.ts';
import { loadOf, steelTrayJPerM2K, wettestStart } from '../science/tray/load.ts';
import {
  usualExchange,
  usualPressurePa,
  usualVapourPa,
  type Oven as TrayOven,
  type OvenKind,
} from '../science/tray/oven.ts';
import { dryingSorbent } from '../science/tray/properties.ts';
import { usualDepthMm } from './rules.ts';

export interface InOven {
  sorbentClass: string;
  isPlates: boolean;
  depthMm: number | null;
  layerMm: number | null;
  /** At the start, kg/kg dry. */
  waterFraction: number | null;
  temperatureC: number;
  oven: Pick<Oven, 'kind' | 'hasFan' | 'pressureMbar' | 'waterMbar'>;
  isVacuum: boolean;
  /** Vapour pressure of the room's air that an oven full of air draws, Pa; null where nobody knows. */
  roomVapourPa: number | null;
}

/** Water where nobody knows, kg/kg dry: as estimates take it for granted. */
const assumedWater = 0.03;
const roomC = 22;
/** A glass plate of 2 mm under its layer, J/(m² K), as a glass dish of the drying model (placeholder). */
const plateHeat = 4200;
/** A layer thinner than this the grid does not tell from it, mm. */
const thinnestMm = 0.25;

function trayOven({ oven, isVacuum, temperatureC, roomVapourPa }: InOven): TrayOven {
  const kind: OvenKind = isVacuum && oven.kind === 'VACUUM' ? 'vacuum' : oven.hasFan ? 'air with fan' : 'air';
  const pressurePa = kind === 'vacuum' && oven.pressureMbar !== null ? oven.pressureMbar * 100 : usualPressurePa[kind];
  const drawn = kind === 'vacuum' ? null : roomVapourPa;
  const vapourPa = oven.waterMbar === null ? (drawn ?? usualVapourPa[kind]) : oven.waterMbar * 100;
  return {
    kind,
    temperatureC,
    pressurePa,
    vapourPa: Math.min(vapourPa, 0.95 * pressurePa),
    warmUpS: 0,
    pump: null,
    exchange: usualExchange(kind, temperatureC, pressurePa),
  };
}

/** Mean water after so many minutes in the hot oven, kg/kg dry; null for a class of which the model knows nothing. */
export function waterAfter(of: InOven, minutes: number): number | null {
  const sorbent = dryingSorbent(of.sorbentClass);
  if (!sorbent) return null;
  const waterFraction = Math.min(of.waterFraction ?? assumedWater, 0.999 * wettestStart(sorbent.isotherm));
  const depthMm = of.isPlates ? Math.max(thinnestMm, of.layerMm ?? thinnestMm) : (of.depthMm ?? usualDepthMm);
  const load = loadOf({
    sorbent,
    depthM: depthMm / 1000,
    waterFraction,
    temperatureC: roomC,
    trayHeatJPerM2K: of.isPlates ? plateHeat : steelTrayJPerM2K,
    oven: trayOven(of),
    conductivityWPerMK: null,
  });
  const second = Math.max(0, minutes) * 60;
  return (
    forecast(load, { atS: [second], targets: [], mostS: second, profileAtS: null }).moments[0]?.mean ?? waterFraction
  );
}
