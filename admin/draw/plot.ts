// A plot over time: thin lines with direct labels, pale bands, limits, and events as ticks below. Drawn by uPlot, fetched when needed.
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import type { PlotFrame, PlotData } from './data.ts';
import { FONT } from './letters.ts';
import { axisDates } from './dates.ts';
import { drawn } from './labels.ts';
import { seriesOf } from './series.ts';

function scaled(u: uPlot, key: string, { onSpan }: PlotFrame): void {
  const { min, max } = u.scales['x'] ?? {};
  if (key === 'x' && min != null && max != null) onSpan?.([min, max]);
}

export function plotOf(host: HTMLElement, data: PlotData, frame: PlotFrame): uPlot {
  const { colours, zone, width, height, sync, atPoint } = frame;
  const { series, columns, bands } = seriesOf(data, colours);
  const axis = { stroke: colours.muted, font: FONT, ticks: { show: false }, grid: { stroke: colours.rule, width: 1 } };
  const limits = (data.limits ?? []).map(({ value }) => value);
  return new uPlot(
    {
      width,
      height,
      series,
      bands,
      tzDate: (seconds) => uPlot.tzDate(new Date(seconds * 1000), zone),
      legend: { show: false },
      // On whole pixels a slow rise would go in steps.
      pxAlign: 0,
      cursor: { sync: { key: sync }, points: { size: 7 }, drag: { x: true, y: false }, y: false },
      scales: {
        y: {
          range: (_, low, high) => {
            const from = Math.min(low, ...limits, data.least?.[0] ?? low);
            const to = Math.max(high, ...limits, data.least?.[1] ?? high);
            const margin = (to - from) * 0.1 || 1;
            return [data.least?.[0] === from ? from : from - margin, to + margin];
          },
        },
      },
      axes: [
        {
          ...axis,
          values: data.undated ? () => [] : axisDates(zone),
          space: 70,
          size: data.undated ? 4 : 42,
          grid: { show: false },
        },
        { ...axis, values: (_, splits) => splits.map(data.format), size: 56, space: 28 },
      ],
      hooks: {
        ...drawn(data, frame),
        setCursor: [(u) => atPoint(u.cursor.idx ?? null)],
        setScale: [(u, key) => scaled(u, key, frame)],
      },
    },
    columns as uPlot.AlignedData,
    host,
  );
}
