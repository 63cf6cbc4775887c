import { describe, expect, test } from 'vitest';
import { askedWords, helpWordsOf } from '../../../renderer/places/helps.ts';
import type { HelpAnswer, HelpReport } from '../../../solver/answers/what-would-help.ts';

const answer = (words: string, gain: number, mostGain: number): HelpAnswer => ({
  help: { id: words, kind: 'board', words, caution: '' },
  finish: 60 - gain,
  gain,
  mostGain,
  proven: gain === mostGain,
});
const report = (answers: readonly HelpAnswer[], extra: Partial<HelpReport> = {}): HelpReport => ({
  measure: 'finish',
  finish: 60,
  bound: 60,
  answers,
  open: 0,
  stopped: false,
  work: 1,
  ...extra,
});

describe('what would help, in words', () => {
  test('gains come with bars by the largest, and the word "proven"', () => {
    const { gaining } = helpWordsOf(report([answer('another board', 10, 10), answer('one more rack', 5, 5)]));
    expect(gaining).toMatchObject([
      { gain: '10 min sooner', sure: 'proven', share: 1, mostShare: 1 },
      { gain: '5 min sooner', sure: 'proven', share: 0.5, mostShare: 0.5 },
    ]);
  });

  test('a gain that may be larger says how large at most, and leaves room for it', () => {
    const { gaining } = helpWordsOf(report([answer('another oven', 10, 90), answer('one more rack', 5, 12)]));
    expect(gaining).toMatchObject([
      { sure: 'at most 1 h 30 min', share: 0.5, mostShare: 1 },
      { sure: 'at most 12 min', share: 0.25, mostShare: 0.6 },
    ]);
  });

  test('what was not found is kept apart from what is proven to gain nothing', () => {
    const words = helpWordsOf(report([answer('a', 0, 7), answer('b', 0, 7), answer('c', 0, 0)]));
    expect(words).toMatchObject({
      gaining: [],
      open: [{ most: 'at most 7 min sooner', names: ['a', 'b'] }],
      useless: ['c'],
    });
  });

  test('before a table time work begins later', () => {
    const words = helpWordsOf(report([answer('a', 3, 3)], { measure: 'latest-start', bound: 50 }));
    expect(words.against).toMatch(/begins 1 h before the table \(never under 50 min\)/);
    expect(words.gaining[0]!.gain).toBe('3 min later');
  });

  test('progress tells how many were asked about and the best so far', () => {
    expect(askedWords(report([answer('another board', 4, 9)], { open: 2 }))).toBe(
      '1 of 3 asked; most so far 4 min by another board',
    );
    expect(askedWords(report([], { open: 3 }))).toBe('0 of 3 asked; nothing gained yet');
  });
});
