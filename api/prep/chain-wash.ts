// The wash of plates: the loads of the tank that are left.
import { loadsOf } from '../science/prep/loads.ts';
import type { PrepResources } from '../science/prep/stages.ts';
import { leastHoodHoursOf } from '../stock/service.ts';
import { amountOf, type NeedFacts, type PrepFacts } from './facts.ts';
import { minuteOf } from './hours.ts';
import { isWashedFor } from './washed-in.ts';
import { five, handsMinutes, latest, type Building } from './chain-building.ts';
import { hanging } from './chain-hood.ts';

/** The wash, the hood and what they leave to do. True where the plates are dry of solvent and clean. */
export function washing(of: Building, facts: NeedFacts, prep: PrepFacts, resources: PrepResources): boolean {
  const { settings, now, lab } = prep;
  const { need, kept, steps } = facts;
  if (need.kind !== 'PLATES' || !need.isPreWashed) return true;
  const washedAll = kept.length > 0 && kept.every(({ prepared }) => isWashedFor(need, prepared));
  const loads = loadsOf(amountOf(facts), settings.tankPlates);
  const ticked = new Set(steps.filter(({ kind, doneAt }) => kind === 'PRE_WASH' && doneAt).map(({ load }) => load));
  const wetAt = latest(kept.map(({ container }) => container.wettedAt));
  // Loads that were ticked one by one; a wash told without them counts for all.
  const left = washedAll ? (ticked.size === 0 ? [] : loads.filter(({ load }) => !ticked.has(load))) : loads;
  const airDryMinutes = five(leastHoodHoursOf(lab.settings) * 60);
  const nowMinute = minuteOf(now);
  if (left.length > 0) {
    const hoodEnd = nowMinute + airDryMinutes;
    if (wetAt)
      of.takes.push({
        of: 'hood',
        from: nowMinute,
        to: hoodEnd,
        amount: amountOf(facts) - left.reduce((sum, { amount }) => sum + amount, 0),
      });
    of.stages.push({
      kind: 'WASH',
      loads: left,
      ofLoads: loads.length,
      minutes: five(settings.preWashMinutes),
      handsMinutes,
      airDryMinutes,
    });
    return false;
  }
  of.done.set(
    'PRE_WASH',
    latest(kept.map(({ prepared }) => (prepared?.preWash ? new Date(prepared.preWash.at) : null))) ?? now,
  );
  return hanging(of, facts, prep, resources);
}
