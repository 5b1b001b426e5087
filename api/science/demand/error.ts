// How far a forecast was off, had it been made at each week of the later history: the rolling origin.

/** The first week at which a forecast is held against what came. */
const firstOrigin = (weeks: number): number => Math.max(8, Math.floor(weeks / 2));

/** How many weeks of the history have `ahead` weeks after them to be held against. */
export const originsOf = (weeks: number, ahead: number): number => Math.max(0, weeks - ahead - firstOrigin(weeks) + 1);

/**
 * Mean square of (ahead × rate − what the next weeks used), null without an origin. Squares, since the absolute error of
 * demand with many empty weeks is least for a forecast of nothing.
 */
export function meanSquareError(
  weeks: readonly number[],
  rateAfter: (week: number) => number,
  ahead: number,
): number | null {
  const origins = originsOf(weeks.length, ahead);
  if (origins === 0) return null;
  const first = firstOrigin(weeks.length);
  let sum = 0;
  for (let origin = first; origin < first + origins; origin++) {
    let came = 0;
    for (let week = origin; week < origin + ahead; week++) came += weeks[week]!;
    sum += (ahead * rateAfter(origin) - came) ** 2;
  }
  return sum / origins;
}
