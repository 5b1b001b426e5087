// Keys that act on the container one is at: whoever shows its buttons listens here.

export type Command = 'lid' | 'take' | 'weigh' | 'move' | 'count' | 'dry';
type Listener = (command: Command) => void;

const listeners = new Map<string, Listener[]>();

/** Listens for a container's commands; returns how to stop. */
export function onCommand(label: string, listener: Listener): () => void {
  listeners.set(label, [...(listeners.get(label) ?? []), listener]);
  return () => {
    const left = (listeners.get(label) ?? []).filter((other) => other !== listener);
    if (left.length > 0) listeners.set(label, left);
    else listeners.delete(label);
  };
}

/** Gives a command to whoever shows the container: the newest, where two do. False when nobody does. */
export function giveCommand(label: string, command: Command): boolean {
  const newest = listeners.get(label)?.at(-1);
  newest?.(command);
  return newest !== undefined;
}
