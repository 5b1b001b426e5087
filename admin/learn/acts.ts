// What learning a supplier's barcode tells the API.
import { act } from '../act/told.ts';
import type { Closure } from '../say/words.ts';
import { maybe, number, text, word } from '../shape.ts';

export const learnBarcodeAct = act(
  'learnBarcode',
  'BarcodeLearned',
  {
    code: text,
    sorbent: text,
    supplier: maybe(text),
    kind: word<'DRUM' | 'PLATE_BOX'>(),
    grams: maybe(number),
    plates: maybe(number),
    vessel: maybe(text),
    backing: maybe(word<'GLASS' | 'ALUMINIUM' | 'PLASTIC'>()),
    closure: maybe(word<Closure>()),
  },
  { barcode: { code: text } },
);

export const forgetBarcodeAct = act('forgetBarcode', 'BarcodeForgotten', { code: text }, { code: text });
