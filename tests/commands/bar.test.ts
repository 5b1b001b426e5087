// The bar of a command that takes long, on a terminal that keeps what is written to it.
import { PassThrough } from 'node:stream';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { bar } from '../../api/commands/bar.ts';

afterEach(() => vi.restoreAllMocks());

function shown(isTTY: boolean): string {
  const stream = Object.assign(new PassThrough(), { isTTY, columns: 80 });
  const clock = vi.spyOn(performance, 'now').mockReturnValue(0);
  const { progress, stop } = bar('Planning', stream as unknown as NodeJS.WriteStream);
  clock.mockReturnValue(900);
  progress(0.1);
  clock.mockReturnValue(1100);
  progress(0.42);
  stop();
  return String(stream.read() ?? '');
}

describe('the bar of a command', () => {
  it('is there from the first second on, and says how far it is', () => {
    expect(shown(true)).toContain('Planning [');
    expect(shown(true)).toContain('42 %');
    expect(shown(true)).not.toContain('10 %');
  });

  it('is not written into a file or a pipe', () => {
    expect(shown(false)).toBe('');
  });
});
