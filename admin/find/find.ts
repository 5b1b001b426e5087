// From a code to its container: asks the API, which reads labels with a forgiving eye. What is no label is a supplier's
// barcode: a known one fills in what came, an unknown one is asked about.
import { ask, problemWords } from '../ask.ts';
import { containerPath, go } from '../route.svelte.ts';
import { barcodeQuestion, whichQuestion } from './questions.ts';
import { cameByCode } from './scanned.svelte.ts';
import { isLabelLike, labelIn } from './scanner.ts';

/** Goes to the container of a code; answers what to say when there is none. */
export async function goToCode(code: string): Promise<string | null> {
  try {
    const label = labelIn(code);
    const { which } = await ask(whichQuestion, { label });
    if (!which) return `Nothing here is called ${label}.`;
    cameByCode(which.label);
    go(containerPath(which.label));
    return null;
  } catch (error) {
    return problemWords(error);
  }
}

/** Goes where a scanned code belongs; answers what to say when it belongs nowhere. */
export async function goToScanned(code: string): Promise<string | null> {
  if (isLabelLike(code)) return goToCode(code);
  try {
    const { barcode } = await ask(barcodeQuestion, { code });
    go(`${barcode.learned ? '/came-in?barcode' : '/barcode?code'}=${encodeURIComponent(code)}`);
    return null;
  } catch (error) {
    return problemWords(error);
  }
}
