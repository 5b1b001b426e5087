// A room's air as three plots of one time: temperature, relative humidity, and the vapour that the sorbent sees.
import type { PlotData, PlotLine } from '../draw/data.ts';
import { spokenTime } from '../say/time.ts';
import { air } from '../say/water.ts';
import type { AirPoint } from './questions.ts';

/** Stretches in which the air was filled, not measured, as neighbouring points make them. */
export function filledSpans(points: readonly Pick<AirPoint, 'at' | 'isFilled'>[]): { from: number; until: number }[] {
  const spans: { from: number; until: number }[] = [];
  let open: { from: number; until: number } | null = null;
  for (const { at, isFilled } of points) {
    const seconds = Date.parse(at) / 1000;
    if (!isFilled) {
      open = null;
    } else if (open) {
      open.until = seconds;
    } else {
      open = { from: seconds, until: seconds };
      spans.push(open);
    }
  }
  return spans;
}

/** Two spans that differ by more than a fiftieth of their length are two. */
export function isOtherSpan([from, until]: readonly [number, number], of: readonly [number, number]): boolean {
  const far = 0.02 * (of[1] - of[0]);
  return Math.abs(from - of[0]) > far || Math.abs(until - of[1]) > far;
}

export interface AirPlot {
  name: string;
  data: PlotData;
}

export function airPlots(points: readonly AirPoint[]): AirPlot[] {
  const times = points.map(({ at }) => Date.parse(at) / 1000);
  const filled = filledSpans(points);
  const of = (
    key:
      | 'temperatureC'
      | 'temperatureLowC'
      | 'temperatureHighC'
      | 'relativeHumidityPercent'
      | 'humidityLowPercent'
      | 'humidityHighPercent'
      | 'vapourGramsPerM3',
  ) => points.map((point) => point[key]);
  const plot = (name: string, line: Omit<PlotLine, 'colour'>, undated: boolean): AirPlot => {
    const lines = [{ ...line, colour: 'accent' } as const];
    return { name, data: { times, filled, lines, undated, format: (value) => String(Number(value.toFixed(1))) } };
  };
  return [
    plot(
      'temperature',
      { label: '°C', values: of('temperatureC'), low: of('temperatureLowC'), high: of('temperatureHighC') },
      true,
    ),
    plot(
      'relative humidity',
      {
        label: '% RH',
        values: of('relativeHumidityPercent'),
        low: of('humidityLowPercent'),
        high: of('humidityHighPercent'),
      },
      true,
    ),
    plot('water vapour', { label: 'g/m³', values: of('vapourGramsPerM3') }, false),
  ];
}

export function airWords(points: readonly AirPoint[], name: string, now: Date, zone: string): string {
  const known = points.filter(({ relativeHumidityPercent }) => relativeHumidityPercent !== null);
  const first = known[0];
  const last = known.at(-1);
  if (!first || !last) return `No ${name} is known over this time.`;
  const filled = points.filter(({ isFilled }) => isFilled).length / points.length;
  const share = filled > 0.005 ? ` About ${Math.ceil(filled * 100)} % of it was filled, not measured.` : '';
  return `${name}, ${spokenTime(new Date(first.at), now, zone)} to ${spokenTime(new Date(last.at), now, zone)}.${share}`;
}

export function airPointWords(point: AirPoint, now: Date, zone: string): string {
  const { at, temperatureC, relativeHumidityPercent, vapourGramsPerM3, isFilled } = point;
  const vapour = vapourGramsPerM3 === null ? '' : `, ${vapourGramsPerM3.toFixed(1)}\u00a0g/m³ water`;
  return `${spokenTime(new Date(at), now, zone)}: ${air(temperatureC, relativeHumidityPercent)}${vapour}${isFilled ? ', filled' : ''}`;
}
