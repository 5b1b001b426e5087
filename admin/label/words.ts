// What stands on a label, in words: its target band, when it was opened, what to mind.

export interface LabelOf {
  label: string;
  sorbent: string;
  lot: string;
  /** The day as it is printed; null leaves a line to write on. */
  openedOn: string | null;
  band: string | null;
  cautions: readonly string[];
}

/** A percentage without a tail of zeros: 5, 2.5. */
const percentOf = (fraction: number): string => String(Number((fraction * 100).toPrecision(2)));

/** "at most 5 % water", "4 to 6 % water"; null where the lab set none. */
export function bandWords(lower: number | null, upper: number | null): string | null {
  if (upper === null) return lower === null ? null : `at least ${percentOf(lower)} % water`;
  if (lower === null || lower <= 0) return `at most ${percentOf(upper)} % water`;
  return `${percentOf(lower)} to ${percentOf(upper)} % water`;
}

/** A day for paper, with its month in letters, so that nobody mistakes 3 for March: "24 Nov 2026". */
export function dayOnPaper(at: Date, zone: string): string {
  return new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', timeZone: zone }).format(
    at,
  );
}
