// What a scanned barcode fills into the form of what came in, and what it says of that.
import type { Typed } from '../act/field.ts';
import type { barcodeQuestion } from '../find/questions.ts';
import type { Answer } from '../shape.ts';

type Read = Answer<typeof barcodeQuestion.shape>['barcode'];

const words = (value: string | number | null | undefined): string => (value == null ? '' : String(value));

/** The fields that it answers, as typed. */
export function filledIn({ lotNumber, expiresOn, learned }: Read): Typed {
  const known: Typed = learned
    ? {
        sorbent: learned.sorbent.name,
        supplier: words(learned.supplier?.name),
        kind: learned.kind,
        grams: words(learned.grams),
        plates: words(learned.plates),
        backing: words(learned.backing),
        vessel: words(learned.vessel?.name),
        closure: words(learned.closure),
      }
    : {};
  const note = expiresOn ? `expires ${expiresOn}, by its barcode` : '';
  const all = { ...known, lotNumber: words(lotNumber), note };
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== ''));
}

/** "Silica 40 to 63 µm, by its barcode. Lot number and how many are left to say." */
export function filledWords({ lotNumber, learned, code }: Read): string {
  if (!learned) return `Nobody said yet what ${code} is; fill in what you see.`;
  const left = lotNumber ? 'Look at the lot number, and say how many.' : 'The lot number and how many are left to say.';
  return `${learned.sorbent.name}, by its barcode. ${left}`;
}
