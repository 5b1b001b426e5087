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
  /** Hears the span that is looked at, seconds since 1970. */
  onSpan?: (span: [number, number]) => void;
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

function drawn(data: PlotData, { colours }: PlotFrame): uPlot.Hooks.Arrays {
  const toCanvas = (u: uPlot, value: number, scale: string): number => u.valToPos(value, scale, true);
  const backdrop = (u: uPlot): void => {
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
      ctx.font = FONT.replace('12px', `${12 * uPlot.pxRatio}px`);
      ctx.fillStyle = colours.muted;
      ctx.fillText('filled', left + 5 * uPlot.pxRatio, bbox.top + bbox.height - 6 * uPlot.pxRatio);
      ctx.fillStyle = colours.tinted;
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
    const right = bbox.left + bbox.width;
    const taken: { left: number; right: number; y: number }[] = [];
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
    ctx.restore();
  };
  return { drawClear: [backdrop], draw: [words] };
}

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

function scaled(u: uPlot, key: string, { onSpan }: PlotFrame): void {
  const { min, max } = u.scales['x'] ?? {};
  if (key === 'x' && min != null && max != null) onSpan?.([min, max]);
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
