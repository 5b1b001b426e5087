// Times that are likely meant by "earlier": an hour ago, this morning, yesterday at the end of the day.
import { instantOf, labClock } from '../say/time.ts';

export function recentTimes(now: Date, zone: string): Date[] {
  const at = (daysBack: number, clock: string): Date | null =>
    instantOf(`${labClock(new Date(now.getTime() - daysBack * 86_400_000), zone).slice(0, 10)}T${clock}`, zone);
  const hourAgo = new Date(Math.floor((now.getTime() - 3_600_000) / 60_000) * 60_000);
  const likely = [hourAgo, at(0, '12:00'), at(0, '08:00'), at(1, '16:00'), at(1, '08:00')];
  return likely
    .filter((time): time is Date => time !== null && now.getTime() - time.getTime() >= 3_500_000)
    .filter((time, i, all) => all.findIndex((other) => other.getTime() === time.getTime()) === i)
    .slice(0, 3);
}
