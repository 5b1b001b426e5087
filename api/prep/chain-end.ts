// What comes after the oven: plates to equilibrate, a column to pack and condition.
import { restMinutes } from '../science/columns/conditioning.ts';
import type { NeedFacts, PrepFacts } from './facts.ts';
import { minuteOf } from './hours.ts';
import { type Building, latest, five, handsMinutes, running } from './chain-building.ts';

export function equilibrating(of: Building, { need, kept }: NeedFacts, { settings }: PrepFacts): void {
  if (need.regime !== 'EQUILIBRATED') return;
  const at = latest(kept.map(({ prepared }) => (prepared?.equilibration ? new Date(prepared.equilibration.at) : null)));
  if (at && kept.every(({ prepared }) => prepared?.equilibration)) {
    of.done.set('EQUILIBRATE', at);
    of.keepsFrom = null;
    return;
  }
  const inRoom = need.regimeHumidityPercent === null ? kept[0]?.container.exposure?.minutesToRoomEquilibrium : null;
  of.stages.push({ kind: 'EQUILIBRATE', minutes: five(inRoom ?? settings.equilibrateMinutes), handsMinutes });
}

export function packing(of: Building, facts: NeedFacts, { settings }: PrepFacts): void {
  const { need, column, kept, sorbentClass } = facts;
  if (need.kind !== 'COLUMN' || !column) return;
  const packed = kept.find(({ container }) => container.kind === 'COLUMN');
  const rest = sorbentClass === 'alumina' ? five(restMinutes(column.diameterMm)) : 0;
  if (!packed) of.stages.push({ kind: 'PACK', minutes: five(settings.packMinutes), restMinutes: 0 });
  else of.done.set('PACK', packed.container.cameInAt);
  if (!packed?.conditionedAt) {
    of.stages.push({ kind: 'CONDITION', minutes: five(Math.max(5, column.conditioningMinutes)), restMinutes: rest });
    if (packed) of.keepsFrom = null;
    return;
  }
  of.done.set('CONDITION', packed.conditionedAt);
  of.keepsFrom = null;
  if (rest === 0) return;
  const from = minuteOf(packed.conditionedAt);
  of.running.push(running('REST', from, from + rest));
  of.floor = Math.max(of.floor, five(from + rest));
}
