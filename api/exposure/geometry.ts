// The shape of what holds the sorbent, from the sizes stored with a container.
import type { FleetContainer } from '../database/fleet.ts';
import type { Geometry } from '../science/history.ts';

type Sizes = Pick<
  FleetContainer,
  | 'kind'
  | 'innerDiameterMm'
  | 'heightMm'
  | 'mouthDiameterMm'
  | 'volumeMl'
  | 'bedLengthMm'
  | 'layerThicknessMm'
  | 'plateWidthMm'
  | 'plateHeightMm'
>;

const roundM2 = (diameterMm: number): number => Math.PI * (diameterMm / 2000) ** 2;

/** A box of plates whose own size nobody gave counts as this high: 25 plates and their packing (from memory). */
const plateBoxHeightM = 0.1;

function plateGeometry({ layerThicknessMm, plateWidthMm, plateHeightMm, volumeMl }: Sizes): Geometry | string {
  if (layerThicknessMm === null) return 'missing layer thickness';
  if (plateWidthMm === null || plateHeightMm === null) return 'missing plate format';
  const plateAreaM2 = (plateWidthMm / 1000) * (plateHeightMm / 1000);
  const volumeM3 = volumeMl === null ? plateAreaM2 * plateBoxHeightM : volumeMl / 1e6;
  return { kind: 'plate', layerM: layerThicknessMm / 1000, plateAreaM2, volumeM3 };
}

/** The geometry, or what is missing for one. */
export function geometryOf(sizes: Sizes): Geometry | string {
  if (sizes.kind === 'PLATE_BOX') return plateGeometry(sizes);
  if (sizes.innerDiameterMm === null) return 'missing inner diameter';
  const areaM2 = roundM2(sizes.innerDiameterMm);
  if (sizes.kind === 'COLUMN') {
    if (sizes.bedLengthMm === null) return 'missing bed length';
    return { kind: 'column', areaM2, volumeM3: (areaM2 * sizes.bedLengthMm) / 1000 };
  }
  if (sizes.heightMm === null) return 'missing height';
  const heightM = sizes.heightMm / 1000;
  const mouthAreaM2 = roundM2(sizes.mouthDiameterMm ?? sizes.innerDiameterMm);
  const volumeM3 = sizes.volumeMl === null ? areaM2 * heightM : sizes.volumeMl / 1e6;
  return { kind: 'bed', areaM2, mouthAreaM2, heightM, volumeM3 };
}
