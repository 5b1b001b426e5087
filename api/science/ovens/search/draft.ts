// A change being tried: at most two ovens with another sequence, the batches made for it and those it would drop.
import { Timeline, type Sum } from '../timeline.ts';

const nothing = (): Sum => ({ figure: 0, hours: 0, guide: 0 });

class Page {
  oven = -1;
  length = 0;
  readonly slots: Int32Array;
  readonly sum = nothing();
  constructor(size: number) {
    this.slots = new Int32Array(size);
  }
}

export class Draft {
  readonly #timeline: Timeline;
  readonly #pages: readonly [Page, Page];
  readonly made: number[] = [];
  readonly dropped: number[] = [];
  readonly sum = nothing();

  constructor(timeline: Timeline) {
    this.#timeline = timeline;
    const size = timeline.model.jobs + 2;
    this.#pages = [new Page(size), new Page(size)];
  }

  begin(): void {
    this.#pages[0].oven = -1;
    this.#pages[1].oven = -1;
    this.made.length = 0;
    this.dropped.length = 0;
  }

  #page(oven: number): Page {
    const [a, b] = this.#pages;
    if (a.oven === oven) return a;
    if (b.oven === oven) return b;
    const page = a.oven < 0 ? a : b;
    const track = this.#timeline.tracks[oven]!;
    page.oven = oven;
    page.length = track.length;
    for (let i = 0; i < track.length; i += 1) page.slots[i] = track.slots[i]!;
    return page;
  }

  at(oven: number, slot: number): number {
    const page = this.#page(oven);
    for (let i = 0; i < page.length; i += 1) if (page.slots[i] === slot) return i;
    return -1;
  }

  length(oven: number): number {
    return this.#page(oven).length;
  }

  replace(oven: number, slot: number, by: number): void {
    this.#page(oven).slots[this.at(oven, slot)] = by;
  }

  set(oven: number, at: number, slot: number): void {
    this.#page(oven).slots[at] = slot;
  }

  remove(oven: number, slot: number): void {
    const page = this.#page(oven);
    const at = this.at(oven, slot);
    page.slots.copyWithin(at, at + 1, page.length);
    page.length -= 1;
  }

  insert(oven: number, at: number, slot: number): void {
    const page = this.#page(oven);
    page.slots.copyWithin(at + 1, at, page.length);
    page.slots[at] = slot;
    page.length += 1;
  }

  /** What the whole plan would come to. */
  value(): Sum {
    const [a, b] = this.#pages;
    const timeline = this.#timeline;
    if (a.oven >= 0) timeline.value(a.oven, a.slots, a.length, a.sum);
    if (b.oven >= 0) timeline.value(b.oven, b.slots, b.length, b.sum);
    timeline.total(this.sum, a.oven, a.sum, b.oven, b.sum);
    return this.sum;
  }

  accept(): void {
    for (const page of this.#pages) if (page.oven >= 0) this.#timeline.commit(page.oven, page.slots, page.length);
    for (const slot of this.dropped) this.#timeline.pool.give(slot);
  }

  reject(): void {
    for (const slot of this.made) this.#timeline.pool.give(slot);
  }
}
