// What somebody began to type survives a reload: kept on this machine until it is sent or put away.

const PREFIX = 'drumkeep:draft:';

function keptOf(key: string): Record<string, unknown> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(PREFIX + key) ?? '{}');
    return typeof kept === 'object' && kept !== null ? (kept as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

export interface Draft<T> {
  value: T;
  /** Forgets what was typed, here and on the disk. */
  clear: () => void;
}

/** A form's content under a key; call it while a component is being set up. */
export function draftOf<T extends object>(key: string, empty: T): Draft<T> {
  const begun: T = { ...empty, ...keptOf(key) };
  const draft = $state({ value: begun });
  $effect(() => {
    const words = JSON.stringify(draft.value);
    if (words === JSON.stringify(empty)) localStorage.removeItem(PREFIX + key);
    else localStorage.setItem(PREFIX + key, words);
  });
  return {
    get value() {
      return draft.value;
    },
    set value(value: T) {
      draft.value = value;
    },
    clear() {
      localStorage.removeItem(PREFIX + key);
      draft.value = { ...empty };
    },
  };
}

/** Which form of a container was left open with something in it. */
export const hasDraft = (key: string): boolean => localStorage.getItem(PREFIX + key) !== null;
