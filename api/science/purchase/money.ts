// Money exactly: millionths of a minor unit as big integers, rounded once to whole minor units, half to even.

export const microOf = (minor: number): bigint => BigInt(minor) * 1_000_000n;

/** Whole minor units, half to even. */
export function roundedMinor(micro: bigint): number {
  const million = 1_000_000n;
  let whole = micro / million;
  let rest = micro % million;
  if (rest < 0n) {
    whole -= 1n;
    rest += million;
  }
  if (rest > 500_000n || (rest === 500_000n && whole % 2n !== 0n)) whole += 1n;
  return Number(whole);
}
