// Where a value stands on the canvas of a plot, and the letters there.
import uPlot from 'uplot';

export const FONT = '12px system-ui, sans-serif';

/** The same letters in the canvas's own pixels. */
export const canvasFont = (): string => FONT.replace('12px', `${12 * uPlot.pxRatio}px`);

export const toCanvas = (u: uPlot, value: number, scale: string): number => u.valToPos(value, scale, true);
