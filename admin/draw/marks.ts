// The lines of a plot's limits, and its events as ticks below.
import uPlot from 'uplot';
import type { PlotData, PlotFrame } from './data.ts';
import { toCanvas } from './letters.ts';

export function marked(u: uPlot, data: PlotData, { colours }: PlotFrame): void {
  const { ctx, bbox } = u;
  const ratio = uPlot.pxRatio;
  for (const { value } of data.limits ?? []) {
    const y = Math.round(toCanvas(u, value, 'y')) + 0.5;
    ctx.strokeStyle = colours.wet;
    ctx.beginPath();
    ctx.moveTo(bbox.left, y);
    ctx.lineTo(bbox.left + bbox.width, y);
    ctx.stroke();
  }
  ctx.strokeStyle = colours.ink;
  for (const tick of data.ticks ?? []) {
    const x = Math.round(toCanvas(u, tick, 'x')) + 0.5;
    if (x < bbox.left || x > bbox.left + bbox.width) continue;
    ctx.beginPath();
    ctx.moveTo(x, bbox.top + bbox.height);
    ctx.lineTo(x, bbox.top + bbox.height - 9 * ratio);
    ctx.stroke();
  }
}
