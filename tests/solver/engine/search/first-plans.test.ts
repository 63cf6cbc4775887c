import { describe, expect, it } from 'vitest';
import { ruleOf } from '../../../../solver/engine/search/first-plans.ts';
import { priorityRules } from '../../../../solver/engine/search/priority-rules.ts';

const rounds = (count: number): readonly number[] => Array.from({ length: count }, (_, round) => round);

describe('the order of rules for first plans', () => {
  const backward = priorityRules.filter(({ direction }) => direction === 'backward');
  const fromTheEnd = rounds(12)
    .map((round) => ruleOf(round, false))
    .filter(({ direction }) => direction === 'backward');

  it('begins with one forward dive, then takes every rule from the end back, while there is no plan', () => {
    const [first, ...then] = rounds(6).map((round) => ruleOf(round, false).direction);
    expect(first).toBe('forward');
    expect(new Set(then)).toEqual(new Set(['backward']));
    expect(new Set(fromTheEnd)).toEqual(new Set(backward));
  });

  it('takes the latest finish every other time from the end back', () => {
    expect(fromTheEnd.map(({ measure }, turn) => (measure === 'latest finish') === (turn % 2 === 0))).not.toContain(
      false,
    );
  });

  it('comes to every forward rule in the end, one round in six, while there is no plan', () => {
    const forward = priorityRules.filter(({ direction }) => direction === 'forward');
    const tried = rounds(6 * forward.length)
      .map((round) => ruleOf(round, false))
      .filter(({ direction }) => direction === 'forward');
    expect(tried).toEqual(forward);
  });

  it('takes all rules in their order once there is a plan, and then the first again', () => {
    const twice = rounds(2 * priorityRules.length).map((round) => ruleOf(round, true));
    expect(twice).toEqual([...priorityRules, ...priorityRules]);
  });
});
