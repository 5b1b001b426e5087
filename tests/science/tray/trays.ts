// Trays and ovens for the tests, in the bench's units.
import { forecast, type Moment } from '../../../api/science/tray/forecast.ts';
import { loadOf, steelTrayJPerM2K, type DryingSorbent, type Tray } from '../../../api/science/tray/load.ts';
import { usualExchange, usualPressurePa, usualVapourPa, type Oven } from '../../../api/science/tray/oven.ts';
import { dryingSorbent } from '../../../api/science/tray/properties.ts';

export interface OvenWords {
  kind: string;
  temperatureC: number;
  fan?: boolean;
  pressureMbar?: number;
  waterMbar?: number;
  warmUpMinutes?: number;
}

export function ovenOf({ kind, temperatureC, fan, pressureMbar, waterMbar, warmUpMinutes }: OvenWords): Oven {
  const of = kind === 'vacuum' ? 'vacuum' : fan ? 'air with fan' : 'air';
  const pressurePa = pressureMbar === undefined ? usualPressurePa[of] : 100 * pressureMbar;
  return {
    kind: of,
    temperatureC,
    pressurePa,
    vapourPa: waterMbar === undefined ? usualVapourPa[of] : 100 * waterMbar,
    warmUpS: 60 * (warmUpMinutes ?? 0),
    pump: null,
    exchange: usualExchange(of, temperatureC, pressurePa),
  };
}

export function sorbentOf(name: string): DryingSorbent {
  const sorbent = dryingSorbent(name);
  if (!sorbent) throw new Error(`unknown sorbent: ${name}`);
  return sorbent;
}

export interface TrayWords {
  sorbent?: string;
  depthMm?: number;
  start?: number;
  oven?: OvenWords;
}

/** 10 mm of silica with 10 % of water at 22 °C in a still oven at 120 °C, but for what is given. */
export function trayOf({ sorbent = 'silica', depthMm = 10, start = 0.1, oven }: TrayWords = {}): Tray {
  return {
    sorbent: sorbentOf(sorbent),
    depthM: depthMm / 1000,
    waterFraction: start,
    temperatureC: 22,
    trayHeatJPerM2K: steelTrayJPerM2K,
    oven: ovenOf(oven ?? { kind: 'air', temperatureC: 120 }),
    conductivityWPerMK: null,
  };
}

/** A tray after so many minutes. */
export function after(tray: Tray, minutes: number): Moment {
  const { moments } = forecast(loadOf(tray), { atS: [60 * minutes], targets: [], mostS: 0, profileAtS: null });
  const [moment] = moments;
  if (!moment) throw new Error('missing moment');
  return moment;
}
