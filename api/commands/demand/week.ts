// A week as it is written, to a number that rises by one from week to week.

const day = 86_400_000;
/** A Monday. */
const monday = Date.UTC(1970, 0, 5);

/** `14` as it stands; `2026-W14` (ISO 8601) as weeks since 1970. Null of anything else. */
export function weekNumber(text: string): number | null {
  if (/^-?\d{1,9}$/.test(text)) return Number(text);
  const [, year = '', week = ''] = /^(\d{4})-?W(\d{2})$/i.exec(text) ?? [];
  if (year === '') return null;
  const first = firstMonday(Number(year));
  const number = Number(week);
  if (number < 1 || first + (number - 1) * 7 * day >= firstMonday(Number(year) + 1)) return null;
  return (first - monday) / (7 * day) + number - 1;
}

/** The Monday of the week with 4 January. */
function firstMonday(year: number): number {
  const fourth = Date.UTC(year, 0, 4);
  return fourth - ((new Date(fourth).getUTCDay() + 6) % 7) * day;
}
