// The estimate command's input in GraphQL form, and back to the command's own words.
import { builder } from '../builder.ts';
import { ClosureEnum } from '../stock/schema.ts';
import type { Closure } from '../database/generated/sqlite/client.ts';

const closureWords: Record<Closure, string> = {
  OPEN: 'open',
  LOOSELY_COVERED: 'loosely covered',
  WELL_CLOSED: 'well closed',
  TIGHT: 'tight',
  SEALED: 'sealed',
};

const number = (description: string) => ({ description });

const IsothermInput = builder.inputType('IsothermInput', {
  description: 'Water content over reference activity: a film and, for mesoporous sorbents, pores that fill.',
  fields: (t) => ({
    filmCapacity: t.float({ required: true, description: 'Capacity of the film, kg/kg.' }),
    filmC: t.float({ required: true, description: 'Strength C of the film, without unit.' }),
    filmK: t.float({ required: true, description: 'Strength K of the film, below 1.' }),
    poreCapacity: t.float(number('Water of filled pores, kg/kg; 0 unless given.')),
    poreActivity: t.float(number('Activity at which pores fill, 0 to 1.')),
    poreWidth: t.float(number('Width of that filling, in activity.')),
  }),
});

const SorbentInput = builder.inputType('ScenarioSorbentInput', {
  description: 'A sorbent of which no class is known.',
  fields: (t) => ({
    isotherm: t.field({ type: IsothermInput, required: true, description: 'How much water it holds.' }),
    bulkDensityKgPerM3: t.float({ required: true, description: 'Dry sorbent per bed volume, kg/m³.' }),
    voidFraction: t.float({ required: true, description: 'Void between the grains, of the bed volume.' }),
  }),
});

const ContainerInput = builder.inputType('ScenarioContainerInput', {
  description: 'A bed in a vessel (depth and diameter), or a plate (layer and area).',
  fields: (t) => ({
    bedDepthMm: t.float(number('Depth of the bed, mm.')),
    bedDiameterMm: t.float(number('Diameter of the bed, mm.')),
    headspaceMm: t.float(number('From the bed to the mouth, mm; 0 unless given.')),
    mouthDiameterMm: t.float(number('Diameter of the mouth, mm; the bed’s unless given.')),
    layerMm: t.float(number('Layer of a plate, mm.')),
    areaCm2: t.float(number('Area of a plate, cm².')),
    volumeL: t.float(number('Volume of the container, L.')),
    closure: t.field({ type: ClosureEnum, description: 'How its mouth stands.' }),
    closureConductanceM3PerS: t.float(number('Conductance of its closure, m³/s, instead of a class.')),
  }),
});

const StartInput = builder.inputType('ScenarioStartInput', {
  description: 'What it was at the beginning.',
  fields: (t) => ({
    at: t.field({ type: 'DateTime', required: true, description: 'When the scenario begins.' }),
    waterFraction: t.float(number('kg water per kg dry sorbent; unknown unless given.')),
  }),
});

const ReadingInput = builder.inputType('ScenarioReadingInput', {
  description: 'Room air; linear between readings, held beyond the ends.',
  fields: (t) => ({
    at: t.field({ type: 'DateTime', required: true, description: 'When it was read.' }),
    temperatureC: t.float({ required: true, description: 'Temperature, °C.' }),
    humidityPercent: t.float({ required: true, description: 'Relative humidity, %.' }),
  }),
});

const EventEnum = builder.enumType('ScenarioEventType', {
  description: 'What happens in a scenario.',
  values: {
    OPENED: { description: 'It is opened, and stands open.' },
    CLOSED: { description: 'It is closed.' },
    MIXED: { description: 'It is mixed, so that its water is even.' },
    TAKEN: { description: 'Some of it is taken.' },
    DRIED: { description: 'It is dried to a water content.' },
    WEIGHED: { description: 'Its water is measured.' },
  },
});

const EventInput = builder.inputType('ScenarioEventInput', {
  description: 'Something that happens in a scenario.',
  fields: (t) => ({
    at: t.field({ type: 'DateTime', required: true, description: 'When it happens.' }),
    type: t.field({ type: EventEnum, required: true, description: 'What happens.' }),
    closure: t.field({ type: ClosureEnum, description: 'For CLOSED: with which closure; tight unless given.' }),
    closureConductanceM3PerS: t.float(number('For CLOSED: a conductance, m³/s, instead of a class.')),
    grams: t.float(number('For TAKEN: dry grams.')),
    waterFraction: t.float(number('For DRIED and WEIGHED: kg water per kg dry sorbent.')),
  }),
});

export const ScenarioInput = builder.inputType('WhatIfScenarioInput', {
  description: 'A scenario without anything stored: the same as the input of the estimate command.',
  fields: (t) => ({
    sorbent: t.string(number('A class: silica, alumina, c18, magnesium silicate, cellulose, …')),
    sorbentNumbers: t.field({ type: SorbentInput, description: 'Its numbers, where no class fits.' }),
    container: t.field({ type: ContainerInput, required: true, description: 'What holds it.' }),
    start: t.field({ type: StartInput, required: true, description: 'What it was at the beginning.' }),
    climate: t.field({
      type: [ReadingInput],
      required: true,
      description: 'The air it stands in; at least one reading.',
    }),
    events: t.field({ type: [EventInput], description: 'What happens.' }),
    limitWaterFraction: t.float(number('Upper end of the band, kg/kg; the class’s default unless given.')),
    lowestWaterFraction: t.float(number('Lower end of the band, kg/kg.')),
    scoopGrams: t.float(number('The next scoop, g; 50 unless given.')),
    topMm: t.float(number('Depth of the reported top layer, mm; 10 unless given.')),
    filmMmPerS: t.float(number('Transfer at an open mouth, mm/s; 3 unless given.')),
    pressurePa: t.float(number('Air pressure, Pa; 101325 unless given.')),
    report: t.field({ type: ['DateTime'], required: true, description: 'When to tell.' }),
  }),
});

type Shape = typeof ScenarioInput.$inferInput;

/** Drops what was not given: the command knows its own defaults. */
function given<T extends Record<string, unknown>>(from: T): Partial<T> {
  const entries = Object.entries(from).filter(([, value]) => value !== null && value !== undefined);
  return Object.fromEntries(entries) as Partial<T>;
}

function lid(closure: Closure | null | undefined, conductance: number | null | undefined): unknown {
  if (typeof conductance === 'number') return { conductanceM3PerS: conductance };
  return closure ? closureWords[closure] : undefined;
}

/** In the words of the estimate command's file. */
export function rawScenario(input: Shape): unknown {
  const { sorbent, sorbentNumbers, container, start, climate, events, report, ...rest } = input;
  const { closure, closureConductanceM3PerS, ...sizes } = container;
  const isPlate = typeof sizes.layerMm === 'number';
  const numbers = sorbentNumbers && { ...sorbentNumbers, isotherm: given(sorbentNumbers.isotherm) };
  return {
    ...given(rest),
    ...given({ sorbent: sorbent ?? numbers }),
    container: {
      ...(isPlate && { kind: 'plate' }),
      ...given({ ...sizes, closure: lid(closure, closureConductanceM3PerS) }),
    },
    start: { at: start.at.toISOString(), waterFraction: start.waterFraction ?? null },
    climate: climate.map((one) => ({ ...one, at: one.at.toISOString() })),
    events: (events ?? []).map(({ type, at, closure: how, closureConductanceM3PerS: conductance, ...more }) =>
      given({ type: type.toLowerCase(), at: at.toISOString(), closure: lid(how, conductance), ...more }),
    ),
    report: report.map((at) => at.toISOString()),
  };
}
