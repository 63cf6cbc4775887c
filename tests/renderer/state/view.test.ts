import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ViewState } from '../../../renderer/state/view.svelte.ts';

function opened(): ViewState {
  const view = new ViewState();
  view.open({ from: 0, to: 120 });
  return view;
}

describe('zoom and pan', () => {
  test('begin with everything, or with as much as a phone can show', () => {
    expect(opened().seen).toEqual({ from: 0, to: 120 });
    const phone = new ViewState();
    phone.open({ from: 0, to: 120 }, 50);
    expect(phone.seen).toEqual({ from: 0, to: 50 });
  });

  test('a better plan with another whole leaves what is seen, and all stays all', () => {
    const whole = opened();
    whole.renew({ from: 0, to: 110 });
    expect(whole.seen).toEqual({ from: 0, to: 110 });
    const close = opened();
    close.zoomBy(2, 30);
    close.renew({ from: 0, to: 110 });
    expect(close.seen).toEqual({ from: 15, to: 75 });
    close.renew({ from: 0, to: 70 });
    expect(close.seen).toEqual({ from: 10, to: 70 });
  });

  test('zoom keeps the minute under the finger where it is', () => {
    const view = opened();
    view.zoomBy(2, 30);
    expect(view.seen).toEqual({ from: 15, to: 75 });
    expect(view.zoom).toBe(2);
  });

  test('a pan past an end stops there', () => {
    const view = opened();
    view.zoomBy(2);
    view.panBy(500);
    expect(view.seen).toEqual({ from: 60, to: 120 });
    view.panTo(-10);
    expect(view.seen).toEqual({ from: 0, to: 60 });
  });

  test('a bar out of sight is brought in, one in sight moves nothing', () => {
    const view = opened();
    view.zoomBy(4, 0);
    view.reveal(10, 12);
    expect(view.seen).toEqual({ from: 0, to: 30 });
    view.reveal(80, 90);
    expect(view.seen.to).toBeCloseTo(91.2);
    expect(view.span).toBe(30);
  });

  test('whatever is done, the view stays within the whole and no closer than 8 minutes', () => {
    const act = fc.oneof(
      fc.record({
        zoom: fc.double({ min: 0.05, max: 20, noNaN: true }),
        around: fc.double({ min: 0, max: 120, noNaN: true }),
      }),
      fc.record({ pan: fc.double({ min: -300, max: 300, noNaN: true }) }),
      fc.record({ reveal: fc.integer({ min: 0, max: 119 }) }),
    );
    fc.assert(
      fc.property(fc.array(act, { maxLength: 12 }), (acts) => {
        const view = opened();
        for (const each of acts) {
          if ('zoom' in each) view.zoomBy(each.zoom, Math.min(Math.max(each.around, view.seen.from), view.seen.to));
          else if ('pan' in each) view.panBy(each.pan);
          else view.reveal(each.reveal, each.reveal + 1);
          expect(view.seen.from).toBeGreaterThanOrEqual(-1e-9);
          expect(view.seen.to).toBeLessThanOrEqual(120 + 1e-9);
          expect(view.span).toBeGreaterThan(8 - 1e-9);
        }
      }),
    );
  });
});
