// What the plan could not meet, and what somebody should look at, one sentence each.
import { overflowOf } from './exact.ts';
import type { Item, Model } from './model.ts';
import { type ItemPlan, lotName, lotsOf } from './plan.ts';
import type { Tally } from './tally.ts';
import { amount, inWeek, ofLot, plural, type Sentence, sentence, span } from './words.ts';

function ofItem(model: Model, item: Item, plan: ItemPlan, tally: Tally): Sentence[] {
  const { id, source } = item;
  const said: Sentence[] = [];
  if (tally.shortage > 0) {
    const from = tally.missing.findIndex((quantity) => quantity > 0);
    const to = tally.missing.findLastIndex((quantity) => quantity > 0);
    said.push(
      sentence`${id}: ${amount(tally.shortage, source.unit)} of what is needed will be missing in ${span(from, to)}.`,
    );
  }
  plan.covered.forEach((lot, i) => {
    if (lot === null) said.push(sentence`${id}: no lot covers campaign ${item.campaigns[i]!.id}.`);
  });
  if (tally.alone > 0)
    said.push(sentence`${id}: ${plural(tally.alone, 'check')} will be made without enough of an old lot.`);
  if (tally.belowSafety > 0)
    said.push(sentence`${id}: stock will be below its safety of ${amount(source.safety, source.unit)}.`);
  const lots = lotsOf(item, plan);
  tally.wasteOf.forEach((quantity, lot) => {
    if (quantity > 0) {
      const when = lots[lot]!.last;
      const name = lotName(item, plan, lot);
      said.push(
        sentence`${id}: ${amount(quantity, source.unit)} of ${ofLot(name)} will be written off after ${inWeek(when)}.`,
      );
    }
  });
  model.problem.lots.forEach(({ id: lot, item: of, status }) => {
    if (of === id && status === 'rejected') said.push(sentence`${id}: ${ofLot(lot)} is rejected and left out.`);
  });
  return said;
}

export function warningsOf(model: Model, plans: readonly ItemPlan[], tallies: readonly Tally[]): Sentence[] {
  const over = overflowOf(
    model,
    tallies.map(({ peak }) => peak),
  );
  return [
    ...model.items.flatMap((item) => ofItem(model, item, plans[item.index]!, tallies[item.index]!)),
    ...model.problem.storage.flatMap(({ id }, group) =>
      over[group]! > 0 ? [sentence`${id}: more will be stored than fits.`] : [],
    ),
  ];
}
