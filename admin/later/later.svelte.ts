// What waits to be sent, as every screen sees it, and the sending of it: at once, when somebody answers again, and in growing pauses.
import { v4 as newKey } from 'uuid';
import { onHeard } from '../ask.ts';
import { dueAt, hurried, pauseMs, type Outcome, type Queue, type Waiting } from './queue.ts';
import { sendWaiting } from './sending.ts';
import { changeQueue, isLasting, onOtherTab, readQueue } from './store.ts';
import { tellWaiting, type Ending } from './telling.ts';

/** Another tab that sends is looked after again in so long, ms. */
const OTHER_TAB_MS = 5_000;

let queue = $state.raw<Queue>([]);
let answers = $state(true);
let lastAnswer = $state.raw<Date | null>(null);

export const later = {
  get waiting(): Queue {
    return queue;
  },
  /** Refused since: the person is asked what was meant. */
  get questions(): Queue {
    return queue.filter(({ question }) => question !== null);
  },
  of: (label: string): Queue => queue.filter((one) => one.label === label),
  /** Whether the server answered the last time it was spoken to. */
  get answers(): boolean {
    return answers;
  },
  get lastAnswer(): Date | null {
    return lastAnswer;
  },
  get isLasting(): boolean {
    return isLasting();
  },
};

let changing = 0;

/** Changes what waits: on the screen at once, on the disk in one step. */
export async function change(how: (before: Queue) => Queue): Promise<Queue> {
  queue = how(queue);
  changing += 1;
  const after = await changeQueue(how);
  changing -= 1;
  if (changing === 0) queue = after;
  return after;
}

type Hearing = (one: Waiting, ending: Ending) => void;
const hearing = new Set<Hearing>();

/** Hears how each attempt to send what waited has ended. */
export const onSent = (listener: Hearing): void => void hearing.add(listener);

let timer: ReturnType<typeof setTimeout> | undefined;
let sending = false;
let silentTimes = 0;

function comeAgain(inMs: number): void {
  clearTimeout(timer);
  timer = setTimeout(() => void send(), Math.max(0, inMs));
}

/** One tab sends at a time where the browser can arrange it; elsewhere the client keys see to it that two do no harm. */
async function alone(run: () => Promise<void>): Promise<boolean> {
  if (!('locks' in navigator)) {
    await run();
    return true;
  }
  return navigator.locks.request('drumkeep:sending', { ifAvailable: true }, async (lock) => {
    if (lock) await run();
    return lock !== null;
  });
}

async function sendNow(): Promise<void> {
  const endings = new Map<string, Ending>();
  const isAnswered = await sendWaiting({
    read: readQueue,
    change,
    tell: async (one): Promise<Outcome> => {
      const ending = await tellWaiting(one);
      endings.set(one.key, ending);
      return ending.outcome;
    },
    told: (one) => {
      const ending = endings.get(one.key);
      if (ending) for (const listener of hearing) listener(one, ending);
    },
    nowMs: Date.now,
    newKey,
  });
  silentTimes = isAnswered ? 0 : silentTimes + 1;
}

/** Sends what may go now, and comes again for the rest. */
export async function send(): Promise<void> {
  if (sending) return;
  sending = true;
  try {
    const had = await alone(sendNow);
    const due = dueAt(await readQueue());
    if (due === null) return;
    if (!had) comeAgain(OTHER_TAB_MS);
    else comeAgain(silentTimes > 0 ? pauseMs(silentTimes) : due - Date.now());
  } finally {
    sending = false;
  }
}

async function lookAgain(): Promise<void> {
  if (changing === 0) queue = await readQueue();
}

onOtherTab(() => void lookAgain());
onHeard((doesAnswer) => {
  const isBack = doesAnswer && !answers;
  answers = doesAnswer;
  if (doesAnswer) lastAnswer = new Date();
  if (!isBack || queue.length === 0) return;
  silentTimes = 0;
  void change(hurried).then(() => comeAgain(0));
});
addEventListener('online', () => comeAgain(0));
void lookAgain().then(() => queue.length > 0 && comeAgain(0));
