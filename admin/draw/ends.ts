// The names of a plot's lines, where they end.
import uPlot from 'uplot';
import type { PlotData, PlotFrame } from './data.ts';
import { toCanvas } from './letters.ts';
import { spreadOut } from './spread.ts';

/** Where something is written already, in pixels of the canvas. */
export interface Taken {
  left: number;
  right: number;
  y: number;
}

/** What ends at about the same place, together. */
function columnsOf<E extends { x: number }>(ends: readonly E[], within: number): E[][] {
  const columns: E[][] = [];
  for (const end of ends) {
    const near = columns.find(([first]) => first && Math.abs(first.x - end.x) < within);
    if (near) near.push(end);
    else columns.push([end]);
  }
  return columns;
}

/** Writes them; answers where. */
export function endsNamed(u: uPlot, data: PlotData, { colours }: PlotFrame): Taken[] {
  const { ctx, bbox } = u;
  const ratio = uPlot.pxRatio;
  const right = bbox.left + bbox.width;
  const taken: Taken[] = [];
  const ends = data.lines.flatMap(({ label, values, colour }) => {
    const last = values.findLastIndex((value) => value !== null);
    const value = values[last];
    if (value === null || value === undefined || label === '') return [];
    const x = Math.min(right, toCanvas(u, data.times[last] ?? 0, 'x'));
    return x < bbox.left ? [] : [{ label, colour, x, y: toCanvas(u, value, 'y') - 6 * ratio }];
  });
  // Lines that end at one instant share a column of labels.
  for (const column of columnsOf(ends, 40 * ratio)) {
    const placed = spreadOut(column, 15 * ratio, bbox.top + 12 * ratio, bbox.top + bbox.height - 4 * ratio);
    for (const { label, colour, x, y } of placed) {
      const fits = x - ctx.measureText(label).width - 4 * ratio > bbox.left;
      ctx.textAlign = fits ? 'right' : 'left';
      const from = fits ? x - 4 * ratio : x + 4 * ratio;
      const wide = ctx.measureText(label).width;
      taken.push({ left: fits ? from - wide : from, right: fits ? from : from + wide, y });
      ctx.strokeStyle = colours.paper;
      ctx.lineWidth = 4 * ratio;
      ctx.strokeText(label, from, y);
      ctx.fillStyle = colours[colour];
      ctx.fillText(label, from, y);
    }
  }
  return taken;
}
