// A packed bed in numbers: its volume, its dry mass, its column volume, and the flow that the flash method runs at.

/** Pores and gaps together. Derived from bulk density, void and pore volume (silica 0.75 to 0.80); the rest like silica. */
const totalPorosity: Readonly<Record<string, number>> = { silica: 0.77, alumina: 0.72 };

export const totalPorosityOf = (sorbentClass: string): number => totalPorosity[sorbentClass] ?? 0.77;

/** mL; π d² L / 4. */
export const bedMl = (diameterMm: number, bedLengthMm: number): number =>
  ((Math.PI / 4) * diameterMm ** 2 * bedLengthMm) / 1000;

/** g; kg/m³ is g/L. */
export const bedGrams = (diameterMm: number, bedLengthMm: number, bulkDensityKgPerM3: number): number =>
  (bedMl(diameterMm, bedLengthMm) / 1000) * bulkDensityKgPerM3;

/** mL of liquid in the packed bed: ε_t π d² L / 4. */
export const columnVolumeMl = (diameterMm: number, bedLengthMm: number, sorbentClass: string): number =>
  totalPorosityOf(sorbentClass) * bedMl(diameterMm, bedLengthMm);

/** The surface falls 2 in/min (Still, Kahn & Mitra 1978): mL/min for this width. */
export const flashFlowMlPerMin = (diameterMm: number): number => ((Math.PI / 4) * diameterMm ** 2 * 50.8) / 1000;
