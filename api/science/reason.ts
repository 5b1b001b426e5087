// Why, in one sentence: what the lid did, in what air, and where the water sits.
import { daySeconds, meanAir, type RoomAir } from './climate.ts';
import { closureName } from './closures.ts';
import type { Condition } from './condition.ts';
import type { Answer, FoldInput } from './history.ts';

/** "open 19 h at 48 % RH, 22 °C; the top 8 mm is past 5 %" */
export function reasonOf(answer: Omit<Answer, 'reason'>, condition: Condition, input: FoldInput): string {
  if (condition.wetted && input.spec.geometry.kind === 'column')
    return 'wetted with mobile phase: it takes up no more water from the air';
  if (condition.wetted) return 'wetted with mobile phase or solvent: not estimated until it is dried';
  const air = input.airs.get(condition.room);
  const parts = [lidPhrase(answer, condition, air)];
  if (!condition.startKnown) parts.push('its starting water is not known: weigh first');
  else if (!condition.airKnown) parts.push('part of its time has no air record: weigh first');
  else parts.push(waterPhrase(answer, input));
  if (answer.condensing) parts.push('above 95 % RH: condensing, at least this much');
  return parts.join('; ');
}

function lidPhrase(answer: Omit<Answer, 'reason'>, condition: Condition, air: RoomAir | undefined): string {
  const { asOfS } = answer;
  if (condition.lid !== 'open') {
    const scooped = answer.isOpen ? 'open for a scoop' : lidWord(condition);
    const humidity = air && humidityPhrase(air, asOfS - daySeconds, asOfS);
    return humidity ? `${scooped}, ${humidity} outside` : scooped;
  }
  const openedAtS = condition.openedAtS ?? asOfS;
  if (asOfS - openedAtS < 60) return 'just opened';
  const since = Math.max(openedAtS, asOfS - 60 * daySeconds);
  const humidity = air && humidityPhrase(air, since, asOfS);
  return `open ${spanPhrase(asOfS - openedAtS)}${humidity ? ` at ${humidity}` : ''}`;
}

function lidWord({ lid }: Condition): string {
  const name = lid === 'open' ? lid : closureName(lid);
  if (name === 'sealed') return 'sealed as received';
  if (name === 'given') return 'closed';
  return name === 'tight' ? 'closed tight' : name;
}

function humidityPhrase(air: RoomAir, fromS: number, toS: number): string | null {
  const { humidity, temperatureC, filled } = meanAir(air, fromS, toS);
  if (!Number.isFinite(humidity)) return null;
  return `${filled > 0.5 ? 'about ' : ''}${Math.round(100 * humidity)} % RH, ${Math.round(temperatureC)} °C`;
}

function waterPhrase(answer: Omit<Answer, 'reason'>, { spec, target }: FoldInput): string {
  const { upper, lower } = target;
  const { scoopWaterFraction: water } = answer;
  const what = spec.geometry.kind === 'bed' ? 'next scoop' : 'mean';
  if (upper === null && lower === null) return `${what} ${percent(water)} %, no limit set`;
  if (lower !== null && water < lower) return `${percent(water)} % is drier than ${percent(lower)} %`;
  if (upper === null) return `${percent(water)} %, at least ${percent(lower ?? 0)} % wanted`;
  const layer = spec.geometry.kind === 'plate' && answer.isOpen ? layerPhrase(answer) : null;
  const limit = limitPhrase(answer, what, upper);
  return layer ? `${limit}; ${layer}` : limit;
}

/**
 * A thin layer has the room's humidity within minutes, by the model's still air. Measured from 15 to 80 % RH it was 1 to
 * 2 min: Geiss, Schlitt and Klose, Fresenius Z. Anal. Chem. 213 (1965) 331; that stands with what an estimate rests on.
 */
function layerPhrase({ minutesToRoomEquilibrium }: Omit<Answer, 'reason'>): string | null {
  if (minutesToRoomEquilibrium === null) return null;
  const minutes = Math.max(1, Math.round(minutesToRoomEquilibrium));
  return `in equilibrium with the room within about ${minutes} min`;
}

function limitPhrase(answer: Omit<Answer, 'reason'>, what: string, upper: number): string {
  const pastM = answer.pastLimitDepthM ?? 0;
  if (pastM >= 0.999 * bedDepthM(answer)) return `all of it is past ${percent(upper)} %`;
  if (pastM >= 0.0005) return `the top ${Math.round(1000 * pastM)} mm is past ${percent(upper)} %`;
  return `${what} ${percent(answer.scoopWaterFraction)} % of at most ${percent(upper)} %`;
}

const bedDepthM = ({ profile }: Omit<Answer, 'reason'>): number => profile.at(-1)?.depthM ?? 0;

/** Two digits, no empty decimals: 4.6, 0.52, 12. */
function percent(fraction: number): string {
  const value = 100 * fraction;
  return String(Number(value.toFixed(value < 1 ? 2 : value < 10 ? 1 : 0)));
}

function spanPhrase(seconds: number): string {
  if (seconds < 5400) return `${Math.round(seconds / 60)} min`;
  if (seconds < 72 * 3600) return `${Math.round(seconds / 3600)} h`;
  return `${Math.round(seconds / daySeconds)} d`;
}
