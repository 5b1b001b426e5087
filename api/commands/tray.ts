// `npm run --silent tray -- FILE.json`: how a tray of sorbent dries in an oven, as JSON.
import { deepestM } from '../science/tray/deepest.ts';
import { forecast } from '../science/tray/forecast.ts';
import { loadOf } from '../science/tray/load.ts';
import { asReceived } from '../science/weighings.ts';
import { BadInput } from '../bad-input.ts';
import { endWith } from './ending.ts';
import { jsonFile } from './json.ts';
import { trayInput, type TrayInput } from './tray/input.ts';
import { trayOf } from './tray/load.ts';

/** A target that a day in the oven does not reach is not reached. */
const usualMostMinutes = 1440;

// What the command prints. Water fractions are kg per kg of dry sorbent unless said otherwise.
function answer(input: TrayInput): unknown {
  const tray = trayOf(input);
  const load = loadOf(tray);
  const { moments, crossings, balance, profile, condensed } = forecast(load, {
    atS: (input.atMinutes ?? [input.minutes]).map((minutes) => 60 * minutes),
    targets: input.targets ?? [],
    mostS: 60 * (input.maxMinutes ?? usualMostMinutes),
    profileAtS: 60 * input.minutes,
  });
  if (condensed) {
    throw new BadInput(
      `invalid oven.waterMbar: ${tray.oven.vapourPa / 100}, expected air that does not condense on this load`,
    );
  }
  const { deepest } = input;
  const depthM = deepest ? deepestM(tray, deepest.target, deepest.of, 60 * input.minutes) : null;
  return {
    at: moments.map(({ second, mean, wettest, wettestM, centreC, trayC }) => ({
      minutes: second / 60,
      mean,
      meanAsReceived: asReceived(mean),
      wettest,
      wettestAtMm: 1000 * wettestM,
      centreC,
      trayC,
    })),
    minutesTo: crossings.map(({ target, meanS, wettestS }) => ({
      target,
      mean: meanS === null ? null : meanS / 60,
      wettest: wettestS === null ? null : wettestS / 60,
    })),
    deepestMm: depthM === null ? null : 1000 * depthM,
    conductivityWPerMK: load.conductivityWPerMK,
    balance,
    profile: profile.map(({ depthM: depth, waterFraction, temperatureC }) => ({
      mm: 1000 * depth,
      w: waterFraction,
      temperatureC,
    })),
  };
}

async function run(words: readonly string[]): Promise<number> {
  const { raw } = await jsonFile(words, 'a tray');
  console.log(JSON.stringify(answer(trayInput(raw)), null, 2));
  return 0;
}

await endWith(run(process.argv.slice(2)));
