// Washed plates in the hood: how long they hang there still.
import { earliestIn } from '../science/prep/intervals.ts';
import type { PrepResources } from '../science/prep/stages.ts';
import { goneFromMs, leastHoodHoursOf } from '../stock/service.ts';
import { five, latest, running, type Building } from './chain-building.ts';
import { amountOf, type NeedFacts, type PrepFacts } from './facts.ts';
import { minuteOf } from './hours.ts';

/** True where they are dry of solvent. */
export function hanging(of: Building, facts: NeedFacts, { now, lab }: PrepFacts, { open }: PrepResources): boolean {
  const { kept } = facts;
  const wetAt = latest(kept.map(({ container }) => container.wettedAt));
  if (!wetAt) {
    const goneAt = latest(
      kept.map(({ prepared }) => (prepared?.solventGone ? new Date(prepared.solventGone.at) : null)),
    );
    if (goneAt) {
      of.done.set('AIR_DRY', goneAt);
      of.keepsFrom = of.floor;
    }
    return true;
  }
  const nowMinute = minuteOf(now);
  const wet = kept.map(({ container }) => container);
  const hoodAt = minuteOf(latest(wet.map(({ hoodAt, wettedAt }) => hoodAt ?? wettedAt)) ?? now);
  const goneFrom = Math.max(
    ...wet.map(({ wettedAt, hoodAt }) =>
      Math.ceil(goneFromMs({ wettedAt, hoodAt }, leastHoodHoursOf(lab.settings)) / 60_000),
    ),
  );
  const out = Math.max(goneFrom, earliestIn(open, five(goneFrom)) ?? goneFrom);
  of.running.push(running('AIR_DRY', hoodAt, out));
  of.takes.push({ of: 'hood', from: nowMinute, to: Math.max(out, nowMinute + 5), amount: amountOf(facts) });
  of.floor = Math.max(of.floor, five(out));
  of.keepsFrom = of.floor;
  return false;
}
