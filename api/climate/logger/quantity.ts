/** What a heading means: which quantity, in which unit, of which sensor. */
import { HUMIDITY, TEMPERATURE } from './file.ts';
import type { Unit } from './file.ts';
import { isTemperatureUnit, unitOf } from './unit.ts';

export type Meaning = {
  /** `temperature`, `relative humidity`, what else it is, or null when the heading does not say. */
  quantity: string | null;
  unit: Unit | null;
  /** What is left of the heading once quantity and unit are taken away: the sensor's name, or empty. */
  sensor: string;
};

/** Quantities that are not the air's temperature or relative humidity though their names or units may look so. First match wins. */
const OTHERS: readonly (readonly [name: string, pattern: RegExp])[] = [
  ['dew point', /dew|taupunkt|rosee|rocio|rugiada|dauwpunt|daggpunkt|dugpunkt|kastepiste/],
  ['frost point', /frost ?p/],
  ['wet-bulb temperature', /wet.?bulb|feuchtkugel/],
  ['heat index', /heat ?index|humidex|feels|hitzeindex|apparent/],
  ['mixing ratio', /mixing|humidity ratio|g\/kg/],
  ['absolute humidity', /\babs|g\/m/],
  ['vapour pressure', /vapou?r|\bvpd\b|dampfdruck/],
  ['pressure', /\bpress(?:ure|ion)?\b|druck|\bhpa\b|\bmbar\b|\bkpa\b|baro/],
  ['battery', /batt?er|\bbatt?\b|volt|akku|\bmv\b|\bv\b/],
  ['carbon dioxide', /\bco ?2\b|\bppm\b|carbon/],
  ['light', /\blux\b|light|licht|\blx\b/],
  ['signal', /rssi|signal|\bsnr\b|\bdbm?\b/],
  ['setting', /set ?point|alarm|limit|sollwert|threshold|offset/],
  ['soil or surface', /soil|surface|moisture|\bmould\b|\bmold\b/],
  ['inside of the logger', /\b(cpu|board|chip|die)\b/],
  ['elapsed time', /elapsed|duration|uptime|\bseconds?\b|\bminutes?\b/],
];

/** Summaries of an interval beside its mean. */
const SUMMARY = /(?:^|[^\p{L}])(min|max|minimum|maximum|lowest|highest|std|stdev|sd|dev|range)(?=$|[^\p{L}])/u;

const HUMIDITY_WORD =
  /\brel(?:ative|at|\.)?[. ]*(?:hum\p{L}*|luftf\p{L}*|feucht\p{L}*|f\b)|\br ?\.? ?[hf]\b\.?|\brh(?=\d|[ _]|$)|\b(?:rel)?hum(?:id|ed|)\p{L}*|\b(?:luft)?feucht\p{L}*|\blucht?vocht\p{L}*|\bvocht\p{L}*|\b(?:luft)?fukt\p{L}*|\b(?:luft)?fugt\p{L}*|\bumid\p{L}*|\bkosteus|\bwilgotn\p{L}*|\bvlhkost|\bhr\b|\bur\b/u;
const TEMPERATURE_WORD =
  /\b(?:air|room|raum|luft|lucht)?[ -]?temp\p{L}*\.?|\b(?:la?mpo)?lampotila|\bteplota|\bt(?: ?air)?\b|\bt(?=\d)|\bta\b/u;
const FUSED_UNIT = /\b(t|temp|temperature|rh|hum|humidity)(deg)?(c|f|k|pct|percent)\b/;
/** Words that name no sensor by themselves. */
const FILLER =
  /\b(?:avg|average|mean|mittel\p{L}*|values?|readings?|actual|current|ambient|relative|rel|deg|in|of|data)\b/gu;
const KINDS_OF_SENSOR = /^(?:(?:sensor|probe|channel|logger|device|ch)\s*)+$/;

export function meaningOf(heading: string): Meaning {
  const { unit, rest } = unitTaken(plainly(heading));
  const other = OTHERS.find(([, pattern]) => pattern.test(plainly(heading)));
  if (other) return { quantity: other[0], unit: null, sensor: '' };
  const { quantity, left } = quantityIn(rest);
  const known = quantity ?? quantityOfUnit(unit);
  const summary = SUMMARY.exec(rest)?.[1];
  if (known && summary) return { quantity: `${known}, ${summary}`, unit, sensor: '' };
  return { quantity: known, unit: agreeing(known, unit), sensor: known === null ? '' : sensorIn(heading, left) };
}

export function quantityOfUnit(unit: Unit | null): string | null {
  if (unit === null) return null;
  return isTemperatureUnit(unit) ? TEMPERATURE : HUMIDITY;
}

/** A unit of the other quantity is somebody's slip, or a channel named C; it is not this column's. */
function agreeing(quantity: string | null, unit: Unit | null): Unit | null {
  return quantityOfUnit(unit) === quantity ? unit : null;
}

function quantityIn(text: string): { quantity: string | null; left: string } {
  const humidity = HUMIDITY_WORD.exec(text);
  const word = humidity ?? TEMPERATURE_WORD.exec(text);
  if (!word) return { quantity: null, left: text };
  return {
    quantity: humidity ? HUMIDITY : TEMPERATURE,
    left: `${text.slice(0, word.index)} ${text.slice(word.index + word[0].length)}`,
  };
}

/** Lower case, no diacritics, underscores as spaces, `tempC` and `Temp1` taken apart at the change of case. */
function plainly(text: string): string {
  return text
    .replace(/[º˚]/g, '°')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/([a-z])([A-Z]+)\b/g, '$1 $2')
    .replace(/_/g, ' ')
    .toLowerCase()
    .trim();
}

/** The unit in brackets, behind a comma or slash, at the end, or grown onto the word. */
function unitTaken(text: string): { unit: Unit | null; rest: string } {
  for (const bracket of text.matchAll(/[([{<]\s*([^)\]}>]*?)\s*[)\]}>]/g)) {
    const unit = unitOf(bracket[1] ?? '');
    if (unit) return { unit, rest: text.replace(bracket[0], ' ').trim() };
  }
  const fused = FUSED_UNIT.exec(text);
  if (fused) return { unit: unitOf(fused[3] ?? ''), rest: text.replace(fused[0], fused[1] ?? '') };
  const whole = unitOf(text);
  if (whole) return { unit: whole, rest: /rh|rf|hr|r\.h/.test(text) ? 'rh' : '' };
  for (const part of text.matchAll(
    /(?:^|[\s,;:/|-]+)((?:[°º˚\ufffd]|deg(?:rees?)?\.?)?\s?(?:[cfk]|celsius|fahrenheit|kelvin)|%(?:\s?r\.?\s?[hf]\.?|\s?hr)?|pct|percent|fraction)(?=$|[\s,;:/|])/g,
  )) {
    const unit = unitOf(part[1] ?? '');
    if (unit && lettersAgree(text, part.index, part[1] ?? ''))
      return {
        unit,
        rest: `${text.slice(0, part.index)} ${rhKept(part[1] ?? '')}${text.slice(part.index + part[0].length)}`.trim(),
      };
  }
  return { unit: null, rest: text };
}

function rhKept(unit: string): string {
  return /r/.test(unit.replace('percent', '').replace('fraction', '')) ? 'rh ' : '';
}

/** A bare letter is a unit only right behind the word for temperature: `sensor C` is a name. */
function lettersAgree(text: string, at: number, written: string): boolean {
  return written.length > 1 || written === '%' || /(?:^|[\s,;:/|-])t(?:emp\p{L}*\.?)?$/u.test(text.slice(0, at));
}

/** A serial number where the heading has one, else the words that are neither quantity nor unit, as written. */
function sensorIn(heading: string, left: string): string {
  const serial = /(?:s\/?n|serial(?: (?:no\.?|number))?)\s*[:#.]?\s*([\w-]{2,})/i.exec(heading);
  if (serial) return serial[1] ?? '';
  const named = left
    .replace(FILLER, ' ')
    .replace(/[^\p{L}\p{N}#]+/gu, ' ')
    .trim();
  return named === '' || KINDS_OF_SENSOR.test(named) ? '' : asWritten(heading, named);
}

function asWritten(heading: string, lower: string): string {
  const words = lower.split(' ');
  const found = heading.match(/[\p{L}\p{N}#]+/gu) ?? [];
  return words.map((word) => found.find((candidate) => plainly(candidate) === word) ?? word).join(' ');
}

const TIME_WORD =
  /\b(date|time|datetime|date ?time|timestamp|time ?stamp|datum|zeit|uhrzeit|zeitstempel|zeitpunkt|heure|horodatage|fecha|hora|data|ora|tijd|tidpunkt|tid|dato|klokkeslaet|utc|gmt|local|unix|epoch|aika|paiva\p{L}*|when)\b/u;

export function isTimeWord(heading: string): boolean {
  return TIME_WORD.test(plainly(heading));
}
