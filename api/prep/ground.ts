// What there is to prepare with, around some times: who works when, tanks, hood, hands, ovens.
import type { OvenWithCare } from '../ovens/service.ts';
import type { PrepResources } from '../science/prep/stages.ts';
import type { LabFacts, Reader } from './facts.ts';
import { workingMinutes } from './hours.ts';
import { ovensOf, type OvenSpan } from './ovens.ts';
import { prepSettingsOf } from './settings.ts';

const dayMs = 86_400_000;
/** Working hours are laid out so far: back, for what should have begun; forward, for first times and far needs. */
const backDays = 30;
const aheadDays = 35;

export interface Ground {
  resources: PrepResources;
  spans: OvenSpan[];
  ovenNames: Map<string, string>;
  /** As they are described; empty where none is. */
  described: readonly OvenWithCare[];
}

/** Who works when, and what there is, around some times. */
export async function groundOf(reader: Reader, lab: LabFacts, now: Date, last: Date): Promise<Ground> {
  const settings = prepSettingsOf(lab.settings);
  const from = new Date(now.getTime() - backDays * dayMs);
  const to = new Date(Math.max(now.getTime(), last.getTime()) + aheadDays * dayMs);
  const open = workingMinutes(lab, settings.daysOff, from, to);
  const { ovens, spans, names, described } = await ovensOf(reader, lab, settings, now, { open, from, to });
  const { people: hands, tanks, hoodPlaces } = settings;
  return { resources: { open, hands, tanks, hoodPlaces, ovens }, spans, ovenNames: names, described };
}
