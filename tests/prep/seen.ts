// A need and its steps as tests look at them.

export interface SeenStep {
  id: string;
  kind: string;
  startAt: string;
  endAt: string;
  doneAt: string | null;
  place: string;
  sentence: string;
  closedBecause: string | null;
}

export interface SeenNeed {
  id: string;
  state: string;
  obstacle: { what: string; sentence: string } | null;
  firstPossibleAt: string | null;
  steps: SeenStep[];
  kept: { dryGrams: number | null; plates: number | null; container: { label: string } }[];
}

export const needFields = `id state obstacle { what sentence } firstPossibleAt
  steps { id kind startAt endAt doneAt place sentence closedBecause } kept { dryGrams plates container { label } }`;
