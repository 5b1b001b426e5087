/** What the lines before the readings say of the whole file: zone, sensor, unit, order of dates, start and interval. */
import { headingScore, uncommented } from './heading.ts';
import type { DateOrder, Unit } from './file.ts';
import { numberOf } from './number.ts';
import { saidOrderOf } from './order.ts';
import { offsetOf } from './stamp.ts';
import { isTemperatureUnit, unitOf } from './unit.ts';
import { fixedZone, UTC, zoneNamed } from './zone.ts';
import type { Zone } from './zone.ts';

export type Facts = {
  zone: Zone | null;
  sensor: string | null;
  temperatureUnit: Unit | null;
  humidityUnit: Unit | null;
  dates: DateOrder | null;
  start: string | null;
  everySeconds: number | null;
};

export function factsOf(preamble: readonly string[][], names: readonly string[]): Facts {
  const lines = preamble.map((row) => row.map(uncommented).filter((cell) => cell !== ''));
  const texts = lines.map((cells) => cells.join(' '));
  const units = lines.flatMap(unitsSaid);
  return {
    zone: firstOf(names, zoneInName) ?? firstOf(lines, zoneSaid),
    sensor: sensorSaid(lines),
    temperatureUnit: units.find(isTemperatureUnit) ?? null,
    humidityUnit: units.find((unit) => !isTemperatureUnit(unit)) ?? null,
    dates: firstOf([...names, ...texts], saidOrderOf),
    start: firstOf(texts, startSaid),
    everySeconds: firstOf(texts, intervalSaid),
  };
}

export function firstOf<From, To>(all: readonly From[], find: (one: From) => To | null): To | null {
  for (const one of all) {
    const found = find(one);
    if (found !== null) return found;
  }
  return null;
}

/** `t_UTC+2`, `Time (Europe/Berlin)`, `Date/Time (GMT+01:00)`, `time [CET]`. */
export function zoneInName(name: string): Zone | null {
  return (
    zoneIn(name) ?? firstOf([...name.matchAll(/[([]\s*([A-Z]{3,4})\s*[)\]]/g)], (match) => zoneNamed(match[1] ?? ''))
  );
}

function zoneIn(text: string): Zone | null {
  const offset = /(?:^|[^\p{L}])(?:utc|gmt)\s*([+\-\u2212]\s*\d{1,2}(?::?\d{2})?)(?!\d)/iu.exec(text);
  const minutes = offset ? offsetOf(offset[1] ?? '') : null;
  if (minutes !== null) return fixedZone(minutes);
  const named = firstOf(text.match(/[A-Z]\w+\/[A-Z][\w+-]+(?:\/[A-Z]\w+)?/g) ?? [], zoneNamed);
  if (named) return named;
  return /(?:^|[^\p{L}])(?:utc|gmt|coordinated universal)(?![\p{L}+-])/iu.test(text) ? UTC : null;
}

const ABOUT_ZONE =
  /time ?zone|zeitzone|\btz\b|(?:utc|gmt) ?offset|fuseau|zona horaria|fuso|tijdzone|tidszon|(?:all |local |clock )?times? (?:are|is|in|as|given)\b|^zone\b|clock|^(?:local )?time\s*[:=]/i;

/** Only a line about the zone counts: "exported at 10:00 UTC" says nothing of the readings. */
function zoneSaid(cells: readonly string[]): Zone | null {
  const text = cells.join(' ');
  if (!ABOUT_ZONE.test(text)) return null;
  const value = cells.length > 1 ? cells.slice(1).join(' ') : text.replace(/^[^:=]*[:=]\s*/, '');
  const bare = /offset/i.test(text) ? numberOf(value) : NaN;
  if (!Number.isNaN(bare)) return hoursOrMinutes(bare);
  return zoneNamed(value) ?? zoneIn(value) ?? firstOf(value.split(/[\s,;()]+/), zoneNamed);
}

/** A bare offset: hours up to 14, else minutes. */
function hoursOrMinutes(offset: number): Zone | null {
  const minutes = Math.abs(offset) <= 14 ? offset * 60 : offset;
  return Math.abs(minutes) <= 14 * 60 ? fixedZone(minutes) : null;
}

const KEY = /^(.{2,40}?)\s*(?:[:=]\s*|\s(?=\S+$))(.+)$/;

function keyed(cells: readonly string[]): [key: string, value: string] | null {
  const [key = '', value] = cells;
  if (value !== undefined && cells.length === 2) return [key.replace(/\s*[:=]$/, '').toLowerCase(), value];
  const parts = cells.length === 1 ? KEY.exec(key) : null;
  if (parts && !/[:=]/.test(key) && !/\d/.test(parts[2] ?? '')) return null;
  return parts ? [(parts[1] ?? '').toLowerCase(), (parts[2] ?? '').trim()] : null;
}

/** Keys of a line that names the sensor, the best first. */
const SENSOR_KEYS = [
  /^(?:sensor|probe|fuhler|capteur|sonde)(?: ?(?:name|id|label))?$/,
  /^(?:logger|device|instrument|unit|gerat\w*|station|node|channel|kanal|location|place|position|ort|site)(?: ?(?:name|id|label|no\.?))?$/,
  /^(?:name|label|tag|title|description)$/,
  /^(?:(?:logger|device|sensor|probe) )?(?:serial(?: ?(?:number|no\.?))?|s\/?n|sn|seriennummer|numero de serie|id)$/,
];

/** What happens to a logger is not its name: `Logger stopped`. */
const HAPPENING =
  /^(?:start|stop|paus|resum|connect|disconn|reset|restart|launch|read|on\b|off\b|ok\b|low|full|lost|found|error|fail|button|end|begin|type|model|not)/i;

/** The sensor's name, from the best of the lines that give one. */
export function sensorSaid(lines: readonly string[][]): string | null {
  const pairs = lines
    .flatMap((cells) => (headingScore(cells) >= 2 ? [] : [keyed(cells)]))
    .filter((pair) => pair !== null);
  return firstOf(
    SENSOR_KEYS,
    (pattern) =>
      pairs.find(
        ([key, value]) =>
          pattern.test(key.normalize('NFKD').replace(/\p{M}/gu, '')) &&
          !HAPPENING.test(value) &&
          unitOf(value) === null,
      )?.[1] ?? null,
  );
}

/** Units in a line that is about units or names a quantity. */
function unitsSaid(cells: readonly string[]): Unit[] {
  const text = cells.join(' ');
  if (!/unit|einheit|unite|unidad|temp|hum|feucht|\brh\b/i.test(text)) return [];
  const marked = [
    ...text.matchAll(/(?:°|deg(?:rees?)? ?)\s?[CFK]\b|\b(?:Celsius|Fahrenheit|Kelvin)\b|%\s?(?:RH|rF)?/gi),
  ].map((match) => match[0]);
  const last = keyed(cells)?.[1] ?? '';
  return [...marked, ...(marked.length === 0 ? [last] : [])].map(unitOf).filter((unit) => unit !== null);
}

function startSaid(text: string): string | null {
  return /^(?:start|began|begin|first|beginn|debut|inicio)[^:=\d]*[:=]?\s*(\d.*)$/i.exec(text)?.[1]?.trim() ?? null;
}

const SECONDS: readonly (readonly [RegExp, number])[] = [
  [/^(?:s|sec|second|sek)/i, 1],
  [/^(?:m|min|minute)/i, 60],
  [/^(?:h|hr|hour|std|stunde)/i, 3600],
];

/** `Interval: 5 min`, `Sample rate (s): 300`, `Every 00:10:00`. */
function intervalSaid(text: string): number | null {
  if (!/interval|every|period|sampl|rate|takt/i.test(text)) return null;
  const clock = /(\d{1,2}):(\d{2}):(\d{2})/.exec(text);
  if (clock) return +(clock[1] ?? 0) * 3600 + +(clock[2] ?? 0) * 60 + +(clock[3] ?? 0);
  const number = /([\d.,]+)\s*(\p{L}*)/u.exec(text.replace(/^\D*/, ''));
  const unit = number?.[2] || (/[([]\s*(\p{L}+)\s*[)\]]/u.exec(text)?.[1] ?? '');
  const size = SECONDS.find(([pattern]) => pattern.test(unit))?.[1];
  const count = numberOf(number?.[1] ?? '');
  return size !== undefined && count > 0 ? count * size : null;
}
