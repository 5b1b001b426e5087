// The names of a plot's limits, where nothing else is written.
import uPlot from 'uplot';
import type { PlotData, PlotFrame } from './data.ts';
import type { Taken } from './ends.ts';
import { toCanvas } from './letters.ts';

export function limitsNamed(u: uPlot, data: PlotData, { colours }: PlotFrame, taken: Taken[]): void {
  const { ctx, bbox } = u;
  const ratio = uPlot.pxRatio;
  const right = bbox.left + bbox.width;
  // A limit is named where no other label stands: above its line or below, left or right.
  ctx.textAlign = 'left';
  ctx.fillStyle = colours.wet;
  for (const { value, label } of data.limits ?? []) {
    const line = toCanvas(u, value, 'y');
    const wide = ctx.measureText(label).width;
    const places = [line - 5 * ratio, line + 14 * ratio].flatMap((y) =>
      [bbox.left + 6 * ratio, right - wide - 6 * ratio].map((left) => ({ left, y })),
    );
    const meets = ({ left, y }: { left: number; y: number }): boolean =>
      taken.some((other) => other.left < left + wide && other.right > left && Math.abs(other.y - y) < 13 * ratio);
    const place = places.find((one) => !meets(one)) ?? places[0];
    if (!place) continue;
    taken.push({ left: place.left, right: place.left + wide, y: place.y });
    ctx.strokeStyle = colours.paper;
    ctx.lineWidth = 3 * ratio;
    ctx.strokeText(label, place.left, place.y);
    ctx.fillText(label, place.left, place.y);
  }
}
