// Keys of a scanner and keys of a person, told apart by their pace.
import { describe, expect, it } from 'vitest';
import { fieldReader } from '../../admin/find/in-field.ts';
import { isLabelLike, labelIn, readerOf } from '../../admin/find/scanner.ts';
import { giveScan, takeScans } from '../../admin/find/taker.ts';

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
  it('may end with Tab instead', () => {
    expect(typed([...'4M72XK', 'Tab'], 8)).toEqual({ scanned: ['4M72XK'], pressed: [] });
  });
  it('may press Shift for its capitals', () => {
    expect(typed(['Shift', '4', 'Shift', 'M', '7', '2', 'Shift', 'X', 'Shift', 'K', 'Enter'], 8).scanned).toEqual([
      '4M72XK',
    ]);
  });
  it('is heard as often as it scans', () => {
    expect(typed([...'4M72XK', 'Enter', ...'4M72XK', 'Enter'], 8).scanned).toEqual(['4M72XK', '4M72XK']);
  });
  it('sends FNC1 of a supplier’s barcode as Ctrl and ]', () => {
    const codes: string[] = [];
    const reader = readerOf(
      (code) => codes.push(code),
      () => {},
      () => {},
    );
    [...'10F-118'].forEach((key, i) => reader.press(key, i * 5));
    expect(reader.press(']', 40, true)).toBe(true);
    [...'2110', 'Enter'].forEach((key, i) => reader.press(key, 45 + i * 5));
    expect(codes).toEqual(['10F-118\u001d2110']);
    expect(reader.press(']', 5_000, true)).toBe(false);
  });
  it('may print an address: its last part is the label', () => {
    expect(labelIn('http://127.0.0.1:4600/c/4M7-2XK?from=label')).toBe('4M7-2XK');
    expect(labelIn(' 4m7 2xk ')).toBe('4m7 2xk');
    expect(labelIn('https://lab/c/4M7%2D2XK/')).toBe('4M7-2XK');
  });
});

describe('a label of ours', () => {
  it.each(['4M7-2XK', '4m72xk', ' 4M7 2XK ', '4M?2XK', 'https://lab/c/4M7-2XK'])('%j looks like one', (code) =>
    expect(isLabelLike(code)).toBe(true),
  );
  it.each(['6291041500213', '(01)06291041500213', 'MC-4711/SIL', 'silica gel', '%'])('%j does not', (code) =>
    expect(isLabelLike(code)).toBe(false),
  );
});

describe('a code scanned into a field', () => {
  const typedInto = (held: string, keys: string[], pauseMs: number) => {
    const reader = fieldReader();
    let now = 10_000;
    let field = held;
    let heard: ReturnType<typeof reader> = null;
    for (const key of keys) {
      now += pauseMs;
      heard = reader(key, now, field) ?? heard;
      if (key.length === 1) field += key;
    }
    return heard;
  };
  it('is heard, with what the field held before it', () => {
    expect(typedInto('a note', [...'4M72XK', 'Enter'], 8)).toEqual({ code: '4M72XK', before: 'a note' });
    expect(typedInto('', [...'4M72XK', 'Tab'], 8)).toEqual({ code: '4M72XK', before: '' });
  });
  it('is not what a person types', () => {
    expect(typedInto('', [...'silica', 'Enter'], 80)).toBeNull();
  });
});

describe('a screen that gathers codes', () => {
  it('takes each scan while it is there, and none afterwards', () => {
    const codes: string[] = [];
    const stop = takeScans((code) => codes.push(code));
    expect(giveScan('4M72XK')).toBe(true);
    stop();
    expect(giveScan('4M72XK')).toBe(false);
    expect(codes).toEqual(['4M72XK']);
  });
});
