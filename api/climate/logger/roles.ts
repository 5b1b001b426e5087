/** What each column of a section is for. */
import { columnsOfClock } from './clock.ts';
import { contentsOf, isAirQuantity, isWorded, mostly } from './contents.ts';
import type { Content } from './contents.ts';
import type { Unit } from './file.ts';
import { HUMIDITY, TEMPERATURE } from './file.ts';
import { meaningOf, quantityOfUnit } from './quantity.ts';
import type { Section } from './section.ts';

export type ValueColumn = {
  column: number;
  /** As in the file, or `column 2`. */
  title: string;
  /** Null when neither heading nor unit tells: asked for. */
  quantity: string | null;
  unit: Unit | null;
  sensor: string;
};

export type Roles = {
  values: ValueColumn[];
  /** Columns that say, row by row, whose, which and in what unit the value is; -1 for none. */
  sensor: number;
  quantity: number;
  unit: number;
  /** The column of the row's offset or zone; -1 for none. */
  zone: number;
  /** Columns of words: events, states. */
  notes: number[];
};

const SENSOR_HEADING =
  /\b(?:sensors?|probe|device|logger|serial|s\/?n|channel|ch|kanal|station|node|location|place|site|position|room|raum|tag|name|fuhler|gerat|capteur|sonde|label|id|unit id|mac|address)\b/;
const QUANTITY_HEADING = /quantity|parameter|measure|variable|type|kind|messgro|grandeur|metric|observation/;
const VALUE_HEADING = /value|reading|wert|valeur|valor|result|data/;

export function rolesOf(section: Section): Roles {
  const contents = contentsOf(section);
  const times = columnsOfClock(section.clock);
  const plain = section.heading.names.map((name) => name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase());
  const free = contents.map((_, column) => column).filter((column) => !times.includes(column));
  const worded = free.filter((column) => isWorded(contents[column]));
  const quantity =
    worded.find(
      (column) =>
        mostly(contents[column]?.quantities, contents[column]) &&
        [...(contents[column]?.different ?? [])].some(isAirQuantity),
    ) ?? -1;
  const unit = worded.find((column) => column !== quantity && mostly(contents[column]?.units, contents[column])) ?? -1;
  const sensor =
    free.find((column) => column !== quantity && column !== unit && isSensor(column, plain, contents)) ?? -1;
  const zone =
    free.find(
      (column) => mostly(contents[column]?.zones, contents[column]) && isZone(plain[column] ?? '', contents[column]),
    ) ?? -1;
  const taken = [quantity, unit, sensor, zone];
  const notes = worded.filter((column) => !taken.includes(column));
  const numeric = free.filter((column) => !taken.includes(column) && !notes.includes(column));
  const values = numeric
    .map((column) => valueColumn(section, column, contents[column]))
    .filter((value) => value !== null);
  return {
    values:
      quantity >= 0
        ? longForm(values, plain)
        : oneSensor(
            section,
            values.map((value) => withSensor(value, values)),
          ),
    sensor,
    quantity,
    unit,
    zone,
    notes,
  };
}

/** `+02` under a temperature is a temperature. */
function isZone(heading: string, content: Content | undefined): boolean {
  const said = /zone|\btz\b|utc|gmt|offset/.test(heading);
  return (
    said ||
    (content !== undefined &&
      content.looks.number === 0 &&
      [...content.different].some((cell) => /[:/]|utc|gmt/i.test(cell)))
  );
}

/** Names that come again and again; a number only under a heading that says so. */
function isSensor(column: number, headings: readonly string[], contents: readonly Content[]): boolean {
  const content = contents[column];
  const heading = (headings[column] ?? '').replace(/_/g, ' ');
  if (!content || content.cells === 0) return false;
  const said = SENSOR_HEADING.test(heading) && meaningOf(heading).quantity === null;
  const repeats = content.different.size <= Math.max(1, content.cells / 2);
  if (isWorded(content)) return heading === '' ? repeats && content.cells >= 3 : said;
  return said && repeats && content.looks.measured === 0 && [...content.different].every((cell) => /^\w+$/.test(cell));
}

function valueColumn(section: Section, column: number, content: Content | undefined): ValueColumn | null {
  const { heading, facts } = section;
  const name = heading.names[column] ?? '';
  const numbers = content ? content.looks.number + content.looks.measured : 0;
  const meaning = meaningOf(name);
  if (numbers === 0 && meaning.quantity === null) return null;
  const group = heading.groups[column] ?? '';
  const grouped = meaningOf(group);
  const unit = heading.units[column] ?? meaning.unit ?? grouped.unit ?? content?.cellUnit ?? null;
  const isRowNumber = name === '' && content?.rising === true && content.looks.number > 2 && column === 0;
  const quantity = meaning.quantity ?? quantityOfUnit(unit) ?? grouped.quantity ?? known(name, isRowNumber);
  const sensor = [grouped.quantity === null ? group : grouped.sensor, meaning.sensor]
    .filter((part) => part !== '')
    .join(' ');
  const title = name !== '' ? name : `column ${column + 1}`;
  const said = quantity === TEMPERATURE ? facts.temperatureUnit : quantity === HUMIDITY ? facts.humidityUnit : null;
  return { column, title, quantity, unit: quantityOfUnit(unit) === quantity ? unit : said, sensor };
}

/** Columns that no bench calls air: the row's number. */
function known(name: string, isRowNumber: boolean): string | null {
  return isRowNumber ||
    /^(?:#|no\.?|nr\.?|record(?: ?(?:no\.?|number))?|rec|index|idx|row|sample|count|n|id|line|scan|entry)$/i.test(
      name.trim(),
    )
    ? 'row number'
    : null;
}

/** Columns of one quantity whose headings speak of none are named by these headings. */
function withSensor(value: ValueColumn, all: readonly ValueColumn[]): ValueColumn {
  const isBare = value.sensor === '' && !/^column \d+$/.test(value.title) && meaningOf(value.title).quantity === null;
  const alike = all.filter(({ quantity }) => quantity === value.quantity).length;
  return isBare && alike > 1 ? { ...value, sensor: value.title } : value;
}

/** One temperature and one humidity are one device, however its channels are called: `CH1 temp`, `CH2 humidity`. */
function oneSensor({ heading }: Section, values: readonly ValueColumn[]): ValueColumn[] {
  const [warm, warmer] = values.filter(({ quantity }) => quantity === TEMPERATURE);
  const [damp, damper] = values.filter(({ quantity }) => quantity === HUMIDITY);
  const isOne = warm && damp && !warmer && !damper && heading.groups.length === 0 && warm.sensor !== damp.sensor;
  return values.map((value) => (isOne && (value === warm || value === damp) ? { ...value, sensor: '' } : value));
}

/** With a column of quantities one column holds the values. */
function longForm(values: readonly ValueColumn[], headings: readonly string[]): ValueColumn[] {
  const said = values.find(
    ({ column }) => VALUE_HEADING.test(headings[column] ?? '') && !QUANTITY_HEADING.test(headings[column] ?? ''),
  );
  const value = said ?? values.find(({ quantity }) => quantity === null) ?? values[0];
  return value ? [value] : [];
}
