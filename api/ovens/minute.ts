// The planner counts in minutes.

export const minuteMs = 60_000;
