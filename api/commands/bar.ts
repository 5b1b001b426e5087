// A bar on standard error for whoever waits longer than a second; none where nobody looks.
import { SingleBar } from 'cli-progress';

/** What is sooner there than this needs no bar. */
const barAfterMs = 1000;

interface Bar {
  /** 0 to 1. */
  progress: (share: number) => void;
  stop: () => void;
}

export function bar(doing: string, stream: NodeJS.WriteStream = process.stderr): Bar {
  const from = performance.now();
  const shown = new SingleBar({ format: `${doing} [{bar}] {percentage} %`, stream, clearOnComplete: true });
  let isShown = false;
  return {
    progress(share) {
      if (!stream.isTTY || performance.now() - from < barAfterMs) return;
      if (!isShown) shown.start(100, 0);
      isShown = true;
      shown.update(Math.floor(100 * share));
    },
    stop: () => shown.stop(),
  };
}
