// The labs that are looked at: empty, with one drum, the demo, and one with thousands.
import type { Served } from '../support/asked.ts';
import { serveApart } from '../support/own-server.ts';
import { hoursAgo } from '../journeys/shelf.ts';

export const sizes = ['0', '1', '80', '5000'] as const;
export type Size = (typeof sizes)[number];

/** A lab of one drum whose sorbent has the longest name that a line must bear. */
async function oneDrum({ tell }: Served): Promise<void> {
  const sorbent = 'Silica gel for flash, 40 to 63 µm, 6 nm pores, neutral, pail';
  await tell('addRoom', { name: 'wet bench', assumedHumidityPercent: 45, assumedTemperatureC: 22 });
  await tell('addSorbent', { name: sorbent, sorbentClass: 'silica', particleSizeLowUm: 40, particleSizeHighUm: 63 });
  const drum = { kind: 'DRUM', room: 'wet bench', count: 1, grams: 25_000, innerDiameterMm: 300, heightMm: 450 };
  await tell('receiveLot', {
    sorbent,
    lotNumber: 'F-118',
    receivedAt: hoursAgo(48),
    containers: [{ ...drum, startWaterFraction: 0.02, closure: 'WELL_CLOSED', usualClosure: 'WELL_CLOSED' }],
  });
}

export async function labOfSize(size: Size): Promise<Served> {
  if (size === '80') return serveApart({ demo: true });
  if (size === '5000') return serveApart({ large: 5_000 });
  const served = await serveApart();
  if (size === '1') await oneDrum(served);
  return served;
}
