// The five answers to "can I use it?", in words, in the order in which they want attention.
import { spokenDay, spokenSpan, spokenTime } from './time.ts';

export type State = 'GOOD' | 'USE_SOON' | 'REDRY' | 'TOO_DRY' | 'UNKNOWN';

/** Most urgent first. */
export const states: readonly State[] = ['REDRY', 'USE_SOON', 'UNKNOWN', 'TOO_DRY', 'GOOD'];

/** The heading of a group, which says what to do. */
export const groupTitle: Record<State, string> = {
  REDRY: 'Redry first',
  USE_SOON: 'Use soon',
  UNKNOWN: 'Weigh first',
  TOO_DRY: 'Too dry',
  GOOD: 'Good to use',
};

/** The word in an address: `/?state=redry`. */
export const stateWord: Record<State, string> = {
  REDRY: 'redry',
  USE_SOON: 'use-soon',
  UNKNOWN: 'weigh-first',
  TOO_DRY: 'too-dry',
  GOOD: 'good',
};

export interface Lasting {
  state: State;
  hoursToLimit: number | null;
  hoursToLimitClosed?: number | null;
  isOpen?: boolean;
}

export interface Clock {
  now: Date;
  zone: string;
}

/** When the band will be left, as a person says it; beyond two days the day is enough. */
export function untilWords(hours: number, { now, zone }: Clock): string {
  const at = new Date(now.getTime() + hours * 3_600_000);
  if (hours < 1) return `for about ${spokenSpan(hours)}`;
  return `until ${hours > 48 ? spokenDay(at, now, zone) : spokenTime(at, now, zone)}`;
}

/** The answer itself, before any reason or figure. */
export function answerWords(of: Lasting, clock: Clock): string {
  const { state, hoursToLimit } = of;
  if (state === 'REDRY') return 'Redry first';
  if (state === 'UNKNOWN') return 'Weigh first';
  if (state === 'TOO_DRY') return 'Too dry';
  if (state === 'USE_SOON') {
    if (hoursToLimit === null) return 'Use soon';
    if (hoursToLimit < 1) return `Use within ${spokenSpan(hoursToLimit)}`;
    const at = new Date(clock.now.getTime() + hoursToLimit * 3_600_000);
    return `Use by ${spokenTime(at, clock.now, clock.zone)}`;
  }
  return hoursToLimit === null ? 'Good to use' : `Good to use ${untilWords(hoursToLimit, clock)}`;
}

/** What closing it would change; empty when it is shut, past its limit, or would gain neither a tenth nor an hour. */
export function closingHelps({ isOpen, state, hoursToLimit, hoursToLimitClosed }: Lasting, clock: Clock): string {
  if (!isOpen || hoursToLimit === null || state === 'REDRY' || state === 'UNKNOWN') return '';
  if (hoursToLimitClosed === null) return 'close it and it keeps for 90 days and more';
  if (hoursToLimitClosed === undefined || hoursToLimitClosed < Math.max(hoursToLimit * 1.1, hoursToLimit + 1))
    return '';
  return `close it and it lasts ${untilWords(hoursToLimitClosed, clock)}`;
}
