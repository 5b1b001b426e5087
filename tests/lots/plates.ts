// Plates of an old and a new lot, as a table, and what is asked of their check.
export const checkFields = `check { id verdict { outcome sentence margin isMarginDefault more moreIfSame
  quantities { name outcome difference low high p sd oldPlates newPlates more values { isNew value run { id } } } } }
  runs { id at waterFraction isWaterFilled humidityPercent temperatureC isAirFilled container { label } lot { lotNumber } }`;

export interface Kept {
  check: {
    id: string;
    verdict: {
      outcome: string;
      sentence: string;
      margin: number;
      isMarginDefault: boolean;
      more: number | null;
      moreIfSame: number | null;
      quantities: {
        name: string;
        outcome: string;
        difference: number | null;
        low: number | null;
        oldPlates: number;
        newPlates: number;
        values: { isNew: boolean; value: number; run: { id: string } }[];
      }[];
    };
  };
  runs: {
    id: string;
    at: string;
    waterFraction: number | null;
    isWaterFilled: boolean;
    humidityPercent: number | null;
    isAirFilled: boolean;
    lot: { lotNumber: string };
  }[];
}

/** Nine plates of each lot in three tanks; the new one so much higher. */
export function table(higher: number): string {
  const noise = [0, 0.01, -0.01, 0.02, -0.02, 0.01, 0, -0.01, 0.015];
  const row = (lot: string, i: number, more: number): string => {
    const red = 0.42 + (noise[i] ?? 0) + more;
    return [lot, `T${1 + Math.floor(i / 3)}`, red.toFixed(3), (0.61 + (noise[8 - i] ?? 0) + more).toFixed(3)].join(
      '\t',
    );
  };
  const rows = noise.flatMap((_, i) => [row('old', i, 0), row('new', i, higher)]);
  return ['lot\ttank\tSudan red\tSudan yellow', ...rows].join('\n');
}
