// Money as GraphQL shows it.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import { amountOf, moneyText } from './money.ts';
import { currencyOf } from './settings.ts';

export interface Money {
  minor: number;
}

/** Money of so many minor units; null where there is no figure. */
export const money = (minor: number): Money => ({ minor });

const currency = (context: Context) => currencyOf(context);

export const MoneyRef = builder.objectRef<Money>('Money').implement({
  description:
    'Money in the lab’s currency. It is counted in whole minor units (cents) and never as a fraction; inputs take it as `amount` is written.',
  fields: (t) => ({
    minor: t.string({
      description: 'Whole minor units, as text so that no program rounds them: `8450` for 84.50 EUR.',
      resolve: ({ minor }) => String(minor),
    }),
    amount: t.string({
      description: 'The same as a decimal, such as `84.50`: what inputs take.',
      resolve: ({ minor }, _, context) => amountOf(minor, currency(context)),
    }),
    text: t.string({
      description: 'The same with its currency, for people: `84.50 EUR`.',
      resolve: ({ minor }, _, context) => moneyText(minor, currency(context)),
    }),
  }),
});

export const amountText = 'in the lab’s currency, as a decimal such as `84.50`';
