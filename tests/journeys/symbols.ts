// Symbols for the journeys: drawn as pictures and as frames of a camera, and read again from pictures.
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { createCanvas, loadImage, type Canvas } from '@napi-rs/canvas';
import { toBuffer, type RenderOptions } from 'bwip-js/node';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';

const wasm = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
prepareZXingModule({ overrides: { wasmBinary: Uint8Array.from(readFileSync(wasm)).buffer } });

export interface Read {
  text: string;
  format: string;
  /** Middle of the symbol, as a share of the picture's width and height. */
  across: number;
  down: number;
}

/** Every symbol of a picture. */
export async function readAll(canvas: Canvas): Promise<Read[]> {
  const { width, height } = canvas;
  const picture = canvas.getContext('2d').getImageData(0, 0, width, height) as unknown as ImageData;
  const symbols = await readBarcodes(picture, { formats: ['QRCode', 'DataMatrix'], tryHarder: true });
  return symbols
    .filter(({ isValid }) => isValid)
    .map(({ text, format, position }) => {
      const corners = [position.topLeft, position.topRight, position.bottomLeft, position.bottomRight];
      const middle = (of: (corner: { x: number; y: number }) => number): number =>
        corners.reduce((sum, corner) => sum + of(corner), 0) / corners.length;
      return { text, format, across: middle(({ x }) => x) / width, down: middle(({ y }) => y) / height };
    });
}

/** A symbol on white, as a phone would see it on a label: PNG. */
export async function picture(options: RenderOptions, width = 640, height = 480): Promise<Canvas> {
  const symbol = await loadImage(await toBuffer({ scale: 6, padding: 12, backgroundcolor: 'ffffff', ...options }));
  const canvas = createCanvas(width, height);
  const context = canvas.getContext('2d');
  context.fillStyle = '#fff';
  context.fillRect(0, 0, width, height);
  const scale = Math.min(1, (width * 0.8) / symbol.width, (height * 0.6) / symbol.height);
  const [w, h] = [symbol.width * scale, symbol.height * scale];
  context.drawImage(symbol, (width - w) / 2, (height - h) / 2, w, h);
  return canvas;
}

/** Writes a picture as a film for Chromium's fake camera: YUV4MPEG2, 4:2:0, grey. */
export function writeFilm(canvas: Canvas, file: string): void {
  const { width, height } = canvas;
  const { data } = canvas.getContext('2d').getImageData(0, 0, width, height);
  const luma = Buffer.alloc(width * height);
  for (let i = 0; i < luma.length; i += 1) luma[i] = 16 + Math.round(((data[i * 4] ?? 0) * 219) / 255);
  const chroma = Buffer.alloc((width * height) / 2, 128);
  const frame = Buffer.concat([Buffer.from('FRAME\n'), luma, chroma]);
  const head = Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420jpeg\n`);
  writeFileSync(file, Buffer.concat([head, ...Array.from({ length: 5 }, () => frame)]));
}
