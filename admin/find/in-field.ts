// A scanner's code that lands in a field somebody types in: heard all the same, and what the field held is known.

/** Longest pause between two signs of a scanner; people are slower. */
const SCANNER_PAUSE_MS = 45;

export interface InField {
  code: string;
  /** What the field held before the first sign of it. */
  before: string;
}

/** Hears keys pressed in fields; answers a code of six signs and more when Enter or Tab ends a burst of them. */
export function fieldReader(): (key: string, atMs: number, held: string) => InField | null {
  let signs = '';
  let before = '';
  let lastMs = Number.NEGATIVE_INFINITY;
  return (key, atMs, held) => {
    if (key === 'Shift' || key === 'CapsLock') return null;
    const close = atMs - lastMs <= SCANNER_PAUSE_MS;
    lastMs = atMs;
    if (!close) {
      signs = '';
      before = held;
    }
    if (key === 'Enter' || key === 'Tab') {
      const code = signs;
      signs = '';
      return close && code.length >= 6 ? { code, before } : null;
    }
    signs = key.length === 1 ? signs + key : '';
    return null;
  };
}
