// Dates below a plot as one reads them here.
import uPlot from 'uplot';

const h24: uPlot.DateNames = {
  MMMM: [
    'January',
    'February',
    'March',
    'April',
    'May',
    'June',
    'July',
    'August',
    'September',
    'October',
    'November',
    'December',
  ],
  MMM: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
  WWWW: ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'],
  WWW: ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'],
};

/** Dates on the axis as one reads them here: clock within days, day and month beyond. */
export function axisDates(zone: string) {
  const day = uPlot.fmtDate('{WWW} {D} {MMM}', h24);
  const clock = uPlot.fmtDate('{HH}:{mm}', h24);
  const month = uPlot.fmtDate('{MMM} {YYYY}', h24);
  return (_: uPlot, splits: number[], __: number, ___: number, step: number): string[] =>
    splits.map((split, i) => {
      const at = uPlot.tzDate(new Date(split * 1000), zone);
      const before = splits[i - 1];
      const newDay = before === undefined || uPlot.tzDate(new Date(before * 1000), zone).getDate() !== at.getDate();
      if (step >= 28 * 86_400) return month(at);
      if (step >= 86_400) return day(at);
      return newDay ? `${clock(at)}\n${day(at)}` : clock(at);
    });
}
