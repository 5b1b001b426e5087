// The oven and its cooling: what is left of them.
import { amountOf, type NeedFacts } from './facts.ts';
import { minuteOf } from './hours.ts';
import { isGoodAt } from './rules.ts';
import { type Building, latest, five, running } from './chain-building.ts';
import { type InOvens, ovenStage } from './chain-oven.ts';

/** The oven and its cooling. */
export function drying(of: Building, facts: NeedFacts, ovens: InOvens, isClean: boolean): void {
  const { need, kept, how } = facts;
  const isPlates = need.kind === 'PLATES';
  const isPacked = kept.some(({ container }) => container.kind === 'COLUMN');
  if (isPacked) return;
  const dried = ({ prepared, driedAt, container }: (typeof kept)[number]): Date | null => {
    if (!isPlates) return driedAt;
    const at = prepared?.activation?.at ?? prepared?.equilibration?.at;
    if (at === undefined || !isClean) return null;
    const since = new Date(at);
    return since >= need.madeAt || isGoodAt(container.exposure, need.at, need.limitWaterFraction) ? since : null;
  };
  const wet = kept.filter(
    (one) => !dried(one) && (isPlates || !isGoodAt(one.container.exposure, need.at, need.limitWaterFraction)),
  );
  if (wet.length > 0 || kept.length === 0) {
    const amount = kept.length === 0 && isPlates ? amountOf(facts) : wet.reduce((sum, one) => sum + one.amount, 0);
    const stage = amount > 0 ? ovenStage(facts, amount, ovens) : null;
    if (stage) of.stages.push(stage);
    return;
  }
  const driedAt = latest(kept.map(dried));
  if (!driedAt) return;
  of.done.set('OVEN', driedAt);
  const cooled = minuteOf(driedAt) + five(how.recipe?.coolDownMinutes ?? 0);
  of.running.push(running('COOL', minuteOf(driedAt), cooled));
  of.floor = Math.max(of.floor, five(cooled));
  of.keepsFrom = of.floor;
}
