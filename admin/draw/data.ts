// What a plot is drawn from, and into what.
import type { Colours } from './colours.ts';

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
