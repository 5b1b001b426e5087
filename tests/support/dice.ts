// Dice that fall the same way each time, for whatever may wait.

/** Numbers that look like chance and are the same each time (Park & Miller 1988). */
export function diceFrom(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
}
