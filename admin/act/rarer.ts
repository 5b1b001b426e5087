// What else can have happened to a container: the forms beside those of every day, in the order in which they are offered.
import type { Line } from '../fields.ts';
import { activate, equilibrate } from '../activate/forms.ts';
import { prewash, solventGone } from '../activate/wash.ts';
import { columned } from './column.ts';
import { everyday } from './forms.ts';
import { leaving } from './leaving.ts';
import type { ActSpec, Names } from './spec.ts';
import { telling } from './telling.ts';
import { treating } from './treating.ts';

export function rarer(of: Line, names: Names): ActSpec[] {
  const shape = { isColumn: of.kind === 'COLUMN', isBox: of.kind === 'PLATE_BOX' };
  const all = [...treating(shape), ...columned(shape), ...telling(shape), ...leaving(of, shape)];
  return [
    ...everyday(of, names).map((act) => ({ ...act, atOnce: false })),
    ...(shape.isBox ? [prewash(names), solventGone, activate(names), equilibrate(names)] : []),
    ...all.filter(({ fits }) => fits !== false),
  ];
}
