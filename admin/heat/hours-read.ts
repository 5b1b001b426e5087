// An oven's hours as one line of text, said and read back: "Mon to Fri 07:00 to 12:00, 13:00 to 18:00; Sat 08:00 to 12:00".
export interface Span {
  days: number[];
  from: string;
  to: string;
}

const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

/** "Mon to Fri", "Mon, Wed": days in a row of three or more are said by their ends. */
export function daysWords(days: readonly number[]): string {
  const sorted = [...new Set(days)].sort((a, b) => a - b);
  const runs: number[][] = [];
  for (const day of sorted) {
    const last = runs.at(-1);
    if (last && last.at(-1) === day - 1) last.push(day);
    else runs.push([day]);
  }
  const name = (day: number | undefined): string => weekdays[(day ?? 1) - 1] ?? '';
  return runs
    .flatMap((run) => (run.length > 2 ? [`${name(run[0])} to ${name(run.at(-1))}`] : run.map(name)))
    .join(', ');
}

/** "Mon to Fri 07:00 to 12:00, 13:00 to 18:00; Sat 08:00 to 12:00". */
export function hoursWords(hours: readonly Span[]): string {
  const groups: { days: string; spans: string[] }[] = [];
  for (const { days, from, to } of hours) {
    const words = daysWords(days);
    const span = `${from} to ${to}`;
    const same = groups.find((group) => group.days === words);
    if (same) same.spans.push(span);
    else groups.push({ days: words, spans: [span] });
  }
  return groups.map(({ days, spans }) => `${days} ${spans.join(', ')}`).join('; ');
}

const dash = '(?:to|until|[-–])';
const clock = String.raw`(\d{1,2})(?::?(\d{2}))?`;
const spanOf = new RegExp(String.raw`^${clock}\s*${dash}\s*${clock}$`, 'i');
const dayOf = (word: string): number | null => {
  const at = weekdays.findIndex((day) => word.toLowerCase().startsWith(day.toLowerCase()));
  return at < 0 || !/^[a-z]+$/i.test(word) ? null : at + 1;
};

function daysIn(text: string): number[] | null {
  if (/^(every day|daily)$/i.test(text)) return [1, 2, 3, 4, 5, 6, 7];
  const days: number[] = [];
  for (const part of text.split(/\s*(?:,|and)\s*/i)) {
    const [first, last = first, more] = part.split(new RegExp(String.raw`\s*${dash}\s*`, 'i'));
    const [from, to] = [dayOf(first ?? ''), dayOf(last ?? '')];
    if (from === null || to === null || more !== undefined) return null;
    for (let day = from; ; day = (day % 7) + 1) {
      days.push(day);
      if (day === to) break;
    }
  }
  return [...new Set(days)].sort((a, b) => a - b);
}

function clockIn(hour: string | undefined, minute = '00'): string | null {
  const [h, m] = [Number(hour), Number(minute)];
  return h <= 23 && m <= 59 ? `${String(h).padStart(2, '0')}:${String(m).padStart(2, '0')}` : null;
}

/** What was meant; or what would be right. */
export function hoursRead(text: string): Span[] | string {
  const spans: Span[] = [];
  const groups = text.split(/[;\n]/).map((group) => group.trim());
  for (const group of groups.filter(Boolean)) {
    const [, before = '', after = ''] = /^(\D*?)\s*:?\s*(\d.*)$/.exec(group) ?? [];
    const days = daysIn(before.trim());
    if (!days) return `“${before.trim() || group}”: days such as Mon to Fri, or Mon, Wed`;
    for (const one of after.split(/\s*(?:,|and)\s*/i)) {
      const found = spanOf.exec(one.trim());
      const [from, to] = [clockIn(found?.[1], found?.[2]), clockIn(found?.[3], found?.[4])];
      if (!found || from === null || to === null) return `“${one.trim()}”: hours such as 07:00 to 12:00`;
      if (from === to) return `“${one.trim()}”: from one time to another`;
      spans.push({ days, from, to });
    }
  }
  return spans.length > 0 ? spans : 'days and hours, such as Mon to Fri 07:00 to 12:00';
}
