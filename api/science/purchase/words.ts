// Quantities and weeks in words.

export const amount = (quantity: number, unit: string): string => `${quantity} ${unit}`;

export const weeksText = (weeks: number): string => (weeks === 1 ? '1 week' : `${weeks} weeks`);

/** "week 3", "weeks 3 to 5". */
export const span = (from: number, to: number): string => (from === to ? `week ${from}` : `weeks ${from} to ${to}`);

export const plural = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;
