// Sentences by their parts: amounts, weeks and lots are data, for whoever reads them may say them as days, as kilograms, or by
// the supplier they are to come from.

export type Part =
  | string
  | { readonly amount: number; readonly unit: string }
  | { readonly week: number }
  | { readonly fromWeek: number; readonly toWeek: number }
  | { readonly lot: string };

export type Sentence = readonly Part[];

/** A sentence with its parts between the words. */
export const sentence = (texts: TemplateStringsArray, ...parts: readonly (Part | Sentence)[]): Sentence =>
  texts
    .flatMap((text, at) => {
      const part = parts[at] ?? '';
      return [text, ...(Array.isArray(part) ? (part as Sentence) : [part as Part])];
    })
    .filter((part) => part !== '');

export const amount = (quantity: number, unit: string): Part => ({ amount: quantity, unit });

export const inWeek = (week: number): Part => ({ week });

/** "week 3", "weeks 3 to 5". */
export const span = (from: number, to: number): Part => (from === to ? { week: from } : { fromWeek: from, toWeek: to });

export const ofLot = (name: string): Part => ({ lot: name });

export const weeksText = (weeks: number): string => plural(weeks, 'week');

export const plural = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;

function plainPart(part: Part): string {
  if (typeof part === 'string') return part;
  if ('amount' in part) return `${part.amount} ${part.unit}`;
  if ('week' in part) return `week ${part.week}`;
  if ('lot' in part) return `lot ${part.lot}`;
  return `weeks ${part.fromWeek} to ${part.toWeek}`;
}

/** As the command says it. */
export const plain = (of: Sentence): string => of.map(plainPart).join('');
