// What is said of a drying before it is done: one line for the tray, one sentence for what stays whatever one does. Pure.

/** A water fraction no more exactly than the model means it: `0.2 %`, `half a percent`. */
export function roughly(fraction: number): string {
  const percent = 100 * fraction;
  const [name] = plainly.find(([, low, high]) => percent >= low && percent <= high) ?? [];
  if (name) return name;
  if (percent < 0.005) return 'less than 0.01 %';
  const digits = percent < 0.1 ? 2 : percent < 10 ? 1 : 0;
  return `${Number(percent.toFixed(digits))} %`;
}

/** Where a plain word says it as well. */
const plainly: readonly (readonly [string, number, number])[] = [
  ['half a percent', 0.45, 0.55],
  ['one percent', 0.95, 1.05],
];

const number = (value: number): string => String(Number(value.toFixed(value < 10 ? 1 : 0)));

export interface OvenWords {
  readonly temperatureC: number;
  readonly vacuum: boolean;
  readonly fan: boolean;
  /** In the chamber. */
  readonly waterMbar: number;
  /** The water is that of a room whose air is known, told beforehand, or taken for granted. */
  readonly waterFrom: 'ROOM' | 'GIVEN' | 'USUAL';
}

const inAir = { ROOM: 'in this room’s air', GIVEN: 'in such air', USUAL: 'in usual room air' } as const;

function where({ temperatureC, vacuum, waterMbar, waterFrom }: OvenWords): string {
  const mbar = `${number(waterMbar)} mbar of water`;
  if (vacuum) return `at ${number(temperatureC)} °C under vacuum (${mbar} in the chamber)`;
  return `at ${number(temperatureC)} °C ${inAir[waterFrom]}${waterFrom === 'ROOM' ? '' : ` (${mbar})`}`;
}

/** `At 105 °C in this room’s air this silica still keeps about half a percent.` */
export function floorSentence(what: string, oven: OvenWords, fraction: number): string {
  const sentence = `${where(oven)} ${what} still ${what.startsWith('these') ? 'keep' : 'keeps'} about ${roughly(fraction)}`;
  return `${sentence[0]?.toUpperCase()}${sentence.slice(1)}.`.replace('about less', 'less');
}

export interface Outcome {
  /** Null for plates. */
  readonly depthMm: number | null;
  readonly minutes: number;
  readonly mean: number;
  readonly wettest: number;
  readonly deepestMm: number | null;
}

/** `10 mm of this, 60 min at 130 °C under vacuum: about 0.2 % left, wettest 0.3 %; deepest tray 25 mm` */
export function summaryLine({ temperatureC, vacuum, fan }: OvenWords, of: Outcome, target: number): string {
  const { depthMm, minutes, mean, wettest, deepestMm } = of;
  const load = depthMm === null ? 'these plates' : `${number(depthMm)} mm of this`;
  const oven = vacuum ? 'under vacuum' : fan ? 'in moving air' : 'in air';
  const left = mean < 0.00005 ? roughly(mean) : `about ${roughly(mean)}`;
  const wet = roughly(wettest) === roughly(mean) ? '' : `, wettest ${roughly(wettest)}`;
  const deep = depthMm === null ? '' : `; ${deepestWords(deepestMm, target)}`;
  return `${load}, ${number(minutes)} min at ${number(temperatureC)} °C ${oven}: ${left} left${wet}${deep}`;
}

function deepestWords(deepestMm: number | null, target: number): string {
  if (deepestMm === null) return `no tray is dry to ${roughly(target)} by then`;
  return deepestMm >= 100 ? 'any tray will do' : `deepest tray ${number(deepestMm)} mm`;
}
