// The stretch of time in which a run under way, or waited for, can lie.
const dayMs = 86_400_000;

export const underWayIn = (now: Date, days = 60): { from: string; to: string } => ({
  from: new Date(now.getTime() - 7 * dayMs).toISOString(),
  to: new Date(now.getTime() + days * dayMs).toISOString(),
});
