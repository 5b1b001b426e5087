// Running numbers of a lab.
import type { Work } from '../work.ts';

/** The next number under a name, from 1. The write queue and the row's lock keep it from being given twice. */
export async function nextNumber(work: Work, name: 'label' | 'event'): Promise<number> {
  const { labId } = work;
  const counter = await work.tx.counter.upsert({
    where: { labId_name: { labId, name } },
    create: { labId, name, value: 1 },
    update: { value: { increment: 1 } },
  });
  return counter.value;
}

/** The first of so many numbers under a name, all of them taken. */
export async function nextNumbers(work: Work, name: 'label' | 'event', count: number): Promise<number> {
  const { labId } = work;
  const counter = await work.tx.counter.upsert({
    where: { labId_name: { labId, name } },
    create: { labId, name, value: count },
    update: { value: { increment: count } },
  });
  return counter.value - count + 1;
}
