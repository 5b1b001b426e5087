// Tells a keyboard scanner from a person: a scanner types a whole code within moments and ends it with Enter or Tab.

/** Longest pause between two signs of a scanner; people are slower. */
const SCANNER_PAUSE_MS = 45;
/** The shortest code read: five signs and a check sign. */
const SHORTEST = 6;
/** FNC1 between the elements of a supplier's barcode: scanners press Ctrl and ] for it (ASCII 29). */
const SEPARATOR = '\u001d';

export interface Reader {
  /** Takes a key; true when it belongs to a scan, so that the page leaves it alone. */
  press: (key: string, atMs: number, withCtrl?: boolean) => boolean;
}

/**
 * A reader of keys typed outside any field. `scanned` hears whole codes; `pressed` hears single keys,
 * a moment late, so that the first sign of a code is not taken for a command.
 */
export function readerOf(
  scanned: (code: string) => void,
  pressed: (key: string) => void,
  later: (run: () => void, ms: number) => void,
): Reader {
  let signs = '';
  let lastMs = Number.NEGATIVE_INFINITY;
  let burst = 0;
  return {
    press(key, atMs, withCtrl = false) {
      // Pressed between the signs of a code, these say nothing themselves.
      if (key === 'Shift' || key === 'Control' || key === 'CapsLock') return false;
      const close = atMs - lastMs <= SCANNER_PAUSE_MS;
      if (withCtrl) {
        if (key !== ']' || !close || signs === '') return false;
        lastMs = atMs;
        signs += SEPARATOR;
        return true;
      }
      lastMs = atMs;
      if (!close) {
        signs = '';
        burst += 1;
      }
      if (key === 'Enter' || key === 'Tab') {
        const code = signs;
        signs = '';
        if (!close || code.length < SHORTEST) return false;
        scanned(code);
        return true;
      }
      if (key.length !== 1) return false;
      signs += key;
      const mine = burst;
      const alone = signs.length === 1;
      if (alone) later(() => mine === burst && signs.length === 1 && pressed(key), SCANNER_PAUSE_MS + 5);
      return !alone;
    },
  };
}

/** The label in what was scanned or typed: the code itself, or the last part of an address that ends in it. */
export function labelIn(code: string): string {
  const words = code.trim();
  const last = /^https?:/i.test(words) ? (words.split(/[?#]/)[0] ?? '').split('/').filter(Boolean).at(-1) : words;
  try {
    return decodeURIComponent(last ?? words);
  } catch {
    return last ?? words;
  }
}

/** Six letters and digits, whatever stands between them: a label of ours. A supplier's barcode is longer. */
export const isLabelLike = (code: string): boolean => /^[0-9a-z?]{6}$/i.test(labelIn(code).replace(/[\s\-–—_.]/g, ''));
