// What may be said of a drying besides temperature and minutes: how deep, in what oven's air, and how long it cooled in the open.
import { z } from 'zod';

const number = (what: string) => z.number(what).refine(Number.isFinite, what);

/** As it is said; each may be left out. */
export const inOvenSaid = {
  depthMm: number('mm').min(0.05, '0.05 mm or more').max(100, 'at most 100 mm').nullish(),
  pressureMbar: number('mbar').min(0.01, '0.01 mbar or more').max(1100, 'at most 1100 mbar').nullish(),
  waterMbar: number('mbar').min(0, '0 mbar or more').max(100, 'at most 100 mbar').nullish(),
  fan: z.boolean().nullish(),
  warmUpMinutes: number('minutes').min(0, '0 min or more').max(1440, 'at most 1440 min').nullish(),
  minutesToClosed: number('minutes').min(0, '0 min or more').max(1440, 'at most 1440 min').nullish(),
};

type InOven = { readonly [K in keyof typeof inOvenSaid]?: z.output<(typeof inOvenSaid)[K]> };

/** As it is kept. A drying that was written down before anybody asked for the depth has no `depthMm` at all. */
export const inOvenDetail = {
  depthMm: z.number().nullable().optional(),
  pressureMbar: z.number().optional(),
  waterMbar: z.number().optional(),
  fan: z.boolean().optional(),
  warmUpMinutes: z.number().optional(),
  minutesToClosed: z.number().optional(),
};

/** What of it is kept. */
export function inOvenKept({ depthMm, pressureMbar, waterMbar, fan, warmUpMinutes, minutesToClosed }: InOven) {
  const some = { pressureMbar, waterMbar, fan, warmUpMinutes, minutesToClosed };
  const kept = Object.entries(some).filter(([, value]) => value !== null && value !== undefined);
  return {
    depthMm: depthMm ?? null,
    ...(Object.fromEntries(kept) as { [K in keyof typeof some]?: NonNullable<InOven[K]> }),
  };
}

/** What is said of it, out of a longer saying. */
export const inOvenOf = ({
  depthMm,
  pressureMbar,
  waterMbar,
  fan,
  warmUpMinutes,
  minutesToClosed,
}: InOven): InOven => ({ depthMm, pressureMbar, waterMbar, fan, warmUpMinutes, minutesToClosed });
