// From a code to its container: asks the API, which reads labels with a forgiving eye. What is no label is a supplier's
// barcode: a known one fills in what came, an unknown one is asked about.
import { ask, problemWords, Unreachable } from '../ask.ts';
import { keptLabel } from '../later/kept-label.ts';
import { containerPath, go } from '../route.svelte.ts';
import { stock } from '../watch/stock.svelte.ts';
import { barcodeQuestion, whichQuestion } from './questions.ts';
import { cameByCode } from './scanned.svelte.ts';
import { isLabelLike, labelIn } from './scanner.ts';

/** Opens a container that was named by its code. */
export function openByCode(label: string): void {
  cameByCode(label);
  go(containerPath(label));
}

/** The label of the container that a code belongs to; null when there is none, or nobody can tell. */
export async function labelledBy(code: string): Promise<string | null> {
  try {
    return (await ask(whichQuestion, { label: labelIn(code) })).which?.label ?? null;
  } catch (error) {
    return error instanceof Unreachable ? lastSeen(labelIn(code)) : null;
  }
}

/** Goes to the container of a code; answers what to say when there is none. */
export async function goToCode(code: string): Promise<string | null> {
  const label = labelIn(code);
  try {
    const { which } = await ask(whichQuestion, { label });
    if (!which) return `Nothing here is called ${label}.`;
    openByCode(which.label);
    return null;
  } catch (error) {
    const kept = error instanceof Unreachable ? await lastSeen(label) : null;
    if (kept === null) return problemWords(error);
    openByCode(kept);
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
