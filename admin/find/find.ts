// From a code to its container: asks the API, which reads labels with a forgiving eye. What is no label is a supplier's
// barcode: a known one fills in what came, an unknown one is asked about.
import { ask, problemWords, Unreachable } from '../ask.ts';
import { keptLabel } from '../later/kept-label.ts';
import { containerPath, go } from '../route.svelte.ts';
import { stock } from '../watch/stock.svelte.ts';
import { barcodeQuestion, whichQuestion } from './questions.ts';
import { cameByCode } from './scanned.svelte.ts';
import { isLabelLike, labelIn } from './scanner.ts';

/** Goes to the container of a code; answers what to say when there is none. */
export async function goToCode(code: string): Promise<string | null> {
  const label = labelIn(code);
  try {
    const { which } = await ask(whichQuestion, { label });
    if (!which) return `Nothing here is called ${label}.`;
    cameByCode(which.label);
    go(containerPath(which.label));
    return null;
  } catch (error) {
    const kept = error instanceof Unreachable ? await lastSeen(label) : null;
    if (kept === null) return problemWords(error);
    cameByCode(kept);
    go(containerPath(kept));
    return null;
  }
}

/** The label of a container that this machine saw before, for when nobody answers. */
async function lastSeen(code: string): Promise<string | null> {
  await stock.recalled();
  return keptLabel(
    code,
    stock.all().map(({ label }) => label),
  );
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
