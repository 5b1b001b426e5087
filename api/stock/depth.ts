// How deep the sorbent lies in a container.
import type { Container } from '../database/generated/sqlite/client.ts';
import type { Loaders } from '../loaders.ts';
import { bulkDensityName } from './properties.ts';

/** Depth of the bed, mm: dry mass over bulk density and cross-section. Null where one of them is not known. */
export async function bedDepthMm(container: Container, load: Loaders): Promise<number | null> {
  const { kind, innerDiameterMm, dryGrams, lotId } = container;
  if (kind === 'COLUMN') return container.bedLengthMm;
  if (kind === 'PLATE_BOX' || !innerDiameterMm) return null;
  const lot = await load.lot.load(lotId);
  const properties = lot ? await load.properties.load(lot.sorbentId) : [];
  const density = properties.find(({ name }) => name === bulkDensityName)?.value;
  if (!density) return null;
  const areaM2 = Math.PI * (innerDiameterMm / 2000) ** 2;
  return (1000 * (dryGrams / 1000)) / (density * areaM2);
}
