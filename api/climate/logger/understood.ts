/** One sentence that tells a person what was understood. */
import { HUMIDITY, TEMPERATURE } from './file.ts';
import type { DateOrder, LeftOut, Question, Series } from './file.ts';
import type { ClockColumns } from './clock.ts';

export type Seen = {
  written: string;
  clock: ClockColumns;
  order: DateOrder | null;
  zone: string | null;
  series: readonly Series[];
  leftOut: readonly LeftOut[];
  questions: readonly Question[];
};

export function understoodOf(seen: Seen): string {
  const air = seen.series.filter(({ quantity }) => quantity === TEMPERATURE || quantity === HUMIDITY);
  const sensors = [...new Set(air.map(({ sensor }) => sensor))];
  const what =
    air.length === 0
      ? 'neither temperature nor relative humidity'
      : joined([...new Set(air.map((one) => `${one.quantity} in ${one.unit ?? 'no known unit'}`))]);
  const whose =
    sensors.length === 1
      ? ` of "${sensors[0]}"`
      : sensors.length > 1
        ? ` of ${sensors.length} sensors (${sensors
            .slice(0, 4)
            .map((name) => `"${name}"`)
            .join(', ')}${sensors.length > 4 ? ', …' : ''})`
        : '';
  const ignored = seen.series.length - air.length;
  const parts = [
    `${seen.written}, ${clockText(seen)}`,
    `${what}${whose}`,
    countText(air),
    ignored > 0 ? `${ignored} other column${ignored > 1 ? 's' : ''} ignored` : '',
    seen.leftOut.length > 0 ? `${seen.leftOut.length} left out` : '',
    seen.questions.length > 0 ? `${seen.questions.length} question${seen.questions.length > 1 ? 's' : ''} open` : '',
  ];
  return `${parts.filter((part) => part !== '').join('; ')}.`;
}

function clockText({ clock, order, zone }: Seen): string {
  if (clock.kind === 'none') return zone === null ? 'no times' : `times counted from the start given (${zone})`;
  if (clock.kind === 'unix') return `Unix ${clock.perSecond === 1 ? 'seconds' : 'milliseconds'}`;
  const dates = order === null ? 'dates' : `dates ${order.replace('-', ' ')}`;
  return `${dates}, ${zone === null ? 'offset beside each time' : `times in ${zone}`}`;
}

function countText(air: readonly Series[]): string {
  const count = air.reduce((sum, { readings }) => sum + readings.values.length, 0);
  const firsts = air.map(({ first }) => first).filter((at) => at !== null);
  const lasts = air.map(({ last }) => last).filter((at) => at !== null);
  const span =
    firsts.length > 0 ? ` from ${minuteText(Math.min(...firsts))} to ${minuteText(Math.max(...lasts))} UTC` : '';
  return `${count.toLocaleString('en-GB')} readings${span}`;
}

function minuteText(ms: number): string {
  return new Date(ms).toISOString().slice(0, 16).replace('T', ' ');
}

function joined(parts: readonly string[]): string {
  return parts.length > 1 ? `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}` : (parts[0] ?? '');
}
