// A printed PDF as pictures, page by page.
import { createCanvas, type Canvas } from '@napi-rs/canvas';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface Printed {
  widthMm: number;
  heightMm: number;
  picture: Canvas;
  /** The words on it. */
  text: string;
  /** Height of its smallest letters, pt. */
  smallestPt: number;
}

const mmPerPoint = 25.4 / 72;
/** Dots to the inch at which the pages are drawn. */
const dpi = 200;

export async function pagesOf(pdf: Buffer): Promise<Printed[]> {
  const task = getDocument({ data: new Uint8Array(pdf), verbosity: 0 });
  const document = await task.promise;
  const pages: Printed[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
    const viewport = page.getViewport({ scale: dpi / 72 });
    const picture = createCanvas(Math.ceil(viewport.width), Math.ceil(viewport.height));
    await page.render({ canvas: picture as never, canvasContext: picture.getContext('2d') as never, viewport }).promise;
    const { items } = await page.getTextContent();
    const text = items.map((item) => ('str' in item ? item.str : '')).join(' ');
    const heights = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item.height] : []));
    const smallestPt = Math.min(...heights);
    pages.push({
      widthMm: (right - left) * mmPerPoint,
      heightMm: (top - bottom) * mmPerPoint,
      picture,
      text,
      smallestPt,
    });
  }
  await task.destroy();
  return pages;
}
