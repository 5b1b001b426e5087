// The oven around a tray: what it is set to, and the exchange coefficients taken where nobody has measured them.
import { freePathM } from './conductivity.ts';

export type OvenKind = 'air' | 'air with fan' | 'vacuum';

/** How heat and vapour cross from the chamber to the tray. */
export interface Exchange {
  /** Chamber to bed surface, W/(m² K), and the surface's emissivity towards walls at the set temperature. */
  readonly topWPerM2K: number;
  readonly emissivityTop: number;
  /** Still air that vapour crosses above the bed, m. */
  readonly filmM: number;
  /** Chamber or shelf to tray, W/(m² K), and the emissivity between them. */
  readonly bottomWPerM2K: number;
  readonly emissivityBottom: number;
}

export interface Oven {
  readonly kind: OvenKind;
  readonly temperatureC: number;
  readonly pressurePa: number;
  /** Vapour pressure of water in the chamber; with a pump, that without load. */
  readonly vapourPa: number;
  /** Time of a straight rise from the load's temperature to the set one, s. */
  readonly warmUpS: number;
  /** Pumping speed and the area of all trays; null when the chamber's vapour pressure is held. */
  readonly pump: { readonly speedM3PerS: number; readonly trayAreaM2: number } | null;
  readonly exchange: Exchange;
}

/** Gap between tray and shelf in vacuum, m; thin sheet never lies flat (placeholder, to be measured). */
export const usualGapM = 1e-3;

/**
 * Tray on a shelf in vacuum, W/(m² K): 6 + 0.032/(gap + 4 ℓ): what touches, and hot gas of 0.032 W/(m K) between (placeholder).
 */
export function shelfContact(temperatureC: number, pressurePa: number, gapM = usualGapM): number {
  return 6 + 0.032 / (gapM + 4 * freePathM(temperatureC + 273.15, pressurePa));
}

/** Pressure, Pa, and the room's or chamber's vapour pressure, Pa (14 mbar is 22 °C at 53 % RH), where none is given. */
export const usualPressurePa: Readonly<Record<OvenKind, number>> = {
  air: 101_325,
  'air with fan': 101_325,
  vacuum: 2000,
};
export const usualVapourPa: Readonly<Record<OvenKind, number>> = { air: 1400, 'air with fan': 1400, vacuum: 500 };

/** Exchange where none is given; every figure is a placeholder to be measured on the lab's own oven. */
export function usualExchange(kind: OvenKind, temperatureC: number, pressurePa: number, gapM = usualGapM): Exchange {
  if (kind === 'air') {
    return { topWPerM2K: 5, emissivityTop: 0.8, filmM: 6e-3, bottomWPerM2K: 5, emissivityBottom: 0.5 };
  }
  if (kind === 'air with fan') {
    return { topWPerM2K: 15, emissivityTop: 0.8, filmM: 2e-3, bottomWPerM2K: 15, emissivityBottom: 0.5 };
  }
  const bottomWPerM2K = shelfContact(temperatureC, pressurePa, gapM);
  return { topWPerM2K: 1, emissivityTop: 0.6, filmM: 30e-3, bottomWPerM2K, emissivityBottom: 0 };
}

/** An oven at a temperature with all else as usual. */
export function usualOven(kind: OvenKind, temperatureC: number): Oven {
  const pressurePa = usualPressurePa[kind];
  return {
    kind,
    temperatureC,
    pressurePa,
    vapourPa: usualVapourPa[kind],
    warmUpS: 0,
    pump: null,
    exchange: usualExchange(kind, temperatureC, pressurePa),
  };
}
