// Learning in the background: soon after a weighing was recorded, corrected or taken back, and now and then for all else that
// changes what was weighed (air that arrives late, a lot's numbers). One at a time.
import type { App } from '../yoga.ts';
import { log } from '../log.ts';
import { onRecorded } from '../stock/service.ts';
import { learnAgain } from './relearn.ts';

export interface LearningLater {
  /** Learns now, or waits for what is under way and learns again if that is behind; resolves when it is over. */
  now(): Promise<void>;
  stop(): Promise<void>;
}

/** Weighings come in handfuls: the fit waits until nobody has said anything for so long, ms. */
const quietMs = 1_500;

/** Told by whoever writes something that learning rests on. */
let heard: () => void = () => undefined;
export const learnSoon = (): void => heard();

onRecorded((_, { type, correctsId }) => {
  if (type === 'WEIGHED' || correctsId !== null) learnSoon();
  return Promise.resolve([]);
});

/** Starts listening; `estimate` brings everything forward that stands on what was learned. */
export function startLearning(app: App, estimate: () => Promise<void>): LearningLater {
  let soon: NodeJS.Timeout | undefined;
  let underWay: Promise<void> | null = null;
  let isBehind = false;
  let isStopped = false;

  async function learn(): Promise<void> {
    const { database, lab, now, settings } = app;
    try {
      do {
        isBehind = false;
        if (await learnAgain({ database, lab, now, apart: settings })) await estimate();
      } while (isBehind && !isStopped);
    } catch (error) {
      if (!isStopped) log.error({ err: error }, 'learning from the weighings failed; the next weighing tries again');
    }
  }

  function now(): Promise<void> {
    clearTimeout(soon);
    if (isStopped) return Promise.resolve();
    if (underWay) isBehind = true;
    underWay ??= learn().finally(() => (underWay = null));
    return underWay;
  }

  heard = () => {
    clearTimeout(soon);
    soon = setTimeout(() => void now(), quietMs);
    soon.unref();
  };
  const often = setInterval(() => void now(), app.settings.estimateEverySeconds * 1000);
  often.unref();
  return {
    now,
    async stop() {
      isStopped = true;
      clearTimeout(soon);
      clearInterval(often);
      heard = () => undefined;
      await underWay;
    },
  };
}
