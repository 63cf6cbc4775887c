import { describe, expect, it } from 'vitest';
import { Seldom } from '../../../../../../solver/engine/learning/propagators/disjunctive/seldom.ts';

/** In how many of 20,000 times rules are asked that say something every `every`-th time they are asked. */
function timesAsked(every: number): number {
  const seldom = new Seldom();
  let asked = 0;
  for (let time = 0; time < 20_000; time++) {
    if (!seldom.due()) continue;
    asked++;
    seldom.tell(asked % every === 0);
  }
  return asked;
}

describe('rules that only add strength', () => {
  it('are asked every time while they say something one time in ten', () => {
    expect(timesAsked(10)).toBe(20_000);
  });

  it('are asked the more seldom the less they say', () => {
    const asked = [10, 50, 100, 300].map(timesAsked);
    expect([...asked].sort((a, b) => b - a)).toEqual(asked);
    expect(new Set(asked).size).toBe(4);
  });

  it('are still asked one time in sixteen when they never say anything', () => {
    const asked = timesAsked(Infinity);
    expect(asked).toBeGreaterThanOrEqual(20_000 / 16);
    expect(asked).toBeLessThan(20_000 / 12);
  });

  it('are asked every time again once they have become useful', () => {
    const seldom = new Seldom();
    for (let time = 0; time < 20_000; time++) if (seldom.due()) seldom.tell(false);
    for (let time = 0; time < 20_000; time++) if (seldom.due()) seldom.tell(true);
    expect(Array.from({ length: 10 }, () => seldom.due())).toEqual(Array.from({ length: 10 }, () => true));
  });
});
