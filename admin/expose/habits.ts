// How a container is used: what is asked once, the answers at hand, and what stands in words.
import type { Scooping } from './questions.ts';

export const scoopings: readonly { value: Scooping; words: string }[] = [
  { value: 'TOP', words: 'off the top' },
  { value: 'SIDE', words: 'from the side' },
  { value: 'ROLLED', words: 'after rolling' },
];

export interface HabitAnswer {
  timesADay: number;
  minutes: number;
  words: string;
}

export const habits: readonly HabitAnswer[] = [
  { timesADay: 0, minutes: 0, words: 'not every day' },
  { timesADay: 1, minutes: 5, words: 'once, 5 min' },
  { timesADay: 3, minutes: 10, words: '3 times, 10 min' },
];

interface Used {
  habit: { timesADay: number; minutes: number } | null;
  habitSaid: boolean;
  scooping: Scooping;
  scoopingSaid: boolean;
}

/** "Scooped from the side; opened 3 × 10 min a working day." Only what somebody said. */
export function usedWords({ habit, habitSaid, scooping, scoopingSaid }: Used): string {
  const parts: string[] = [];
  if (scoopingSaid) parts.push(`scooped ${scoopings.find(({ value }) => value === scooping)?.words ?? ''}`);
  if (habitSaid)
    parts.push(habit ? `opened ${habit.timesADay} × ${habit.minutes}\u00a0min a working day` : 'not opened every day');
  const words = parts.join('; ');
  return words && `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}
