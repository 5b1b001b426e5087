// A small shelf for the journeys: two rooms with air, a sorbent, a lot of two drums, and a portion that was forgotten open.
import type { Served } from '../support/asked.ts';

export interface Shelf {
  /** Shut, as received. */
  drum: string;
  /** Poured the evening before yesterday and left open since. */
  forgotten: string;
}

const HOUR = 3_600_000;
export const hoursAgo = (hours: number): string => new Date(Date.now() - hours * HOUR).toISOString();

/** A room's readings every half hour of so many days, about 22 °C and 55 % RH. */
function readings(days: number) {
  return Array.from({ length: days * 48 + 1 }, (_, i) => {
    const hours = (days * 48 - i) / 2;
    return {
      at: hoursAgo(hours),
      temperatureC: 22 + Math.sin(hours / 4),
      humidityPercent: 55 + 4 * Math.sin(hours / 7),
    };
  });
}

export async function stockShelf({ tell }: Served): Promise<Shelf> {
  await tell('addRoom', { name: 'wet bench' });
  await tell('addRoom', { name: 'cold store', kind: 'COLD_STORE', assumedHumidityPercent: 60, assumedTemperatureC: 5 });
  await tell('addReadings', { room: 'wet bench', sensor: 'north wall', readings: readings(6) });
  await tell('addSorbent', {
    name: 'Silica 40 to 63 µm',
    sorbentClass: 'silica',
    particleSizeLowUm: 40,
    particleSizeHighUm: 63,
  });
  await tell('addSupplier', { name: 'Marlpit Chemicals' });
  const drums = {
    kind: 'DRUM',
    room: 'wet bench',
    count: 2,
    grams: 1000,
    innerDiameterMm: 110,
    heightMm: 250,
    startWaterFraction: 0.01,
    closure: 'TIGHT',
    usualClosure: 'TIGHT',
  };
  const lot = {
    sorbent: 'Silica 40 to 63 µm',
    supplier: 'Marlpit Chemicals',
    lotNumber: 'F-118',
    receivedAt: hoursAgo(120),
    containers: [drums],
  };
  const { containers } = (await tell('receiveLot', lot)) as { containers: { label: string }[] };
  const drum = containers[0]?.label ?? '';
  const beaker = { innerDiameterMm: 90, heightMm: 60, closure: 'OPEN' };
  const { made } = (await tell('takePortion', {
    label: containers[1]?.label,
    grams: 60,
    at: hoursAgo(44),
    ...beaker,
  })) as { made: { label: string } };
  return { drum, forgotten: made.label };
}
