// What the tray model says of one load in one oven: the water it has reached after so many minutes.
import type { Oven } from '../database/generated/sqlite/client.ts';
import { forecast } from '../science/tray/forecast.ts';
import { loadOf, steelTrayJPerM2K, wettestStart, type Load } from '../science/tray/load.ts';
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
  oven: Pick<Oven, 'kind' | 'hasFan' | 'pressureMbar' | 'waterMbar' | 'pumpM3PerH'>;
  /** Of all trays that its pump serves at once, m²; null where nobody knows. */
  trayAreaM2: number | null;
  isVacuum: boolean;
  /** Vapour pressure of the room's air that an oven full of air draws, Pa; null where nobody knows. */
  roomVapourPa: number | null;
}

/** Water where nobody knows, kg/kg dry: as estimates take it for granted. */
export const assumedWater = 0.03;
const roomC = 22;
const hourS = 3600;
/** A glass plate of 2 mm under its layer, J/(m² K), as a glass dish of the drying model (placeholder). */
const plateHeat = 4200;
/** A layer thinner than this the grid does not tell from it, mm. */
const thinnestMm = 0.25;

/** The chamber; under vacuum a pump of known speed lets its vapour rise while the trays give off water. */
export function trayOven({ oven, isVacuum, temperatureC, roomVapourPa, trayAreaM2 }: InOven): TrayOven {
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
    pump:
      kind === 'vacuum' && oven.pumpM3PerH !== null && trayAreaM2 !== null
        ? { speedM3PerS: oven.pumpM3PerH / hourS, trayAreaM2 }
        : null,
    exchange: usualExchange(kind, temperatureC, pressurePa),
  };
}

/** The load as the model takes it; null for a class of which it knows nothing. */
export function loadIn(of: InOven): Load | null {
  const sorbent = dryingSorbent(of.sorbentClass);
  if (!sorbent) return null;
  const depthMm = of.isPlates ? Math.max(thinnestMm, of.layerMm ?? thinnestMm) : (of.depthMm ?? usualDepthMm);
  return loadOf({
    sorbent,
    depthM: depthMm / 1000,
    waterFraction: Math.min(of.waterFraction ?? assumedWater, 0.999 * wettestStart(sorbent.isotherm)),
    temperatureC: roomC,
    trayHeatJPerM2K: of.isPlates ? plateHeat : steelTrayJPerM2K,
    oven: trayOven(of),
    conductivityWPerMK: null,
  });
}

/** Mean water after so many minutes in the hot oven, kg/kg dry; null for a class of which the model knows nothing. */
export function waterAfter(of: InOven, minutes: number): number | null {
  const load = loadIn(of);
  if (!load) return null;
  const second = Math.max(0, minutes) * 60;
  const { moments } = forecast(load, { atS: [second], targets: [], mostS: second, profileAtS: null });
  return moments[0]?.mean ?? load.startWater;
}
