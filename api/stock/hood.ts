// How long plates must have stood in the hood before their solvent may be called gone: the lab's own least, or the usual.
import { z } from 'zod';

/** Common practice: overnight. By time and airflow, never by smell. */
export const usualLeastHoodHours = 12;

export const leastHoodHoursSaid = z.number('hours').min(1, '1 h or more').max(168, 'at most 168 h (a week)');

/** The lab's least hours, from its settings. */
export function leastHoodHoursOf(settings: unknown): number {
  const read = z.object({ leastHoodHours: z.number().positive() }).safeParse(settings);
  return read.success ? read.data.leastHoodHours : usualLeastHoodHours;
}
