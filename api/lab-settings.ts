// What a lab has set for itself, written: every room keeps its part of one object, and all of it is read from memory.
import type { z } from 'zod';
import type { Context } from './context.ts';
import type { Prisma } from './database/generated/sqlite/client.ts';
import { write, type Work } from './work.ts';

export type SettingsKept = Record<string, Prisma.InputJsonValue>;

/** A room's part as it is stored, each key by itself: one that nobody can read is as if it were not set. */
export function partRead<Kinds extends Readonly<Record<string, z.ZodType>>>(
  settings: unknown,
  part: string,
  kinds: Kinds,
): Partial<{ [Key in keyof Kinds]: z.output<Kinds[Key]> }> {
  const all = settings as Readonly<Record<string, Readonly<Record<string, unknown>> | undefined>> | null;
  const stored = all?.[part] ?? {};
  const given = Object.entries(kinds).flatMap(([key, kind]) => {
    const read = kind.safeParse(stored[key]);
    return read.success && read.data !== undefined ? [[key, read.data]] : [];
  });
  return Object.fromEntries(given) as Partial<{ [Key in keyof Kinds]: z.output<Kinds[Key]> }>;
}

/** A room's part after what was told: null goes back to the default, what was left out stays. */
export function partAfter(before: SettingsKept, part: string, told: Readonly<Record<string, unknown>>): SettingsKept {
  const kept = { ...(before[part] as Record<string, unknown> | undefined) };
  for (const [key, value] of Object.entries(told)) {
    if (value === null) delete kept[key];
    else if (value !== undefined) kept[key] = value;
  }
  return { ...before, [part]: kept as Prisma.InputJsonObject };
}

/** Writes what `next` makes of the settings before. */
export async function settingsWritten(
  context: Context,
  act: string,
  input: object & { clientKey?: string | null | undefined },
  next: (before: SettingsKept, work: Work) => SettingsKept | Promise<SettingsKept>,
): Promise<{ labId: string }> {
  const answer = await write(context, act, input, async (work) => {
    const { tx, labId } = work;
    const lab = await tx.lab.findUniqueOrThrow({ where: { id: labId } });
    const settings = await next((lab.settings ?? {}) as SettingsKept, work);
    await tx.lab.update({ where: { id: labId }, data: { settings } });
    work.changed('Lab', labId, 'CHANGED');
    return { labId };
  });
  const { settings } = await context.database.read.lab.findUniqueOrThrow({ where: { id: context.lab.id } });
  // One process, one lab in memory: every later request reads it there.
  Object.assign(context.lab, { settings });
  return answer;
}
