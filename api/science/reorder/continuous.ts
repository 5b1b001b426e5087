// Stock watched all the time: Q is ordered when it is down to r.
import { economicQuantity, type Steady } from './economic.ts';
import { type Critical, criticalShare, normalQuantile, poissonCost } from './newsvendor.ts';

export interface Policy {
  readonly point: number;
  readonly quantity: number;
}

export interface Lasting extends Steady {
  /** For a unit and unit of time that is missing. */
  readonly backorder: number;
  /** Units of time from order to arrival. */
  readonly lead: number;
}

const critical = ({ holding, backorder }: Lasting): Critical => ({ over: holding, under: backorder });

/** The economic order quantity, and a point with safety for a normal lead-time demand. `sd` is of a unit of time. */
export function normalPolicy(of: Lasting, sd: number): Policy & { readonly safetyStock: number } {
  const safetyStock = normalQuantile(criticalShare(critical(of))) * sd * Math.sqrt(of.lead);
  return { point: of.demand * of.lead + safetyStock, quantity: economicQuantity(of), safetyStock };
}

/** The best r and Q for Poisson demand, exactly (Federgruen & Zheng, Operations Research 40 (1992) 808). */
export function poissonPolicy(of: Lasting): Policy & { readonly cost: number } {
  const mean = of.demand * of.lead;
  const rate = (position: number) => poissonCost(critical(of), mean, position);
  let top = 0;
  while (rate(top + 1) < rate(top)) top += 1;
  // The cheapest positions are taken one by one, as long as the next is below the average of all.
  let [low, high, sum] = [top, top, of.order * of.demand + rate(top)];
  for (;;) {
    const quantity = high - low + 1;
    const [below, above] = [rate(low - 1), rate(high + 1)];
    const next = Math.min(below, above);
    if (next >= sum / quantity) return { point: low - 1, quantity, cost: sum / quantity };
    sum += next;
    if (below <= above) low -= 1;
    else high += 1;
  }
}
