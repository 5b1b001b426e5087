// What a forecast is about: a container, a sorbent of the lab or a class of the table, with its figures.
import type { Context } from '../context.ts';
import type { Container, Sorbent } from '../database/generated/sqlite/client.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { numbersOf, type Numbers } from '../exposure/service.ts';
import { sorbentClass } from '../science/properties.ts';
import { containerOf, sorbentOf } from '../stock/service.ts';

/** What is asked of a sorbent: one of the lab, or a class of the table with nothing of its own. */
export type Material = Pick<Sorbent, 'id' | 'name' | 'sorbentClass' | 'targetUpperWaterFraction'>;

interface What {
  sorbent: Material;
  container: Container | null;
}

export async function whatOf({ database, lab }: Context, label?: string | null, name?: string | null): Promise<What> {
  const place = { tx: database.read, labId: lab.id };
  if (label && name) throw unknown('sorbent', name, 'a label or a sorbent, not both');
  if (name) {
    const found = await database.read.sorbent.findFirst({ where: { labId: lab.id, name } });
    const ofClass = found ? null : sorbentClass(name.trim().toLowerCase());
    if (ofClass) {
      const { name: of } = ofClass;
      return { sorbent: { id: '', name: of, sorbentClass: of, targetUpperWaterFraction: null }, container: null };
    }
    return { sorbent: found ?? (await sorbentOf(place, name, 'sorbent')), container: null };
  }
  if (!label) throw missing('label', 'the label of a container, or the name of a sorbent');
  const container = await containerOf(place, label, 'label');
  const { sorbent } = await database.read.lot.findUniqueOrThrow({
    where: { id: container.lotId },
    include: { sorbent: true },
  });
  return { sorbent, container };
}

export async function numbersFor({ load }: Context, { id, name, sorbentClass: of }: Material): Promise<Numbers> {
  const own = id === '' ? [] : await load.properties.load(id);
  const numbers = numbersOf({ sorbentClass: of, sorbentName: name }, own);
  if (typeof numbers === 'string') throw invalid('sorbent', name, `a sorbent whose water is known: ${numbers}`);
  if (!numbers.drying) throw invalid('sorbent', name, 'a class whose figures for drying are known');
  return numbers;
}

const classWords: Record<string, string> = { c18: 'C18 silica' };

/** What the sentences call it. */
export const calledOf = (of: Material, container: Container | null): string =>
  container?.kind === 'PLATE_BOX' ? 'these plates' : `this ${classWords[of.sorbentClass] ?? of.sorbentClass}`;
