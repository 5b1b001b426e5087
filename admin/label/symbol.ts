// The two-dimensional symbol of a label, drawn by bwip-js, which is fetched when it is first needed.
//
// What is in it: the six signs of the short code alone, no address and no dash. An address would name a host, and a
// lab's server is called otherwise on each machine and may move; a sheet of labels outlives that. Six signs also give
// the smallest symbols there are with strong error correction, which read well on small labels and after a smudge. A
// keyboard scanner types them on any page as it would type anything; the dash is left out since a scanner set to
// another keyboard's layout types something else for it, and the finder reads a code with or without one.

export type Symbology = 'qrcode' | 'datamatrix';

export const symbologies: readonly { value: Symbology; words: string }[] = [
  { value: 'datamatrix', words: 'Data Matrix' },
  { value: 'qrcode', words: 'QR' },
];

/** What the symbol holds. */
export const symbolText = (label: string): string => label.replaceAll('-', '').toUpperCase();

/** Quiet zone in half modules, as bwip-js counts: 4 modules around a QR code (ISO/IEC 18004), 2 around a Data Matrix, one more than ISO/IEC 16022 asks. */
const quiet: Record<Symbology, number> = { qrcode: 8, datamatrix: 4 };

/** Draws labels' symbols as SVG with their quiet zone, filling whatever box they are put in. */
export async function symbolsOf(labels: readonly string[], symbology: Symbology): Promise<Map<string, string>> {
  const { datamatrix, qrcode, drawingSVG } = await import('bwip-js/browser');
  const draw = { datamatrix, qrcode }[symbology];
  return new Map(
    labels.map((label) => {
      const padding = quiet[symbology];
      const options = {
        bcid: symbology,
        text: symbolText(label),
        scale: 1,
        padding,
        ...(symbology === 'qrcode' ? { eclevel: 'H' } : {}),
      };
      const svg: string = draw(options, drawingSVG());
      return [label, svg];
    }),
  );
}
