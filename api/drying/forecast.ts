// What would be left in a tray or on plates: the tray model, fed with the lab's recipe, the container's water and the room's air.
import { z } from 'zod';
import { airNow, roomNamed } from '../climate/service.ts';
import type { Context } from '../context.ts';
import type { Container, Sorbent } from '../database/generated/sqlite/client.ts';
import { checked, invalid, missing, unknown } from '../errors.ts';
import { numbersOf, ovenLoadOf, type Numbers, type OvenLoad } from '../exposure/service.ts';
import { referenceActivity, saturationPressurePa } from '../science/air.ts';
import { sorbentClass } from '../science/properties.ts';
import { deepestM } from '../science/tray/deepest.ts';
import { forecast, timeDoubt, type Crossing, type Moment } from '../science/tray/forecast.ts';
import { heldWater } from '../science/tray/isotherm.ts';
import { limitOf, type Limit } from '../science/tray/limits.ts';
import { loadOf, wettestStart, type Load, type Tray } from '../science/tray/load.ts';
import { usualExchange, usualPressurePa, usualVapourPa, type OvenKind } from '../science/tray/oven.ts';
import { restingWater } from '../science/tray/residual.ts';
import { containerOf, inOvenSaid, said, sorbentOf } from '../stock/service.ts';
import { floorSentence, summaryLine, type OvenWords } from './forecast-words.ts';
import { howClassIsDried, ownRecipes } from './how-dried.ts';
import type { LabRecipe } from './recipes.ts';

const forecastSaid = z.object({
  label: said.label.nullish(),
  sorbent: said.name.nullish(),
  grams: said.grams,
  trayAreaCm2: z.number('cm²').positive('more than 0 cm²').max(1e5, 'at most 100000 cm²').nullish(),
  startWaterFraction: said.waterFraction.nullish(),
  temperatureC: said.celsius.min(20, '20 °C or more').nullish(),
  minutes: said.minutes.positive('more than 0 min').max(10_080, 'at most 10080 min').nullish(),
  vacuum: z.boolean().nullish(),
  room: said.name.nullish(),
  target: z.number('a mass fraction').positive('more than 0').max(1, '1 or less: a fraction, 0.01 for 1 %').nullish(),
  ...inOvenSaid,
});

/** A target that leaves most of the way to the upper end for the shelf: a fifth of it (invented default). */
const targetShare = 0.2;
const usualTarget = 0.01;
/** Where nobody recorded a room: 22 °C, 53 % RH, which is the usual 14 mbar. */
const usualRoom = { temperatureC: 22, humidity: 0.53 };
const mostS = 86_400;

export interface DryingForecast {
  readonly recipe: LabRecipe | null;
  readonly oven: OvenWords & { readonly pressureMbar: number };
  readonly depthMm: number | null;
  readonly minutes: number;
  readonly startWaterFraction: number;
  readonly startFrom: 'GIVEN' | 'ESTIMATE' | 'ROOM_AIR';
  readonly target: number;
  /** What the oven never takes out, and that in a sentence. */
  readonly floor: number;
  readonly floorSentence: string;
  /** At a time that is 30 % too short, at the time itself, at one that is 30 % too long. */
  readonly moments: readonly [sooner: Moment, now: Moment, later: Moment];
  readonly crossing: Crossing;
  readonly notes: readonly string[];
  deepestMm(): number | null;
  limit(): Limit | null;
  summary(): string;
}

/** What is asked of a sorbent: one of the lab, or a class of the table with nothing of its own. */
type Material = Pick<Sorbent, 'id' | 'name' | 'sorbentClass' | 'targetUpperWaterFraction'>;

interface What {
  sorbent: Material;
  container: Container | null;
}

async function whatOf({ database, lab }: Context, label?: string | null, name?: string | null): Promise<What> {
  const place = { tx: database.read, labId: lab.id };
  if (label && name) throw unknown('sorbent', name, 'a label or a sorbent, not both');
  if (name) {
    const found = await database.read.sorbent.findFirst({ where: { labId: lab.id, name } });
    const ofClass = found ? null : sorbentClass(name.trim().toLowerCase());
    if (ofClass) {
      const { name: of } = ofClass;
      return { sorbent: { id: '', name: of, sorbentClass: of, targetUpperWaterFraction: null }, container: null };
    }
    return { sorbent: found ?? (await sorbentOf(place, name, 'sorbent')), container: null };
  }
  if (!label) throw missing('label', 'the label of a container, or the name of a sorbent');
  const container = await containerOf(place, label, 'label');
  const { sorbent } = await database.read.lot.findUniqueOrThrow({
    where: { id: container.lotId },
    include: { sorbent: true },
  });
  return { sorbent, container };
}

async function numbersFor({ load }: Context, { id, name, sorbentClass: of }: Material): Promise<Numbers> {
  const own = id === '' ? [] : await load.properties.load(id);
  const numbers = numbersOf({ sorbentClass: of, sorbentName: name }, own);
  if (typeof numbers === 'string') throw invalid('sorbent', name, `a sorbent whose water is known: ${numbers}`);
  if (!numbers.drying) throw invalid('sorbent', name, 'a class whose figures for drying are known');
  return numbers;
}

interface RoomAir {
  readonly temperatureC: number;
  readonly humidity: number;
  readonly known: boolean;
}

async function roomOf(context: Context, room: string | null, container: Container | null): Promise<RoomAir> {
  const { database, lab } = context;
  const named = room ? await roomNamed(database.read, lab.id, room, 'room') : null;
  const roomId = named?.id ?? container?.roomId;
  const air = roomId ? await airNow(context, roomId) : null;
  if (!air || !(air.humidityPercent > 0)) return { ...usualRoom, known: false };
  return { temperatureC: air.temperatureC, humidity: Math.min(1, air.humidityPercent / 100), known: true };
}

type Said = z.output<typeof forecastSaid>;

/** Depth of what lies loose, m: told, from grams over the tray's area, else as deep as the recipe has it. */
function depthOf({ depthMm, grams, trayAreaCm2 }: Said, densityKgPerM3: number, recipe: LabRecipe | null): number {
  if (typeof depthMm === 'number') return depthMm / 1000;
  if (grams === null) return (recipe?.depthMm ?? 10) / 1000;
  if (!trayAreaCm2) throw missing('trayAreaCm2', 'the area of the tray, cm², from which the depth follows');
  const depthM = grams / 1000 / ((densityKgPerM3 * trayAreaCm2) / 1e4);
  if (depthM <= 0.1) return depthM;
  throw invalid('grams', grams, `at most 100 mm deep: ${Math.floor(100 * densityKgPerM3 * (trayAreaCm2 / 1e4))} g`);
}

const classWords: Record<string, string> = { c18: 'C18 silica' };

/** What the sentences call it. */
const calledOf = (of: Material, container: Container | null): string =>
  container?.kind === 'PLATE_BOX' ? 'these plates' : `this ${classWords[of.sorbentClass] ?? of.sorbentClass}`;

function ovenWordsOf(input: Said, recipe: LabRecipe | null, air: RoomAir): DryingForecast['oven'] {
  const vacuum = input.vacuum ?? recipe?.vacuum ?? false;
  const kind = vacuum ? 'vacuum' : 'air';
  const pressureMbar = input.pressureMbar ?? usualPressurePa[kind] / 100;
  const roomMbar = (air.humidity * saturationPressurePa(air.temperatureC)) / 100;
  const usualMbar = vacuum ? usualVapourPa.vacuum / 100 : roomMbar;
  const waterMbar = input.waterMbar ?? Math.min(usualMbar, pressureMbar);
  if (waterMbar > pressureMbar) throw invalid('waterMbar', waterMbar, `at most the pressure, ${pressureMbar} mbar`);
  const fromRoom = !vacuum && air.known;
  return {
    temperatureC: input.temperatureC ?? recipe?.temperatureC[0] ?? 130,
    vacuum,
    fan: !vacuum && (input.fan ?? false),
    pressureMbar,
    waterMbar,
    waterFrom: input.waterMbar != null ? 'GIVEN' : fromRoom ? 'ROOM' : 'USUAL',
  };
}

async function startOf(
  { load }: Context,
  { startWaterFraction }: Said,
  container: Container | null,
  numbers: Numbers,
  air: RoomAir,
): Promise<Pick<DryingForecast, 'startWaterFraction' | 'startFrom'>> {
  if (startWaterFraction != null) return { startWaterFraction, startFrom: 'GIVEN' };
  const exposure = container && (await load.exposure.load(container.id));
  const estimated = exposure?.meanWaterFraction ?? null;
  if (estimated !== null) return { startWaterFraction: estimated, startFrom: 'ESTIMATE' };
  const activity = referenceActivity(Math.min(0.95, air.humidity), air.temperatureC);
  return { startWaterFraction: heldWater(numbers.isotherm, activity), startFrom: 'ROOM_AIR' };
}

function targetOf({ target }: Said, of: Material): number {
  if (target != null) return target;
  const upper = of.targetUpperWaterFraction ?? sorbentClass(of.sorbentClass)?.upperWaterFraction ?? null;
  return upper === null ? usualTarget : targetShare * upper;
}

function trayOf(load: OvenLoad, depthM: number, water: number, air: RoomAir, words: DryingForecast['oven']): Tray {
  const { temperatureC, vacuum, fan, pressureMbar, waterMbar } = words;
  const kind: OvenKind = vacuum ? 'vacuum' : fan ? 'air with fan' : 'air';
  const pressurePa = 100 * pressureMbar;
  if (!load.sorbent) throw new Error('figures for drying went missing');
  return {
    sorbent: load.sorbent,
    depthM,
    waterFraction: Math.min(water, 0.999 * wettestStart(load.sorbent.isotherm)),
    temperatureC: Math.min(air.temperatureC, temperatureC),
    trayHeatJPerM2K: load.trayHeatJPerM2K,
    oven: {
      kind,
      temperatureC,
      pressurePa,
      vapourPa: 100 * waterMbar,
      warmUpS: 0,
      pump: null,
      exchange: usualExchange(kind, temperatureC, pressurePa),
    },
    conductivityWPerMK: null,
  };
}

function once<T>(make: () => T): () => T {
  let made: { value: T } | null = null;
  return () => (made ??= { value: make() }).value;
}

/** What a drying would leave; refused above what the material stands. */
export async function dryingForecast(context: Context, asked: unknown): Promise<DryingForecast> {
  const input = checked(forecastSaid, asked, '');
  const { sorbent, container } = await whatOf(context, input.label, input.sorbent);
  const numbers = await numbersFor(context, sorbent);
  const how = howClassIsDried(
    await ownRecipes(context.database.read, context.lab.id),
    sorbent.sorbentClass,
    container?.backing ?? null,
  );
  const { recipe } = how;
  const air = await roomOf(context, input.room ?? null, container);
  const words = ovenWordsOf(input, recipe, air);
  const hot = how.refusal(words.temperatureC);
  if (hot) throw invalid('temperatureC', words.temperatureC, hot);
  const isPlates = container?.kind === 'PLATE_BOX';
  const layerM = isPlates ? (container.layerThicknessMm ?? 0.25) / 1000 : undefined;
  const load = isPlates
    ? ovenLoadOf(numbers.drying, numbers.layer.bulkDensityKgPerM3, layerM)
    : ovenLoadOf(numbers.drying);
  const depthM = layerM ?? depthOf(input, numbers.bed.bulkDensityKgPerM3, recipe);
  const start = await startOf(context, input, container, numbers, air);
  const target = targetOf(input, sorbent);
  const minutes = input.minutes ?? recipe?.minutes[1] ?? 60;
  const tray = trayOf(load, depthM, start.startWaterFraction, air, words);
  return {
    ...start,
    ...outcomeOf(tray, { words, target, minutes, isPlates, recipe, called: calledOf(sorbent, container) }),
  };
}

interface Asked {
  words: DryingForecast['oven'];
  target: number;
  minutes: number;
  isPlates: boolean;
  recipe: LabRecipe | null;
  called: string;
}

function outcomeOf(tray: Tray, asked: Asked): Omit<DryingForecast, 'startWaterFraction' | 'startFrom'> {
  const { words, target, minutes, isPlates, recipe, called } = asked;
  const load: Load = loadOf(tray);
  const seconds = 60 * minutes;
  const atS = [seconds / (1 + timeDoubt), seconds, seconds * (1 + timeDoubt)];
  const { moments, crossings } = forecast(load, { atS, targets: [target], mostS, profileAtS: null });
  const [sooner, now, later] = moments;
  const [crossing] = crossings;
  if (!sooner || !now || !later || !crossing) throw new Error('the forecast has no moments');
  const floor = restingWater(tray.sorbent.isotherm, words.temperatureC, 100 * words.waterMbar);
  const depthMm = isPlates ? null : 1000 * tray.depthM;
  const deepestMm = once(() => {
    if (isPlates) return null;
    const found = deepestM(tray, target, 'wettest', seconds);
    return found === null ? null : 1000 * found;
  });
  return {
    recipe,
    oven: words,
    depthMm,
    minutes,
    target,
    floor,
    floorSentence: floorSentence(called, words, floor),
    moments: [sooner, now, later],
    crossing,
    notes: recipe?.note ? [recipe.note] : [],
    deepestMm,
    limit: () => limitOf(load, target, 'wettest', mostS),
    summary: () =>
      summaryLine(words, { depthMm, minutes, mean: now.mean, wettest: now.wettest, deepestMm: deepestMm() }, target),
  };
}
