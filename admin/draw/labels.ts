// What is drawn behind a plot's lines and written over them.
import uPlot from 'uplot';
import { backdrop } from './backdrop.ts';
import type { PlotData, PlotFrame } from './data.ts';
import { endsNamed } from './ends.ts';
import { canvasFont } from './letters.ts';
import { limitsNamed } from './limits.ts';
import { marked } from './marks.ts';

export function drawn(data: PlotData, frame: PlotFrame): uPlot.Hooks.Arrays {
  const words = (u: uPlot): void => {
    const { ctx } = u;
    ctx.save();
    ctx.font = canvasFont();
    ctx.lineWidth = uPlot.pxRatio;
    ctx.textAlign = 'left';
    ctx.textBaseline = 'alphabetic';
    ctx.setLineDash([]);
    marked(u, data, frame);
    limitsNamed(u, data, frame, endsNamed(u, data, frame));
    ctx.restore();
  };
  return { drawClear: [(u) => backdrop(u, data, frame)], draw: [words] };
}
