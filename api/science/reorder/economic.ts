// The economic order quantity: what is ordered at a time when demand is steady (Harris 1913).

export interface Steady {
  /** For an order, whatever its size. */
  readonly order: number;
  /** For a unit and unit of time. */
  readonly holding: number;
  /** Units in a unit of time. */
  readonly demand: number;
}

/** √(2 K λ / h) */
export const economicQuantity = ({ order, holding, demand }: Steady): number =>
  Math.sqrt((2 * order * demand) / holding);

/** What ordering `quantity` at a time costs in a unit of time: K λ / Q + h Q / 2. */
export const steadyCost = ({ order, holding, demand }: Steady, quantity: number): number =>
  (order * demand) / quantity + (holding * quantity) / 2;
