// What the day asks for, counted in one statement: open stock by what to do, plates that are ready, what waits to be dried.
import type { PlateRegime } from './generated/sqlite/client.ts';
import type { Reader } from './reader.ts';

export interface Day {
  /** Containers in use, opened or not. */
  inUse: number;
  /** Containers in use whose seal is broken. */
  open: number;
  redry: number;
  useSoon: number;
  weighFirst: number;
  tooDry: number;
  good: number;
  /** Plates within their band. */
  platesReady: number;
  /** When the first of them leaves it, ms; null when none does in sight. */
  platesReadyUntil: number | null;
  /** Plates that are past it. */
  platesToRedry: number;
  /** Plates that are wet with solvent, in the tank or the hood. */
  platesWet: number;
  /** Requests on the list of what is to be dried. */
  waiting: number;
}

export interface PlatesReady {
  /** Null: nobody prepared them, they are within their band as they came. */
  regime: PlateRegime | null;
  plates: number;
  /** When the first of them leaves its band, ms; null when none does in sight. */
  until: number | null;
}

const HOUR_MS = 3_600_000;

/** Sums come as text from one engine, and as null of nothing from both. */
const figure = (value: unknown): number => Number(value ?? 0);

const instantOf = (ms: unknown): number | null => (ms === null || ms === undefined ? null : Math.round(Number(ms)));
const order: readonly (PlateRegime | null)[] = ['DRY_UNTIL_SPOTTED', 'EQUILIBRATED', null];

/** What the statements are written with, in the words of an engine. */
function wordsOf({ engine }: Reader) {
  const word = (type: string, name: string) => (engine === 'sqlite' ? `'${name}'` : `'${name}'::"${type}"`);
  const is = (state: string) => `e."state" = ${word('ExposureState', state)}`;
  const ready = `c."kind" = ${word('ContainerKind', 'PLATE_BOX')} and (${is('GOOD')} or ${is('USE_SOON')})`;
  const asOfMs = engine === 'sqlite' ? 'e."asOf"' : `(extract(epoch from e."asOf") * 1000)`;
  return { word, is, ready, asOfMs };
}

/** The day in figures, of one lab. */
export async function dayOf(reader: Reader, labId: string): Promise<Day> {
  const { word, is, ready, asOfMs } = wordsOf(reader);
  const unsealed = `c."closure" <> ${word('Closure', 'SEALED')}`;
  const count = (condition: string) => `sum(case when ${condition} then 1 else 0 end)`;
  const [row] = await reader.select<Record<keyof Day, unknown>>(
    `select count(*) as "inUse", ${count(unsealed)} as "open",
       ${count(`${unsealed} and ${is('REDRY')}`)} as "redry", ${count(`${unsealed} and ${is('USE_SOON')}`)} as "useSoon",
       ${count(`${unsealed} and ${is('UNKNOWN')}`)} as "weighFirst", ${count(`${unsealed} and ${is('TOO_DRY')}`)} as "tooDry",
       ${count(`${unsealed} and ${is('GOOD')}`)} as "good",
       sum(case when ${ready} then c."plates" else 0 end) as "platesReady",
       min(case when ${ready} and c."plates" > 0 then ${asOfMs} + e."hoursToLimit" * ${HOUR_MS} end) as "platesReadyUntil",
       sum(case when c."kind" = ${word('ContainerKind', 'PLATE_BOX')} and ${is('REDRY')} then c."plates" else 0 end)
         as "platesToRedry",
       sum(case when c."kind" = ${word('ContainerKind', 'PLATE_BOX')} and c."wettedAt" is not null then c."plates" else 0 end)
         as "platesWet",
       (select count(*) from "DryingRequest" d where d."labId" = $1
         and d."state" = ${word('DryingRequestState', 'WAITING')}) as "waiting"
     from "Exposure" e join "Container" c on c."id" = e."containerId"
     where e."labId" = $1 and c."isVoid" = false and c."finishedAt" is null`,
    [labId],
  );
  const until = row?.platesReadyUntil;
  return {
    inUse: figure(row?.inUse),
    open: figure(row?.open),
    redry: figure(row?.redry),
    useSoon: figure(row?.useSoon),
    weighFirst: figure(row?.weighFirst),
    tooDry: figure(row?.tooDry),
    good: figure(row?.good),
    platesReady: figure(row?.platesReady),
    platesReadyUntil: instantOf(until),
    platesToRedry: figure(row?.platesToRedry),
    platesWet: figure(row?.platesWet),
    waiting: figure(row?.waiting),
  };
}

/** The plates that are ready, by how they are kept. */
export async function platesByRegime(reader: Reader, labId: string): Promise<PlatesReady[]> {
  const { ready, asOfMs } = wordsOf(reader);
  const rows = await reader.select<Record<keyof PlatesReady, unknown>>(
    `select c."regime" as "regime", sum(c."plates") as "plates",
       min(${asOfMs} + e."hoursToLimit" * ${HOUR_MS}) as "until"
     from "Exposure" e join "Container" c on c."id" = e."containerId"
     where e."labId" = $1 and c."isVoid" = false and c."finishedAt" is null and c."plates" > 0 and ${ready}
     group by c."regime"`,
    [labId],
  );
  return rows
    .map(({ regime, plates, until }) => ({
      regime: (regime ?? null) as PlateRegime | null,
      plates: figure(plates),
      until: instantOf(until),
    }))
    .sort((one, other) => order.indexOf(one.regime) - order.indexOf(other.regime));
}
