// How long what is kept for a need stays in the oven: reckoned as the plan of the ovens reckons it, by the tray model.
import { usualTargetOf } from '../drying/service.ts';
import { familyOf, type OvenWithCare, timed } from '../ovens/service.ts';
import type { NeedFacts } from './facts.ts';

interface Heat {
  /** From cold to done, least and most, min. */
  minutes: readonly [number, number];
  /** Ids of the ovens in which it gets dry; null: whichever the recipe allows. */
  ovens: readonly string[] | null;
}

/** Nobody knows what air the ovens will draw on the day: the usual is taken. */
const vapourPa: ReadonlyMap<string, number | null> = new Map();

/** Where no oven is described, or none gets it dry, the recipe says. */
function reckoned(facts: NeedFacts, ovens: readonly OvenWithCare[]): Heat | null {
  const { need, how, kept, sorbentName, sorbentClass, bulkDensityKgPerM3 } = facts;
  const { recipe } = how;
  if (!recipe) return null;
  const [least, most] = recipe.minutes;
  const byRecipe: Heat = { minutes: [recipe.heatUpMinutes + least, recipe.heatUpMinutes + most], ovens: null };
  if (ovens.length === 0) return byRecipe;
  const isPlates = need.kind === 'PLATES';
  const found = kept.flatMap(({ container, amount }) => {
    const { sorbent } = container.lot;
    const material = {
      container,
      sorbentName,
      sorbentClass,
      family: familyOf({ kind: container.kind, ...sorbent }),
      bulkDensityKgPerM3,
      waterFraction: container.exposure?.meanWaterFraction ?? null,
      target: usualTargetOf(sorbent),
      how,
    };
    const asked = {
      temperatureC: recipe.temperatureC[0],
      minutes: null,
      depthMm: null,
      plates: isPlates ? amount : null,
    };
    const share = { dryGrams: isPlates ? null : amount, plates: isPlates ? amount : null };
    const each = timed(asked, share, material, { ovens: [...ovens], vapourPa });
    return typeof each === 'string' ? [] : [each];
  });
  if (found.length === 0) return byRecipe;
  const both = ovens
    .map(({ id }) => id)
    .filter((id) => found.every((each) => each.ovens.some((oven) => oven.id === id)));
  return {
    minutes: [Math.max(...found.map(({ minutes }) => minutes[0])), Math.max(...found.map(({ minutes }) => minutes[1]))],
    ovens: both.length > 0 ? both : null,
  };
}

/** Reckoned when it is asked for, and once; null where nothing is known of how it is dried. */
export type HeatOf = () => Heat | null;

export function heatOf(facts: NeedFacts, ovens: readonly OvenWithCare[]): HeatOf {
  let known: Heat | null | undefined;
  return () => (known === undefined ? (known = reckoned(facts, ovens)) : known);
}
