// The air of a room as it is when its hygrometer reads too low or too high by a constant.
import type { AirDay, RoomAir } from '../climate.ts';

/** φ of the room is what was recorded plus `bias`: c + bias · c_s, integral by integral. */
export function biased(air: RoomAir, bias: number): RoomAir {
  if (bias === 0) return air;
  const made = new Map<AirDay, AirDay>();
  const shifted = (day: AirDay): AirDay => {
    const known = made.get(day);
    if (known) return known;
    const integrals = Float64Array.from(day.integrals);
    for (let at = 0; at < integrals.length; at += 4) integrals[at] = integrals[at]! + bias * integrals[at + 1]!;
    const one = { integrals, unknownBlocks: day.unknownBlocks };
    made.set(day, one);
    return one;
  };
  return { day: (number) => shifted(air.day(number)), typical: air.typical && shifted(air.typical) };
}
