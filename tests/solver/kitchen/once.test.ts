import { describe, expect, it } from 'vitest';
import { onceFor, onceForBoth, onceOn } from '../../../solver/kitchen/once.ts';

/** A function that tells what it was given as text, and how often it was asked. */
function counted<Given extends readonly unknown[]>(): {
  readonly ask: (...given: Given) => string;
  readonly times: () => number;
} {
  let times = 0;
  return {
    ask: (...given) => {
      times++;
      return JSON.stringify(given);
    },
    times: () => times,
  };
}

describe('an answer that hangs on documents alone', () => {
  it('is worked out once for each document, even where two read the same', () => {
    const { ask, times } = counted<[object]>();
    const once = onceFor(ask);
    const [one, other] = [{ id: 'pan' }, { id: 'pan' }];
    expect([once(one), once(one), once(other)]).toEqual(['[{"id":"pan"}]', '[{"id":"pan"}]', '[{"id":"pan"}]']);
    expect(times()).toBe(2);
  });

  it('is kept where it is nothing', () => {
    let times = 0;
    const once = onceFor((_: object): null => {
      times++;
      return null;
    });
    const document = {};
    expect([once(document), once(document)]).toEqual([null, null]);
    expect(times).toBe(1);
  });

  it('of two documents is another for each other of the two', () => {
    const { ask, times } = counted<[object, object]>();
    const once = onceForBoth(ask);
    const [a, b, c] = [{ id: 'a' }, { id: 'b' }, { id: 'c' }];
    once(a, b);
    expect(once(a, b)).toBe('[{"id":"a"},{"id":"b"}]');
    expect(once(a, c)).toBe('[{"id":"a"},{"id":"c"}]');
    expect(once(b, a)).toBe('[{"id":"b"},{"id":"a"}]');
    expect(times()).toBe(3);
  });

  it('that hangs on a number too is another for each number', () => {
    const { ask, times } = counted<[object, number]>();
    const once = onceOn(ask);
    const oven = { id: 'oven' };
    once(oven, 20);
    expect([once(oven, 20), once(oven, 21)]).toEqual(['[{"id":"oven"},20]', '[{"id":"oven"},21]']);
    expect(times()).toBe(2);
  });
});
