// The lines of a plot and the pale bands about them, as uPlot takes them.
import type uPlot from 'uplot';
import type { Colours } from './colours.ts';
import type { PlotData } from './data.ts';

interface Series {
  series: uPlot.Series[];
  columns: (number | null)[][];
  bands: uPlot.Band[];
}

export function seriesOf(data: PlotData, colours: Colours): Series {
  const series: uPlot.Series[] = [{}];
  const columns: (number | null)[][] = [data.times];
  const bands: uPlot.Band[] = [];
  for (const { label, values, dashed, colour, low, high } of data.lines) {
    if (low && high) {
      const edge = { stroke: 'transparent', width: 0, points: { show: false } };
      series.push({ ...edge, label: `${label}, high` }, { ...edge, label: `${label}, low` });
      columns.push(high, low);
      bands.push({ series: [series.length - 2, series.length - 1], fill: colours.range });
    }
    const dash = dashed ? [4, 4] : [];
    series.push({ label, stroke: colours[colour], width: 1.5, dash, points: { show: false }, spanGaps: false });
    columns.push(values);
  }
  return { series, columns, bands };
}
