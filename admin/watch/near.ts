// Tells elements that they come near what one sees, or leave it: one observer for all of them.
type Listener = (isNear: boolean) => void;

/** So far above and below the window lines stand ready, px. */
const READY_PX = 1200;

const listeners = new WeakMap<Element, Listener>();
let observer: IntersectionObserver | null = null;

const told = (entries: IntersectionObserverEntry[]): void => {
  for (const { target, isIntersecting } of entries) listeners.get(target)?.(isIntersecting);
};

/** Listens for an element; returns how to stop. */
export function onNear(element: Element, listener: Listener): () => void {
  observer ??= new IntersectionObserver(told, { rootMargin: `${READY_PX}px 0px` });
  listeners.set(element, listener);
  observer.observe(element);
  return () => {
    observer?.unobserve(element);
    listeners.delete(element);
  };
}
