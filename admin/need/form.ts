// The form of a need: which fields it asks by what is needed, what stands in them at first, and what the API takes of them.
import { emptyOf, readFields, type Choice, type FieldSpec, type Read, type Typed } from '../act/field.ts';
import { labClock } from '../say/time.ts';
import type { Need, NeedKind, NeedStock } from './questions.ts';

export const kinds: readonly { value: NeedKind; words: string }[] = [
  { value: 'PLATES', words: 'Plates' },
  { value: 'SORBENT', words: 'Dry sorbent' },
  { value: 'COLUMN', words: 'A column' },
];

export const weekdayNames = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

/** What there is to choose from. */
export interface Choosing {
  plates: readonly Choice[];
  powder: readonly Choice[];
  rooms: readonly Choice[];
}

const chosen = (names: readonly string[]): Choice[] => {
  const often = new Map<string, number>();
  for (const name of names) often.set(name, (often.get(name) ?? 0) + 1);
  return [...often].sort((a, b) => b[1] - a[1]).map(([name]) => ({ value: name, words: name }));
};

/** Sorbents by what is in stock of them, the most containers first. */
export const choosingOf = ({ boxes, powder }: NeedStock, rooms: readonly Choice[]): Choosing => ({
  plates: chosen(boxes.nodes.map(({ sorbent }) => sorbent.name)),
  powder: chosen(powder.nodes.map(({ sorbent }) => sorbent.name)),
  rooms,
});

const backings: readonly Choice[] = [
  { value: 'GLASS', words: 'glass' },
  { value: 'ALUMINIUM', words: 'aluminium' },
  { value: 'PLASTIC', words: 'plastic' },
];
const regimes: readonly Choice[] = [
  { value: 'DRY', words: 'dry until spotted' },
  { value: 'ROOM', words: 'equilibrated in the room' },
  { value: 'SALT', words: 'equilibrated over a salt' },
];
const sizings: readonly Choice[] = [
  { value: 'SAMPLE', words: 'the sample’s mass and ΔRf' },
  { value: 'BED', words: 'diameter and bed length' },
];
const weights: readonly Choice[] = [
  { value: '1', words: 'as usual' },
  { value: '2', words: 'more' },
  { value: '4', words: 'much more' },
  { value: '8', words: 'before all else' },
];

const sorbent = (choices: readonly Choice[], label: string): FieldSpec => ({
  name: 'sorbent',
  label,
  kind: 'choice',
  choices,
});
const mobilePhase: FieldSpec = {
  name: 'mobilePhase',
  label: 'Mobile phase',
  kind: 'text',
  hint: 'Such as hexane:ethyl acetate 4:1.',
};

function whatFields(typed: Typed, { plates, powder }: Choosing): FieldSpec[] {
  if (typed['kind'] === 'SORBENT') {
    return [
      sorbent(powder, 'Sorbent'),
      { name: 'dryGrams', label: 'How much, counted dry', kind: 'number', unit: 'g' },
    ];
  }
  if (typed['kind'] === 'COLUMN') {
    return [
      sorbent(powder, 'Sorbent'),
      { name: 'sizedBy', label: 'Sized by', kind: 'choice', choices: sizings },
      ...(typed['sizedBy'] === 'BED'
        ? ([
            { name: 'diameterMm', label: 'Inner diameter', kind: 'number', unit: 'mm' },
            { name: 'bedLengthMm', label: 'Length of the bed', kind: 'number', unit: 'mm' },
          ] as const)
        : ([
            { name: 'sampleMg', label: 'Sample', kind: 'number', unit: 'mg' },
            { name: 'deltaRf', label: 'ΔRf of what is to be parted', kind: 'number', hint: '0.1 or more.' },
          ] as const)),
      mobilePhase,
    ];
  }
  return [
    { name: 'plates', label: 'How many', kind: 'number' },
    sorbent(plates, 'Plates'),
    { name: 'regime', label: 'Kept', kind: 'choice', choices: regimes },
    ...(typed['regime'] === 'SALT'
      ? ([{ name: 'regimeHumidityPercent', label: 'At', kind: 'number', unit: '% RH' }] as const)
      : []),
    { name: 'isForExtraction', label: 'for extraction, washed in its mobile phase', kind: 'tick', optional: true },
    ...(typed['isForExtraction'] === 'yes' ? [mobilePhase] : []),
  ];
}

/** Seldom said; folded away. */
function moreFields(typed: Typed): FieldSpec[] {
  const kind = typed['kind'];
  const optional = true;
  return [
    ...(kind === 'PLATES'
      ? ([
          { name: 'backing', label: 'Backing', kind: 'choice', choices: backings, optional, hint: 'Empty: any.' },
          { name: 'unwashed', label: 'need no pre-wash', kind: 'tick', optional },
        ] as const)
      : []),
    ...(kind === 'SORBENT'
      ? ([
          {
            name: 'limitWaterFraction',
            label: 'Most water, dry basis',
            kind: 'number',
            unit: '%',
            scale: 0.01,
            optional,
            hint: 'Empty: its band.',
          },
        ] as const)
      : []),
    ...(kind === 'COLUMN'
      ? ([
          { name: 'columnVolumes', label: 'Condition with', kind: 'number', unit: 'column volumes', optional },
          { name: 'flowMlPerMin', label: 'Flow', kind: 'number', unit: 'mL/min', optional },
        ] as const)
      : []),
    { name: 'lotNumber', label: 'Only of lot', kind: 'text', optional, hint: 'Empty: the best there is.' },
    { name: 'priority', label: 'It matters', kind: 'choice', choices: weights },
    { name: 'note', label: 'Note', kind: 'text', optional },
  ];
}

export interface Asked {
  what: FieldSpec[];
  who: FieldSpec[];
  more: FieldSpec[];
}

/** The fields as they stand by what was typed so far. */
export const fieldsOf = (typed: Typed, choosing: Choosing): Asked => ({
  what: whatFields(typed, choosing),
  who: [
    { name: 'at', label: 'Ready at', kind: 'time' },
    { name: 'room', label: 'Where', kind: 'choice', choices: choosing.rooms, optional: true, hint: 'Empty: anywhere.' },
    { name: 'forWhom', label: 'For whom, or for what', kind: 'text' },
  ],
  more: moreFields(typed),
});

/** Tomorrow at nine, as the field of a time holds it. */
export const tomorrowAtNine = (now: Date, zone: string): string =>
  `${labClock(new Date(now.getTime() + 86_400_000), zone).slice(0, 10)}T09:00`;

/** An empty form, with what is most likely meant. */
export function emptyNeed(choosing: Choosing, at: string): Typed {
  const all = (['PLATES', 'SORBENT', 'COLUMN'] as const).flatMap((kind) => {
    const { what, who, more } = fieldsOf({ kind }, choosing);
    return [...what, ...who, ...more];
  });
  const sorbents = { platesOf: choosing.plates[0]?.value ?? '', powderOf: choosing.powder[0]?.value ?? '' };
  return { ...emptyOf(all), kind: 'PLATES', ...sorbents, sorbent: sorbents.platesOf, at, again: 'once', untilDay: '' };
}

const figure = (value: number | null | undefined, times = 1): string =>
  value === null || value === undefined ? '' : String(Number((value * times).toPrecision(8)));

/** What a need says now, to be changed. */
export function typedOf(need: Need, choosing: Choosing, zone: string): Typed {
  const at = labClock(new Date(need.at), zone);
  const regime = need.regime === 'EQUILIBRATED' ? (need.regimeHumidityPercent === null ? 'ROOM' : 'SALT') : 'DRY';
  return {
    ...emptyNeed(choosing, at),
    kind: need.kind,
    sorbent: need.sorbent.name,
    plates: figure(need.plates),
    backing: need.backing ?? '',
    regime,
    regimeHumidityPercent: figure(need.regimeHumidityPercent),
    isForExtraction: need.isForExtraction ? 'yes' : '',
    unwashed: need.kind === 'PLATES' && !need.isPreWashed ? 'yes' : '',
    mobilePhase: need.mobilePhase ?? '',
    dryGrams: figure(need.dryGrams),
    limitWaterFraction: figure(need.limitWaterFraction, 100),
    sizedBy: need.sampleMg === null ? 'BED' : 'SAMPLE',
    sampleMg: figure(need.sampleMg),
    deltaRf: figure(need.deltaRf),
    diameterMm: need.sampleMg === null ? figure(need.column?.diameterMm) : '',
    bedLengthMm: need.sampleMg === null ? figure(need.column?.bedLengthMm) : '',
    lotNumber: need.isLotWished ? (need.lot?.lotNumber ?? '') : '',
    room: need.room?.name ?? '',
    forWhom: need.forWhom,
    note: need.note ?? '',
    priority: String(need.priority),
  };
}

/** The days that are ticked: Monday 1 to Sunday 7. */
export const weekdaysIn = (typed: Typed): number[] =>
  weekdayNames.flatMap((_, i) => (typed[`day${i + 1}`] === 'yes' ? [i + 1] : []));

/** What may be said of each kind besides what all say. */
const ofKind: Record<NeedKind, readonly string[]> = {
  PLATES: ['plates', 'backing', 'isForExtraction', 'isPreWashed', 'mobilePhase', 'regime', 'regimeHumidityPercent'],
  SORBENT: ['dryGrams', 'limitWaterFraction'],
  COLUMN: ['diameterMm', 'bedLengthMm', 'sampleMg', 'deltaRf', 'mobilePhase', 'columnVolumes', 'flowMlPerMin'],
};
const ofAll = ['lotNumber', 'room', 'note'];

/** What was typed as the API takes it; `isWhole` says what is empty too, so that it is emptied there. */
export function needIn(
  typed: Typed,
  choosing: Choosing,
  toInstant: (text: string) => Date | null,
  isWhole = false,
): { input: Record<string, unknown>; wrong: Read['wrong'] } {
  const { what, who, more } = fieldsOf(typed, choosing);
  const { values, wrong } = readFields([...what, ...who, ...more], typed, toInstant);
  const kind = typed['kind'] as NeedKind;
  const { sizedBy: _, unwashed, regime, priority, ...rest } = values;
  const input: Record<string, unknown> = { ...rest, priority: Number(priority ?? 1) };
  if (kind === 'PLATES') {
    input['regime'] = regime === 'DRY' ? 'DRY_UNTIL_SPOTTED' : 'EQUILIBRATED';
    input['isPreWashed'] = unwashed !== true;
    input['isForExtraction'] = values['isForExtraction'] === true;
  }
  if (isWhole) for (const name of [...ofKind[kind], ...ofAll]) input[name] ??= null;
  return { input, wrong };
}

/** On which weekdays it comes again; nothing when it comes once. */
export function againIn(typed: Typed): { again: Record<string, unknown>; wrong: string } {
  if (typed['again'] !== 'days') return { again: {}, wrong: '' };
  const weekdays = weekdaysIn(typed);
  if (weekdays.length === 0) return { again: {}, wrong: 'tick the days on which it is needed' };
  const untilDay = typed['untilDay'] ?? '';
  return { again: { weekdays, ...(untilDay ? { untilDay } : {}) }, wrong: '' };
}
