// What a step is done to, in containers of its own: kept for the need from then on.
import type { Container } from '../database/generated/sqlite/client.ts';
import { usualDensityKgPerM3 } from '../ovens/service.ts';
import { sorbentClass } from '../science/properties.ts';
import {
  needLetGo,
  nothingGrams,
  platesMoved,
  portionPoured,
  takePlatesSaid,
  takePortionSaid,
} from '../stock/service.ts';
import { densityName } from './facts.ts';
import { type Doing, keptFor, keptIn, noted } from './doing.ts';

/** The plates of a need in boxes of their own; those that are alone there stay. */
export async function platesApart(doing: Doing): Promise<Container[]> {
  const { work, by } = doing;
  const rows = await keptFor(doing);
  await needLetGo(work, doing.need.id, true);
  const own: { container: Container; plates: number }[] = [];
  for (const { container, plates } of rows) {
    if (plates === null || plates >= (container.plates ?? 0)) own.push({ container, plates: plates ?? 0 });
    else {
      const input = takePlatesSaid.parse({ label: container.label, plates, at: by.at, closure: 'OPEN' });
      const taken = await platesMoved(work, input);
      noted(doing, taken);
      if (taken.madeId)
        own.push({ container: await work.tx.container.findUniqueOrThrow({ where: { id: taken.madeId } }), plates });
    }
  }
  await keptIn(
    doing,
    own.map(({ container, plates }) => ({ containerId: container.id, dryGrams: null, plates })),
  );
  return own.map(({ container }) => container);
}

/** Of a jar: half again as high as wide. */
const jarShape = 1.5;
const jarFill = 2 / 3;

/** A jar that holds so many dry grams, half again as high as wide and two thirds full. */
export function jarFor(dryGrams: number, densityKgPerM3: number | null): { innerDiameterMm: number; heightMm: number } {
  const gramsPerMl = (densityKgPerM3 ?? usualDensityKgPerM3) / 1000;
  const diameterCm = Math.cbrt((4 * dryGrams) / (gramsPerMl * Math.PI * jarShape * jarFill));
  return { innerDiameterMm: Math.ceil(diameterCm * 10), heightMm: Math.ceil(diameterCm * 10 * jarShape) };
}

/** Of the need's sorbent as a bed, kg/m³; null where nobody knows. */
async function densityOf({ work, need }: Doing): Promise<number | null> {
  const of = await work.tx.sorbent.findUniqueOrThrow({
    where: { id: need.sorbentId },
    include: { properties: { where: { name: densityName } } },
  });
  return of.properties[0]?.value ?? sorbentClass(of.sorbentClass)?.bulkDensityKgPerM3 ?? null;
}

/** The sorbent of a need in containers of its own; all of one stays where it is. */
export async function sorbentApart(doing: Doing): Promise<Container[]> {
  const { work, by } = doing;
  const own: { container: Container; dryGrams: number }[] = [];
  const rows = await keptFor(doing);
  const density = await densityOf(doing);
  await needLetGo(work, doing.need.id, true);
  for (const { container, dryGrams } of rows) {
    const wanted = dryGrams ?? 0;
    if (wanted >= container.dryGrams - nothingGrams) own.push({ container, dryGrams: wanted });
    else {
      const vessel = by.vessel ? { vessel: by.vessel } : jarFor(wanted, density);
      const said = {
        label: container.label,
        grams: wanted,
        basis: 'DRY',
        at: by.at,
        closure: 'WELL_CLOSED',
        ...vessel,
      };
      const poured = await portionPoured(work, takePortionSaid.parse(said));
      noted(doing, poured);
      if (poured.madeId)
        own.push({
          container: await work.tx.container.findUniqueOrThrow({ where: { id: poured.madeId } }),
          dryGrams: wanted,
        });
    }
  }
  await keptIn(
    doing,
    own.map(({ container, dryGrams }) => ({ containerId: container.id, dryGrams, plates: null })),
  );
  return own.map(({ container }) => container);
}
