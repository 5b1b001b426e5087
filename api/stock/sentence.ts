// An event in one English sentence, as somebody would say it of the container it happened to.
import type { DetailOf, Said } from './details.ts';
import { grams, percent, words } from './words.ts';

/** What a sentence needs beyond the event's detail. */
export interface Told {
  dryGrams: number | null;
  plates: number | null;
  /** Label of the container that was made or filled. */
  other: string | null;
  /** Name of the room the detail speaks of. */
  room: string | null;
}

type Weighed = { grams: number | null; basis: 'DRY' | 'AS_RECEIVED' };

function amount(detail: Weighed, told: Told): string {
  if (detail.grams !== null) return grams(detail.grams) + (detail.basis === 'DRY' ? ' (dry)' : '');
  if (told.plates !== null) return words.plates(told.plates);
  return told.dryGrams === null ? 'some' : `${grams(told.dryGrams)} (dry)`;
}

const because = (why: string | null): string => (why ? `: ${why}` : '');
const leftOpen = (detail: { leftOpen: boolean }): string => (detail.leftOpen ? ', left open' : '');
const other = (told: Told): string => told.other ?? 'another container';

function dried(detail: Extract<Said, { type: 'DRIED' }>['detail']): string {
  const oven = detail.vacuum ? ' under vacuum' : '';
  const how = [
    detail.temperatureC === null ? null : `at ${words.celsius(detail.temperatureC)}${oven}`,
    detail.minutes === null ? null : `for ${detail.minutes} min`,
    typeof detail.depthMm === 'number' ? `${detail.depthMm} mm deep` : null,
    detail.waterFraction === null ? null : `to ${percent(detail.waterFraction)} water (dry basis)`,
  ].filter((part) => part !== null);
  if (detail.oven) how.push(`in ${detail.oven}`);
  return ['dried', ...how].join(' ');
}

function weighed(detail: Extract<Said, { type: 'WEIGHED' }>['detail']): string {
  if (detail.gross) {
    const { grossGrams, tareGrams } = detail.gross;
    return `on the balance: ${grams(grossGrams)} with its vessel of ${grams(tareGrams)}; ${percent(detail.waterFraction)} water by the book`;
  }
  const method = detail.method === 'KARL_FISCHER' ? 'Karl Fischer' : 'loss on drying';
  const at = detail.temperatureC === null ? '' : ` at ${words.celsius(detail.temperatureC)}`;
  const of = detail.of === 'WHOLE' ? 'the whole' : 'a scoop';
  const basis = detail.basis === 'DRY' ? 'dry basis' : 'as received';
  return `${of} weighed: ${percent(detail.saidWaterFraction)} water (${basis}; ${method}${at})`;
}

function habitSet(detail: Extract<Said, { type: 'HABIT_SET' }>['detail']): string {
  const { habit, scooping } = detail;
  const parts: string[] = [];
  if (habit) parts.push(`opened ${habit.timesADay} times a day for ${habit.minutes} min from now on`);
  if (habit === null) parts.push('no longer opened as a habit');
  if (scooping) {
    const where = { TOP: 'off the top', SIDE: 'from the side', ROLLED: 'after rolling' }[scooping];
    parts.push(`scooped ${where}`);
  }
  return parts.join(', ') || 'habit as it was';
}

function counted(detail: Extract<Said, { type: 'COUNTED' }>['detail'], told: Told): string {
  if (detail.of === 'PLATES') return `counted: ${words.plates(detail.plates ?? 0)}`;
  if (detail.of === 'GROSS')
    return `weighed with its vessel: ${grams(detail.grossGrams ?? 0)} gross, ${amount(detail, told)} in it`;
  return `counted: ${amount(detail, told)}`;
}

function equilibrated({ humidityPercent, temperatureC, over, hours }: DetailOf<'EQUILIBRATED'>): string {
  const rh = Number(humidityPercent.toFixed(1));
  const where = over ? ` (${over})` : '';
  const long = typeof hours === 'number' ? `, ${Number(hours.toFixed(1))} h` : '';
  return `equilibrated at ${rh} % RH, ${words.celsius(temperatureC)}${where}${long}`;
}

const edges = { CUT: 'front edge cut off', MARKED: 'front edge marked', LEFT: 'front edge left as it is' } as const;

function preWashed(detail: DetailOf<'PRE_WASHED'>): string {
  const { solvent, fullLength, direction, tankLoads, frontEdge } = detail;
  const way = direction === 'ALONG_WIDTH' ? 'along the width' : 'along the height';
  const run = [fullLength && 'full length', direction && way].filter(Boolean).join(' ');
  const loads = tankLoads ? `${tankLoads} tank ${tankLoads === 1 ? 'load' : 'loads'}` : '';
  const more = [run, loads, frontEdge ? edges[frontEdge] : ''].filter(Boolean);
  return [`pre-washed${solvent ? ` with ${solvent}` : ''}`, ...more].join(', ');
}

function conditioned({ mobilePhase, columnVolumes, minutes, flowMlPerMin }: DetailOf<'CONDITIONED'>): string {
  const how = [
    columnVolumes === null ? '' : `${Number(columnVolumes.toFixed(2))} column volumes`,
    typeof flowMlPerMin === 'number' ? `${Number(flowMlPerMin.toFixed(2))} mL/min` : '',
    typeof minutes === 'number' ? `${Number(minutes.toFixed(1))} min` : '',
  ].filter(Boolean);
  return [`conditioned${mobilePhase ? ` with ${mobilePhase}` : ''}`, ...how].join(', ');
}

/** The event as a sentence without a full stop, such as `210 g poured into 4M7-2XK`. */
export function sentenceOf(said: Said, told: Told): string {
  switch (said.type) {
    case 'CAME_IN':
      return `came in with ${amount(said.detail, told)}${said.detail.closure === 'OPEN' ? ', open' : ''}`;
    case 'OPENED':
      return 'opened';
    case 'CLOSED':
      return `closed (${words.closure(said.detail.closure)})`;
    case 'MOVED':
      return `moved to ${told.room ?? 'another room'}`;
    case 'PORTION_TAKEN':
      return `${amount(said.detail, told)} ${told.other ? `poured into ${told.other}` : 'taken'}${leftOpen(said.detail)}`;
    case 'PLATES_TAKEN':
      return `${words.plates(told.plates ?? 0)} taken into ${other(told)}${leftOpen(said.detail)}`;
    case 'COLUMN_PACKED':
      return `${amount(said.detail, told)} packed into column ${other(told)}${leftOpen(said.detail)}`;
    case 'MIXED':
      return 'mixed';
    case 'DRIED':
      return dried(said.detail);
    case 'EQUILIBRATED':
      return equilibrated(said.detail);
    case 'WEIGHED':
      return weighed(said.detail);
    case 'COUNTED':
      return counted(said.detail, told);
    case 'TOUCHED_SOLVENT':
      return `touched ${said.detail.what ?? 'solvent or sample'}`;
    case 'HABIT_SET':
      return habitSet(said.detail);
    case 'COMBINED':
      return `${amount(said.detail, told)} emptied into ${other(told)}`;
    case 'LOST':
      return `${amount(said.detail, told)} lost${because(said.detail.why)}`;
    case 'PRE_WASHED':
      return preWashed(said.detail);
    case 'SOLVENT_GONE':
      return `solvent gone${said.detail.seenBy ? `, seen by ${said.detail.seenBy}` : ''}`;
    case 'CONDITIONED':
      return conditioned(said.detail);
    case 'INTERRUPTED':
      return `interrupted${because(said.detail.why)}`;
    case 'SPENT_ON_CHECK':
      return `${amount(said.detail, told)} spent on a check${because(said.detail.what)}`;
    case 'USED_UP':
      return 'used up';
    case 'DISCARDED':
      return `${said.detail.all ? 'all' : amount(said.detail, told)} discarded${because(said.detail.why)}`;
    case 'NOT_FOUND':
      return `looked for and not found${because(said.detail.why)}`;
    case 'CORRECTED':
      return `${said.detail.standsId ? 'a correction taken back' : 'taken back: it did not happen'}${because(said.detail.why)}`;
  }
}

/** The room a detail speaks of, by id. */
export function roomIdIn(said: Said): string | null {
  if (said.type === 'CAME_IN' || said.type === 'MOVED') return said.detail.roomId;
  return 'into' in said.detail ? said.detail.into.roomId : null;
}
