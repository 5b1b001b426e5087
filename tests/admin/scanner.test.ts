// Keys of a scanner and keys of a person, told apart by their pace.
import { describe, expect, it } from 'vitest';
import { labelIn, readerOf } from '../../admin/find/scanner.ts';

/** Types keys with a pause between them, running what was put off in between; answers what was heard. */
function typed(keys: string[], pauseMs: number) {
  const heard: { scanned: string[]; pressed: string[] } = { scanned: [], pressed: [] };
  let now = 0;
  let waiting: { at: number; run: () => void }[] = [];
  const reader = readerOf(
    (code) => heard.scanned.push(code),
    (key) => heard.pressed.push(key),
    (run, ms) => waiting.push({ at: now + ms, run }),
  );
  const upTo = (time: number): void => {
    for (const { run } of waiting.filter(({ at }) => at <= time)) run();
    waiting = waiting.filter(({ at }) => at > time);
  };
  for (const key of keys) {
    now += pauseMs;
    upTo(now);
    reader.press(key, now);
  }
  upTo(Number.POSITIVE_INFINITY);
  return heard;
}

describe('a keyboard scanner', () => {
  it('is heard as one code, and none of its signs as a command', () => {
    expect(typed([...'4M7-2XK', 'Enter'], 8)).toEqual({ scanned: ['4M7-2XK'], pressed: [] });
  });
  it('is not taken for a person whose keys come one by one', () => {
    expect(typed([...'jjo'], 200)).toEqual({ scanned: [], pressed: ['j', 'j', 'o'] });
  });
  it('needs its Enter: a burst without one is nothing', () => {
    expect(typed([...'4M7-2XK'], 8)).toEqual({ scanned: [], pressed: [] });
  });
  it('may print an address: its last part is the label', () => {
    expect(labelIn('http://127.0.0.1:4600/c/4M7-2XK?from=label')).toBe('4M7-2XK');
    expect(labelIn(' 4m7 2xk ')).toBe('4m7 2xk');
    expect(labelIn('https://lab/c/4M7%2D2XK/')).toBe('4M7-2XK');
  });
});
