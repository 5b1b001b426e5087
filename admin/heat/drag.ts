// Dragging along strips by mouse or pen: over which strip the batch is and how far along it, until it is dropped or left.

export interface Dragging {
  /** `share`: where its left edge lies along the strip, 0 to 1. */
  over: (at: { strip: HTMLElement; share: number }) => void;
  /** Let go after it was moved. */
  dropped: () => void;
  left: () => void;
}

/** Less than this is a tap, px. */
const tap = 5;

export function dragged(from: PointerEvent, { over, dropped, left }: Dragging): void {
  const { clientX: x0, clientY: y0 } = from;
  const box = from.currentTarget instanceof Element ? from.currentTarget.getBoundingClientRect() : null;
  const grip = box ? x0 - box.left : 0;
  let far = false;
  const move = ({ clientX, clientY }: PointerEvent): void => {
    far ||= Math.hypot(clientX - x0, clientY - y0) > tap;
    if (!far) return;
    const strip = document
      .elementsFromPoint(clientX, clientY)
      .find((one): one is HTMLElement => one instanceof HTMLElement && one.matches('[data-strip]'));
    if (!strip) return;
    const { left: edge, width } = strip.getBoundingClientRect();
    over({ strip, share: (clientX - grip - edge) / width });
  };
  const stop = (): void => {
    removeEventListener('pointermove', move);
    removeEventListener('pointerup', end);
    removeEventListener('pointercancel', leave);
    removeEventListener('keydown', escape, true);
  };
  const end = (): void => {
    stop();
    if (far) dropped();
  };
  const leave = (): void => {
    stop();
    left();
  };
  const escape = (pressed: KeyboardEvent): void => {
    if (pressed.key === 'Escape') leave();
  };
  addEventListener('pointermove', move);
  addEventListener('pointerup', end);
  addEventListener('pointercancel', leave);
  addEventListener('keydown', escape, true);
}
