/**
 * Pointer and wheel on the lanes: drag sideways to pan, two fingers or Ctrl and wheel to zoom, wheel sideways or Shift and wheel
 * to pan. A plain wheel scrolls the page.
 */
export interface GestureEnds {
  /** Minute under a px of the element. */
  readonly minuteAt: (x: number) => number;
  /** px of a minute. */
  readonly perMinute: () => number;
  readonly panBy: (minutes: number) => void;
  readonly zoomBy: (factor: number, around: number) => void;
}

/** A drag shorter than this is a click, px. */
const CLICK = 4;

/** @returns how to let go of the element */
export function gestures(element: Element & GlobalEventHandlers, ends: GestureEnds): () => void {
  const fingers = new Map<number, { readonly x: number; readonly y: number }>();
  let moved = 0;

  // Pointers tell more often than the screen is drawn; what they say is summed up until it is.
  let waiting = 0;
  let pan = 0;
  let zoom = { factor: 1, around: 0 };
  const draw = (): void => {
    waiting = 0;
    const now = { pan, zoom };
    pan = 0;
    zoom = { factor: 1, around: 0 };
    if (now.pan !== 0) ends.panBy(now.pan);
    if (now.zoom.factor !== 1) ends.zoomBy(now.zoom.factor, now.zoom.around);
  };
  const ask = (): void => {
    if (waiting === 0) waiting = requestAnimationFrame(draw);
  };
  const panBy = (minutes: number): void => {
    pan += minutes;
    ask();
  };
  const zoomBy = (factor: number, around: number): void => {
    zoom = { factor: zoom.factor * factor, around };
    ask();
  };

  const localX = (clientX: number): number => clientX - element.getBoundingClientRect().left;
  const spread = (): number => {
    const [a, b] = [...fingers.values()];
    return a === undefined || b === undefined ? 0 : Math.max(20, Math.hypot(a.x - b.x, a.y - b.y));
  };
  const middle = (): number => {
    const all = [...fingers.values()];
    return all.reduce((sum, finger) => sum + finger.x, 0) / Math.max(1, all.length);
  };

  const down = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    moved = 0;
  };
  const move = (event: PointerEvent): void => {
    const before = fingers.get(event.pointerId);
    if (before === undefined) return;
    const spreadBefore = spread();
    const middleBefore = middle();
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    const shift = middle() - middleBefore;
    moved += Math.abs(event.clientX - before.x);
    if (moved < CLICK) return;
    if (!element.hasPointerCapture(event.pointerId)) element.setPointerCapture(event.pointerId);
    panBy(-shift / ends.perMinute());
    if (fingers.size === 2) zoomBy(spread() / spreadBefore, ends.minuteAt(localX(middle())));
  };
  const up = (event: PointerEvent): void => {
    fingers.delete(event.pointerId);
  };
  /** What ends a drag is not a click on the bar below it. */
  const click = (event: MouseEvent): void => {
    if (moved >= CLICK) event.stopPropagation();
    moved = 0;
  };
  const wheel = (event: WheelEvent): void => {
    if (event.ctrlKey || event.metaKey) {
      event.preventDefault();
      zoomBy(Math.exp(-event.deltaY * 0.0025), ends.minuteAt(localX(event.clientX)));
      return;
    }
    const sideways = event.shiftKey && event.deltaX === 0 ? event.deltaY : event.deltaX;
    if (Math.abs(sideways) <= Math.abs(event.shiftKey ? 0 : event.deltaY)) return;
    event.preventDefault();
    panBy(sideways / ends.perMinute());
  };

  element.addEventListener('pointerdown', down);
  element.addEventListener('pointermove', move);
  element.addEventListener('pointerup', up);
  element.addEventListener('pointercancel', up);
  element.addEventListener('click', click, { capture: true });
  element.addEventListener('wheel', wheel, { passive: false });
  return () => {
    cancelAnimationFrame(waiting);
    element.removeEventListener('pointerdown', down);
    element.removeEventListener('pointermove', move);
    element.removeEventListener('pointerup', up);
    element.removeEventListener('pointercancel', up);
    element.removeEventListener('click', click, { capture: true });
    element.removeEventListener('wheel', wheel);
  };
}
