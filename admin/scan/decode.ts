// Reads symbols in pictures with zxing-wasm; the WebAssembly is a file of this admin, fetched when a picture is first read.
import { prepareZXingModule, readBarcodes, type ReaderOptions } from 'zxing-wasm/reader';
import wasmUrl from 'zxing-wasm/reader/zxing_reader.wasm?url';

prepareZXingModule({ overrides: { locateFile: (path: string) => (path.endsWith('.wasm') ? wasmUrl : path) } });

/** Our labels, and what suppliers print. */
const formats: ReaderOptions['formats'] = [
  'QRCode',
  'DataMatrix',
  'EAN13',
  'EAN8',
  'UPCA',
  'UPCE',
  'Code128',
  'Code39',
  'ITF',
  'DataBar',
  'DataBarExp',
];

/** The text of the first symbol that is read without doubt; null when there is none. FNC1 stands in it as ASCII 29. */
export async function textIn(picture: ImageData | Blob): Promise<string | null> {
  const options: ReaderOptions = { formats, maxNumberOfSymbols: 1, tryHarder: true, textMode: 'Plain' };
  const [symbol] = await readBarcodes(picture, options);
  return symbol?.isValid && symbol.text !== '' ? symbol.text : null;
}

/** Fetches what is needed ahead of the first picture. */
export const makeReady = async (): Promise<void> => {
  await textIn(new ImageData(8, 8)).catch(() => null);
};
