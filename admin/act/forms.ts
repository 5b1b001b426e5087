// The forms of a container's events: which fields each asks, and whom it fits.
import type { Line } from '../fields.ts';
import { dryingCaution, wettingHeat } from './cautions.ts';
import type { EventName } from './acts.ts';
import { activate, equilibrate, prewash, solventGone } from '../activate/forms.ts';
import { bases, lids, open, packingMethods, weighedParts, weighingMethods } from './choices.ts';
import type { Choice, FieldSpec } from './field.ts';
import { inOvenFields } from './in-oven.ts';

export interface Names {
  rooms: readonly Choice[];
  vessels: readonly Choice[];
}

export interface ActSpec {
  name: EventName;
  /** On the button that opens the form, and above it. */
  title: string;
  /** On the button that records it. */
  record: string;
  fields: readonly FieldSpec[];
  /** Told at once, without a form, unless it was at another time. */
  atOnce?: boolean;
  caution?: string;
  /** What to do instead when it is refused. */
  otherwise?: EventName;
  /** Its water can be had from the weighings of a loss on drying. */
  fromWeighings?: boolean;
  /** What an oven would leave is said beside its fields. */
  forecast?: boolean;
}

const rules = 'Follow your lab’s rules and the safety data sheet.';
const powder = `Pour and tap dry powder in a hood or with the mask your lab prescribes. ${rules}`;

const gramsField = (label: string, hint?: string): FieldSpec => {
  return { name: 'grams', label, kind: 'number', unit: 'g', ...(hint ? { hint } : {}) };
};
const platesField: FieldSpec = { name: 'plates', label: 'How many plates', kind: 'number' };
const whyField: FieldSpec = { name: 'why', label: 'Why', kind: 'text' };

function amountOf(of: Line): FieldSpec {
  return of.kind === 'PLATE_BOX' ? platesField : gramsField('How much, as the balance shows it');
}

function taking(of: Line, { rooms, vessels }: Names): ActSpec {
  const room: FieldSpec = {
    name: 'room',
    label: 'Where to',
    kind: 'choice',
    choices: rooms,
    optional: true,
    hint: 'Empty: stays in the same room.',
  };
  if (of.kind === 'PLATE_BOX')
    return {
      name: 'takePlates',
      title: 'Take',
      record: 'Take them',
      fields: [platesField, room],
      otherwise: 'recordCount',
    };
  const into: FieldSpec = {
    name: 'vessel',
    label: 'Into',
    kind: 'choice',
    choices: vessels,
    optional: true,
    hint: 'Empty: used at once, nothing is kept of it.',
  };
  const stands: FieldSpec = {
    name: 'closure',
    label: 'The new one stands',
    kind: 'choice',
    choices: [...lids, open],
    optional: true,
    hint: 'Empty: well closed.',
  };
  const fields = [gramsField('How much, as the balance shows it'), into, stands, room];
  return { name: 'takePortion', title: 'Take', record: 'Take it', fields, caution: powder, otherwise: 'recordCount' };
}

const weighing: ActSpec = {
  name: 'recordWeighing',
  title: 'Weigh',
  record: 'Record weighing',
  fromWeighings: true,
  fields: [
    { name: 'waterFraction', label: 'Water found', kind: 'number', unit: '%', scale: 0.01 },
    {
      name: 'basis',
      label: 'Counted on',
      kind: 'choice',
      hint: 'As received: of what was weighed in. Dry: of what was left.',
      choices: bases,
    },
    { name: 'of', label: 'Of', kind: 'choice', choices: weighedParts },
    { name: 'method', label: 'How', kind: 'choice', choices: weighingMethods },
    {
      name: 'temperatureC',
      label: 'Dried at',
      kind: 'number',
      unit: '°C',
      initial: '150',
      hint: 'Loss on drying counts solvent too: has it touched any?',
      when: { field: 'method', is: 'LOSS_ON_DRYING' },
    },
  ],
};

/** What one does every day, in the order of the buttons. */
export function everyday(of: Line, names: Names): ActSpec[] {
  const lid: ActSpec = of.isOpen
    ? {
        name: 'closeContainer',
        title: 'Close',
        record: 'Close it',
        atOnce: true,
        fields: [
          {
            name: 'closure',
            label: 'How',
            kind: 'choice',
            choices: lids,
            initial: of.usualClosure === 'OPEN' ? 'WELL_CLOSED' : of.usualClosure,
          },
        ],
      }
    : { name: 'openContainer', title: 'Open', record: 'Open it', atOnce: true, fields: [] };
  const move: ActSpec = {
    name: 'moveContainer',
    title: 'Move',
    record: 'Move it',
    fields: [
      { name: 'room', label: 'To', kind: 'choice', choices: names.rooms.filter(({ value }) => value !== of.room.name) },
    ],
  };
  const count: ActSpec = {
    name: 'recordCount',
    title: 'Count',
    record: 'Record count',
    fields: [amountOf(of)],
    caution: 'The book bends to the shelf: what you find is what counts.',
  };
  return [lid, taking(of, names), weighing, move, count];
}

/** What else can have happened to it. */
export function rarer(of: Line, names: Names): ActSpec[] {
  const isColumn = of.kind === 'COLUMN';
  const isBox = of.kind === 'PLATE_BOX';
  const all: (ActSpec & { fits?: boolean })[] = [
    { name: 'mixContainer', title: 'Mixed or rolled', record: 'Record it', fields: [], fits: !isColumn && !isBox },
    {
      name: 'recordDrying',
      title: 'Dried',
      record: 'Record drying',
      fields: [
        { name: 'temperatureC', label: 'Oven', kind: 'number', unit: '°C' },
        { name: 'minutes', label: 'For', kind: 'number', unit: 'min' },
        {
          name: 'waterFraction',
          label: 'Water found afterwards, dry basis',
          kind: 'number',
          unit: '%',
          scale: 0.01,
          optional: true,
        },
        { name: 'vacuum', label: 'under vacuum', kind: 'tick', optional: true },
        ...inOvenFields(isBox),
      ],
      forecast: true,
      fits: !isBox,
      caution: dryingCaution(null),
    },
    {
      name: 'recordEquilibration',
      title: 'Equilibrated',
      record: 'Record it',
      fields: [
        { name: 'humidityPercent', label: 'At', kind: 'number', unit: '% RH' },
        { name: 'temperatureC', label: 'Temperature', kind: 'number', unit: '°C', initial: '22' },
      ],
      fits: !isBox,
    },
    {
      name: 'packColumn',
      title: 'Column packed',
      record: 'Record column',
      fits: !isColumn && !isBox,
      caution: powder,
      fields: [
        { name: 'innerDiameterMm', label: 'Inner diameter', kind: 'number', unit: 'mm' },
        { name: 'bedLengthMm', label: 'Bed length', kind: 'number', unit: 'mm' },
        { ...gramsField('How much went in', 'Empty: worked out from the bed.'), optional: true },
        { name: 'method', label: 'Packed', kind: 'choice', choices: packingMethods, optional: true },
        { name: 'tapping', label: 'Tapping', kind: 'text', optional: true },
        { name: 'flowMlPerMin', label: 'Settled at a flow of', kind: 'number', unit: 'mL/min', optional: true },
        { name: 'pressureBar', label: 'Or a pressure of', kind: 'number', unit: 'bar', optional: true },
        { name: 'packer', label: 'Packer', kind: 'text', optional: true },
        { name: 'dyeTest', label: 'Dye test', kind: 'text', optional: true },
      ],
    },
    {
      name: 'conditionColumn',
      title: 'Column conditioned',
      record: 'Record it',
      fields: [
        { name: 'mobilePhase', label: 'Mobile phase', kind: 'text', optional: true },
        {
          ...{ name: 'columnVolumes', label: 'Column volumes', kind: 'number', optional: true },
          hint: '2 to 3 is usual. Empty: from flow and minutes.',
        },
        { name: 'flowMlPerMin', label: 'Flow', kind: 'number', unit: 'mL/min', optional: true },
        { name: 'minutes', label: 'For', kind: 'number', unit: 'min', optional: true },
      ],
      fits: isColumn,
      caution: wettingHeat,
    },
    {
      name: 'interrupt',
      title: 'Interrupted',
      record: 'Record it',
      fields: [{ ...whyField, optional: true }],
      fits: isColumn || isBox,
    },
    {
      name: 'combineContainers',
      title: 'Emptied into another',
      record: 'Record it',
      fits: !isColumn,
      caution: powder,
      fields: [
        { name: 'into', label: 'Into, its code', kind: 'text', hint: 'Of the same lot: lots are not mixed.' },
        ...(isBox ? [] : [{ ...gramsField('How much', 'Empty: all that the book says is in it.'), optional: true }]),
      ],
    },
    {
      name: 'recordSolvent',
      title: 'Touched solvent',
      record: 'Record it',
      fields: [{ name: 'what', label: 'Which solvent or sample', kind: 'text', optional: true }],
      caution: 'From then on it is kept out of the oven.',
    },
    {
      name: 'setHabit',
      title: 'Opened by habit',
      record: 'Keep habit',
      fields: [
        { name: 'timesADay', label: 'Times a working day', kind: 'number' },
        { name: 'minutes', label: 'Each for', kind: 'number', unit: 'min' },
      ],
    },
    {
      name: 'recordLoss',
      title: 'Lost some',
      record: 'Record loss',
      fields: [gramsField('How much'), whyField],
      fits: !isBox,
    },
    { name: 'spendOnCheck', title: 'Spent on a check', record: 'Record it', fields: [amountOf(of)] },
    { name: 'finishContainer', title: 'Used up', record: 'It is used up', fields: [] },
    {
      name: 'discardContainer',
      title: 'Discarded',
      record: 'Record it',
      fields: [{ ...amountOf(of), optional: true, hint: 'Empty: all of it.' }, whyField],
    },
  ];
  return [
    ...everyday(of, names).map((act) => ({ ...act, atOnce: false })),
    ...(isBox ? [prewash(names), solventGone, activate(names), equilibrate(names)] : []),
    ...all.filter(({ fits }) => fits !== false),
  ];
}
