// Oven care on its own timeline: what was checked, renewed or found broken.
import type { Context } from '../context.ts';
import type { OvenCareKind } from '../database/generated/sqlite/client.ts';
import { invalid, missing } from '../errors.ts';
import { checkNotFuture } from '../stock/service.ts';
import { newId, write, type Work } from '../work.ts';
import { usedOven } from './ovens.ts';
import type { Said } from './care-said.ts';
import { hygrometer } from './hygrometer.ts';

export type CareKept = { careId: string };

/** What has two figures, with how each is asked for. */
const figures: Partial<Record<OvenCareKind, [set: string, found: string]>> = {
  TRUE_TEMPERATURE: ['the temperature it was set to, °C', 'the true temperature found, °C'],
  VACUUM_GAUGE: ['what its gauge showed, mbar', 'what the reference gauge showed, mbar'],
};

async function ofOven(work: Work, input: Said) {
  if (!input.oven) throw missing('input.oven', 'the id of the oven');
  const { id: ovenId, kind } = await usedOven(work, input.oven);
  const asked = figures[input.kind];
  if (kind === 'AIR' && ['VACUUM_GAUGE', 'PUMP_OIL', 'COLD_TRAP'].includes(input.kind)) {
    throw invalid('input.kind', input.kind, 'care of an oven full of air: it has no pump');
  }
  if (asked && typeof input.setValue !== 'number') throw missing('input.setValue', asked[0]);
  if (asked && typeof input.foundValue !== 'number') throw missing('input.foundValue', asked[1]);
  return { ovenId, setValue: input.setValue ?? null, foundValue: input.foundValue ?? null };
}

export function careRecorded(context: Context, input: Said): Promise<CareKept> {
  return write(context, 'recordOvenCare', input, async (work) => {
    const { tx, labId } = work;
    const at = input.at ?? work.now;
    // Out of order and a bake-out may be announced; the rest has happened.
    const mayComeLater = input.kind === 'OUT_OF_ORDER' || input.kind === 'BAKE_OUT';
    if (!mayComeLater) checkNotFuture(at, work.now, 'input.at');
    const until = mayComeLater ? (input.until ?? null) : null;
    if (until && until <= at) throw invalid('input.until', until.toISOString(), `after ${at.toISOString()}`);
    const about = input.kind === 'HYGROMETER' ? await hygrometer(work, input) : await ofOven(work, input);
    const careId = newId();
    const row = { id: careId, labId, kind: input.kind, at, until, note: input.note, actorId: work.actorId };
    await tx.ovenCare.create({ data: { ...row, ...about, madeAt: work.now } });
    work.changed('OvenCare', careId, 'MADE');
    return { careId };
  });
}
