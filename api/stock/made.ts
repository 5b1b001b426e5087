// A new container: its label, its shape, and where its first event puts it.
import { z } from 'zod';
import type { Backing, Closure, Container, ContainerKind } from '../database/generated/sqlite/client.ts';
import { missing } from '../errors.ts';
import { newId, type Work } from '../work.ts';
import { nextNumber } from './counter.ts';
import { vesselOf } from './find.ts';
import { labelOf } from './label.ts';
import { said } from './said.ts';

export const platesSaid = z.object({
  backing: z.enum(['GLASS', 'ALUMINIUM', 'PLASTIC'], 'GLASS, ALUMINIUM or PLASTIC').nullish(),
  layerThicknessMm: said.mm.max(5, 'at most 5 mm').nullish(),
  plateWidthMm: said.mm.nullish(),
  plateHeightMm: said.mm.nullish(),
});

/** A listed vessel, or inner sizes. */
export const shapeSaid = {
  vessel: said.name.nullish(),
  innerDiameterMm: said.mm.nullish(),
  heightMm: said.mm.nullish(),
  mouthDiameterMm: said.mm.nullish(),
  volumeMl: said.ml.nullish(),
  tareGrams: said.gramsOrNone,
  usualClosure: said.closure.exclude(['OPEN'], 'a closure: LOOSELY_COVERED, WELL_CLOSED, TIGHT or SEALED').nullish(),
};

export type SaidShape = { [K in keyof typeof shapeSaid]?: z.output<(typeof shapeSaid)[K]> };

export interface Shape {
  vesselId: string | null;
  innerDiameterMm: number | null;
  heightMm: number | null;
  mouthDiameterMm: number | null;
  volumeMl: number | null;
  bedLengthMm: number | null;
  backing: Backing | null;
  layerThicknessMm: number | null;
  plateWidthMm: number | null;
  plateHeightMm: number | null;
}

export const shapeless: Shape = {
  vesselId: null,
  innerDiameterMm: null,
  heightMm: null,
  mouthDiameterMm: null,
  volumeMl: null,
  bedLengthMm: null,
  backing: null,
  layerThicknessMm: null,
  plateWidthMm: null,
  plateHeightMm: null,
};

/** Inside of a cylinder, mL. */
const cylinderMl = (diameterMm: number, heightMm: number): number => (Math.PI / 4) * diameterMm ** 2 * heightMm * 1e-3;

/** The shape of a drum or portion: its vessel's, or sizes of its own. */
export async function vesselShape(work: Work, shape: SaidShape, under: string): Promise<Shape> {
  const { vessel, innerDiameterMm: diameter, heightMm: height } = shape;
  if (vessel) {
    const { id, innerDiameterMm, heightMm, mouthDiameterMm, volumeMl } = await vesselOf(
      work,
      vessel,
      `${under}.vessel`,
    );
    return { ...shapeless, vesselId: id, innerDiameterMm, heightMm, mouthDiameterMm, volumeMl };
  }
  if (!diameter) throw missing(`${under}.vessel`, 'the name of a vessel, or its inner diameter and height in mm');
  if (!height) throw missing(`${under}.heightMm`, 'the inner height, mm');
  const mouthDiameterMm = shape.mouthDiameterMm ?? diameter;
  const volumeMl = shape.volumeMl ?? cylinderMl(diameter, height);
  return { ...shapeless, innerDiameterMm: diameter, heightMm: height, mouthDiameterMm, volumeMl };
}

/** Somebody said what it goes into. */
export const hasShape = (shape: SaidShape): boolean => Boolean(shape.vessel ?? shape.innerDiameterMm ?? shape.heightMm);

/** Common practice: 20 × 20 cm glass plates with a layer of 0.25 mm. */
const commonPlate = { backing: 'GLASS', layerThicknessMm: 0.25, plateWidthMm: 200, plateHeightMm: 200 } as const;

export function plateShape(plates: z.output<typeof platesSaid>): Shape {
  return {
    ...shapeless,
    backing: plates.backing ?? commonPlate.backing,
    layerThicknessMm: plates.layerThicknessMm ?? commonPlate.layerThicknessMm,
    plateWidthMm: plates.plateWidthMm ?? commonPlate.plateWidthMm,
    plateHeightMm: plates.plateHeightMm ?? commonPlate.plateHeightMm,
  };
}

export function columnShape(innerDiameterMm: number, bedLengthMm: number): Shape {
  const volumeMl = cylinderMl(innerDiameterMm, bedLengthMm);
  return {
    ...shapeless,
    innerDiameterMm,
    bedLengthMm,
    heightMm: bedLengthMm,
    mouthDiameterMm: innerDiameterMm,
    volumeMl,
  };
}

export interface NewContainer {
  kind: ContainerKind;
  lotId: string;
  takenFromId: string | null;
  shape: Shape;
  tareGrams: number | null;
  usualClosure: Closure;
  roomId: string;
  closure: Closure;
  at: Date;
}

/** The row of a new container, empty until its first event is recorded. */
export async function madeContainer(work: Work, of: NewContainer): Promise<Container> {
  const { shape, roomId, closure, at, ...rest } = of;
  const label = labelOf(await nextNumber(work, 'label'));
  const stands = { roomId, closure, cameInAt: at, isOpen: false, dryGrams: 0 };
  const made = await work.tx.container.create({
    data: { id: newId(), labId: work.labId, label, ...rest, ...shape, ...stands },
  });
  work.changed('Container', made.id, 'MADE');
  return made;
}
