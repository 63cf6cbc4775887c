// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { gestures } from '../../../renderer/chart/gestures.ts';

describe('pointer and wheel on the lanes', () => {
  const done: string[] = [];
  let element: HTMLDivElement;
  let clicks: number;
  let letGo: () => void;

  beforeEach(() => {
    vi.stubGlobal('requestAnimationFrame', (draw: () => void) => setTimeout(draw, 0));
    vi.stubGlobal('cancelAnimationFrame', (frame: number) => clearTimeout(frame));
    done.length = 0;
    clicks = 0;
    element = document.createElement('div');
    Object.assign(element, { setPointerCapture: () => undefined, hasPointerCapture: () => true });
    const bar = document.createElement('button');
    bar.addEventListener('click', () => (clicks += 1));
    element.append(bar);
    document.body.append(element);
    // 10 px a minute.
    letGo = gestures(element, {
      minuteAt: (x) => x / 10,
      perMinute: () => 10,
      panBy: (minutes) => void done.push(`pan ${minutes.toFixed(1)}`),
      zoomBy: (factor, around) => void done.push(`zoom ${factor.toFixed(2)} around ${around}`),
    });
  });
  afterEach(() => {
    letGo();
    element.remove();
    vi.unstubAllGlobals();
  });

  const drawn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5));
  const finger = (kind: string, pointerId: number, clientX: number): void => {
    element.dispatchEvent(new PointerEvent(kind, { pointerId, clientX, clientY: 0, button: 0, bubbles: true }));
  };
  const wheel = (init: WheelEventInit): WheelEvent => {
    // happy-dom's WheelEvent knows neither keys nor place; they are put on a plain event.
    const event = new Event('wheel', { cancelable: true, bubbles: true }) as WheelEvent;
    const all = { deltaX: 0, deltaY: 0, clientX: 0, ctrlKey: false, metaKey: false, shiftKey: false, ...init };
    for (const [name, value] of Object.entries(all)) Object.defineProperty(event, name, { value });
    element.dispatchEvent(event);
    return event;
  };
  const click = (): void =>
    void element.querySelector('button')!.dispatchEvent(new MouseEvent('click', { bubbles: true }));

  test('a drag pans against its way, once a frame, and is no click on the bar below it', async () => {
    finger('pointerdown', 1, 100);
    finger('pointermove', 1, 130);
    finger('pointermove', 1, 150);
    finger('pointerup', 1, 150);
    click();
    await drawn();
    expect(done).toEqual(['pan -5.0']);
    expect(clicks).toBe(0);
  });

  test('a press that hardly moves is a click', async () => {
    finger('pointerdown', 1, 100);
    finger('pointermove', 1, 102);
    finger('pointerup', 1, 102);
    click();
    await drawn();
    expect(done).toEqual([]);
    expect(clicks).toBe(1);
  });

  test('two fingers zoom around their middle', async () => {
    finger('pointerdown', 1, 100);
    finger('pointerdown', 2, 200);
    finger('pointermove', 1, 50);
    finger('pointermove', 2, 250);
    await drawn();
    expect(done).toEqual(['zoom 2.00 around 15']);
  });

  test('Ctrl and wheel zoom, wheel sideways or with Shift pans, a plain wheel is left to the page', async () => {
    expect(wheel({ deltaY: 90 }).defaultPrevented).toBe(false);
    await drawn();
    expect(done).toEqual([]);
    expect(wheel({ deltaX: 40 }).defaultPrevented).toBe(true);
    wheel({ deltaY: 60, shiftKey: true });
    await drawn();
    wheel({ deltaY: -100, ctrlKey: true, clientX: 300 });
    await drawn();
    expect(done).toEqual(['pan 10.0', 'zoom 1.28 around 30']);
  });

  test('nothing is heard once it is let go', async () => {
    letGo();
    wheel({ deltaX: 40 });
    await drawn();
    expect(done).toEqual([]);
  });
});
