// What is taken of the lab's tanks, hood, hands and ovens while needs are planned, with a way back to any point.
import { holds, type Interval, overlaps } from './intervals.ts';
import type { PrepOven, PrepResources } from './stages.ts';
import { Usage } from './usage.ts';

export type Resource = 'tank' | 'hood' | 'hands' | 'oven';

/** One load of an oven, which others may join. */
export interface OvenBatch {
  readonly ovenId: string;
  readonly start: number;
  readonly end: number;
  readonly temperatureC: readonly [number, number];
  amount: number;
  /** It stands already, whoever else wants the oven. */
  readonly isGiven: boolean;
}

export class Ledger {
  readonly batches: OvenBatch[] = [];
  private readonly usage: Record<'tank' | 'hood' | 'hands', Usage>;
  private readonly journal: (() => void)[] = [];
  readonly resources: PrepResources;
  /** What is taken to be endless, to learn what stands in the way. */
  private endless: Resource | null = null;

  constructor(resources: PrepResources) {
    this.resources = resources;
    this.usage = {
      tank: new Usage(resources.tanks),
      hood: new Usage(resources.hoodPlaces),
      hands: new Usage(resources.hands),
    };
  }

  /** Tries something as if there were no end of one resource; nothing of it stays. */
  without<Result>(resource: Resource, attempt: () => Result): Result {
    this.endless = resource;
    const mark = this.mark();
    const result = attempt();
    this.backTo(mark);
    this.endless = null;
    return result;
  }

  /** Whether so much could ever be taken at once. */
  couldFit(of: 'tank' | 'hood' | 'hands', amount: number): boolean {
    return this.endless === of || amount <= this.usage[of].capacity;
  }

  fits(of: 'tank' | 'hood' | 'hands', from: number, to: number, amount: number): boolean {
    return this.endless === of || amount === 0 || from === to || this.usage[of].fits(from, to, amount);
  }

  take(of: 'tank' | 'hood' | 'hands', from: number, to: number, amount: number): void {
    if (amount > 0 && to > from) this.journal.push(this.usage[of].take(from, to, amount));
  }

  /** What keeps an oven from being free for a whole stretch; null where nothing does. */
  inTheWay(oven: PrepOven, from: number, to: number): Interval | null {
    if (this.endless === 'oven') return null;
    const stretch = { from, to };
    const busy = oven.busy.find((each) => overlaps(each, stretch));
    if (busy) return busy;
    const batch = this.batches.find(
      ({ ovenId, start, end }) => ovenId === oven.id && overlaps({ from: start, to: end }, stretch),
    );
    return batch ? { from: batch.start, to: batch.end } : null;
  }

  addBatch(batch: OvenBatch): void {
    this.batches.push(batch);
    this.journal.push(() => this.batches.splice(this.batches.lastIndexOf(batch), 1));
  }

  joinBatch(batch: OvenBatch, amount: number): void {
    batch.amount += amount;
    this.journal.push(() => (batch.amount -= amount));
  }

  /** Somebody is there, from and to, in one stretch of working hours. */
  isOpen(from: number, to: number): boolean {
    return holds(this.resources.open, from, to);
  }

  mark(): number {
    return this.journal.length;
  }

  backTo(mark: number): void {
    while (this.journal.length > mark) this.journal.pop()?.();
  }
}
