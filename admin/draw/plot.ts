// A plot over time: thin lines with direct labels, pale bands, limits, and events as ticks below. Drawn by uPlot, fetched when needed.
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import type { Colours } from './colours.ts';
import { spreadOut } from './spread.ts';

export interface PlotLine {
  label: string;
  values: (number | null)[];
  dashed?: boolean;
  colour: keyof Colours;
  /** The range about it. */
  low?: (number | null)[];
  high?: (number | null)[];
}

export interface PlotData {
  /** Seconds since 1970. */
  times: number[];
  lines: PlotLine[];
  limits?: { value: number; label: string }[];
  /** Instants of events, seconds since 1970. */
  ticks?: number[];
  /** Spans that were filled rather than measured. */
  filled?: { from: number; until: number }[];
  format: (value: number) => string;
  /** Dates stand under another plot of the same time. */
  undated?: boolean;
  /** The least the axis spans. */
  least?: [number, number];
}

export interface PlotFrame {
  width: number;
  height: number;
  zone: string;
  sync: string;
  colours: Colours;
  /** Hears which point the cursor is at; null when it left. */
  atPoint: (index: number | null) => void;
}

const FONT = '12px system-ui, sans-serif';
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
function axisDates(zone: string) {
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

function drawn(data: PlotData, { colours }: PlotFrame): uPlot.Hooks.Arrays {
  const toCanvas = (u: uPlot, value: number, scale: string): number => u.valToPos(value, scale, true);
  const backdrop = (u: uPlot): void => {
    const { ctx, bbox } = u;
    ctx.save();
    ctx.fillStyle = colours.tinted;
    for (const { from, until } of data.filled ?? []) {
      const left = Math.max(bbox.left, toCanvas(u, from, 'x'));
      const right = Math.min(bbox.left + bbox.width, toCanvas(u, until, 'x'));
      if (right > left) ctx.fillRect(left, bbox.top, right - left, bbox.height);
    }
    ctx.restore();
  };
  const words = (u: uPlot): void => {
    const { ctx, bbox } = u;
    const ratio = uPlot.pxRatio;
    ctx.save();
    ctx.font = FONT.replace('12px', `${12 * ratio}px`);
    ctx.lineWidth = ratio;
    ctx.textAlign = 'left';
    ctx.textBaseline = 'alphabetic';
    ctx.setLineDash([]);
    for (const { value, label } of data.limits ?? []) {
      const y = Math.round(toCanvas(u, value, 'y')) + 0.5;
      ctx.strokeStyle = ctx.fillStyle = colours.wet;
      ctx.beginPath();
      ctx.moveTo(bbox.left, y);
      ctx.lineTo(bbox.left + bbox.width, y);
      ctx.stroke();
      ctx.fillText(label, bbox.left + 6 * ratio, y - 5 * ratio);
    }
    ctx.strokeStyle = colours.ink;
    for (const tick of data.ticks ?? []) {
      const x = Math.round(toCanvas(u, tick, 'x')) + 0.5;
      if (x < bbox.left || x > bbox.left + bbox.width) continue;
      ctx.beginPath();
      ctx.moveTo(x, bbox.top + bbox.height);
      ctx.lineTo(x, bbox.top + bbox.height - 7 * ratio);
      ctx.stroke();
    }
    ctx.textAlign = 'right';
    const ends = data.lines.flatMap(({ label, values, colour }) => {
      const last = values.findLastIndex((value) => value !== null);
      const value = values[last];
      return value === null || value === undefined ? [] : [{ label, colour, y: toCanvas(u, value, 'y') - 6 * ratio }];
    });
    for (const { label, colour, y } of spreadOut(
      ends,
      15 * ratio,
      bbox.top + 12 * ratio,
      bbox.top + bbox.height - 4 * ratio,
    )) {
      ctx.strokeStyle = colours.paper;
      ctx.lineWidth = 4 * ratio;
      ctx.strokeText(label, bbox.left + bbox.width - 4 * ratio, y);
      ctx.fillStyle = colours[colour];
      ctx.fillText(label, bbox.left + bbox.width - 4 * ratio, y);
    }
    ctx.restore();
  };
  return { drawClear: [backdrop], draw: [words] };
}

export function plotOf(host: HTMLElement, data: PlotData, frame: PlotFrame): uPlot {
  const { colours, zone, width, height, sync, atPoint } = frame;
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
      hooks: { ...drawn(data, frame), setCursor: [(u) => atPoint(u.cursor.idx ?? null)] },
    },
    columns as uPlot.AlignedData,
    host,
  );
}
