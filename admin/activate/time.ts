// An instant as one says it of plates.
import { spokenTime } from '../say/time.ts';
import type { Clock } from '../say/state.ts';

export const time = (at: string, { now, zone }: Clock): string => spokenTime(new Date(at), now, zone);
