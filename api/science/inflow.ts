// The resistance between room air and the top of a bed: film, headspace and closure, in s/m.

/** Of one lid over one bed. With a habit the lid is off for a share of the time, and conductances are averaged. */
export interface Inflow {
  /** 1/k, widened by the ratio of bed to mouth. */
  readonly filmSPerM: number;
  /** Headspace, widened likewise, m; divided by the diffusivity of the moment. */
  readonly headM: number;
  /** A/G of the closure; infinite when sealed. */
  readonly closureSPerM: number;
  /** Share of the time that the lid is off: 1 open, 0 shut. */
  readonly openDuty: number;
  /** Learned factors of the two inflows, 1 when nothing was learned. */
  readonly openFactor: number;
  readonly closedFactor: number;
}

export function resistanceSPerM(inflow: Inflow, diffusivityM2PerS: number): number {
  const mouth = inflow.filmSPerM + inflow.headM / diffusivityM2PerS;
  const open = mouth / inflow.openFactor;
  if (inflow.openDuty === 1) return open;
  const closed = (mouth + inflow.closureSPerM) / inflow.closedFactor;
  if (inflow.openDuty === 0) return closed;
  return 1 / (inflow.openDuty / open + (1 - inflow.openDuty) / closed);
}

/** The part of the conductance that the open mouth has. */
export function openShare(inflow: Inflow, diffusivityM2PerS: number): number {
  if (inflow.openDuty === 1 || inflow.openDuty === 0) return inflow.openDuty;
  const open = (inflow.filmSPerM + inflow.headM / diffusivityM2PerS) / inflow.openFactor;
  return (inflow.openDuty / open) * resistanceSPerM(inflow, diffusivityM2PerS);
}
