// What stands behind the lines of a plot: what was filled rather than measured.
import uPlot from 'uplot';
import type { PlotData, PlotFrame } from './data.ts';
import { canvasFont, toCanvas } from './letters.ts';

/** Thin slanted lines: what was not measured is told from what was without colour. */
function hatched(
  ctx: CanvasRenderingContext2D,
  { left, right, top, bottom }: { left: number; right: number; top: number; bottom: number },
  colour: string,
): void {
  const gap = 7 * uPlot.pxRatio;
  ctx.save();
  ctx.beginPath();
  ctx.rect(left, top, right - left, bottom - top);
  ctx.clip();
  ctx.strokeStyle = colour;
  ctx.lineWidth = uPlot.pxRatio / 2;
  ctx.beginPath();
  for (let x = left - (bottom - top); x < right; x += gap) {
    ctx.moveTo(x, bottom);
    ctx.lineTo(x + bottom - top, top);
  }
  ctx.stroke();
  ctx.restore();
}

export function backdrop(u: uPlot, data: PlotData, { colours }: PlotFrame): void {
  const { ctx, bbox } = u;
  ctx.save();
  ctx.fillStyle = colours.tinted;
  for (const { from, until } of data.filled ?? []) {
    const left = Math.max(bbox.left, toCanvas(u, from, 'x'));
    const right = Math.min(bbox.left + bbox.width, toCanvas(u, until, 'x'));
    if (!(right > left)) continue;
    ctx.fillRect(left, bbox.top, right - left, bbox.height);
    hatched(ctx, { left, right, top: bbox.top, bottom: bbox.top + bbox.height }, colours.line);
    if (right - left < 48 * uPlot.pxRatio) continue;
    ctx.font = canvasFont();
    ctx.fillStyle = colours.muted;
    ctx.fillText('filled', left + 5 * uPlot.pxRatio, bbox.top + bbox.height - 6 * uPlot.pxRatio);
    ctx.fillStyle = colours.tinted;
  }
  ctx.restore();
}
