/** Interchangeable washings of one board; the problem is invented. */
import { describe, expect, it } from 'vitest';
import { Model } from '../../../../solver/engine/learning/model/model.ts';
import type { Lag, Problem } from '../../../../solver/engine/problem.ts';
import { after, mode, problemWith, task, use } from '../build-problem.ts';

const washing = (id: string, length: number): Problem['tasks'][number] => ({
  id,
  choice: id,
  modes: [null, mode(length, [use('board', 1, { cleans: true })])],
});

function modelWith(lags: readonly Lag[]): Model {
  const washings = [washing('first', 1), washing('second', 1), washing('long', 3)];
  return new Model(
    problemWith({
      choices: washings.map(({ id }) => ({ id, options: ['no', 'yes'] })),
      resources: [{ id: 'board', capacity: 1 }],
      tasks: [task('cook', 2, [use('board')]), ...washings],
      lags: [...lags],
    }),
    false,
    false,
  );
}

/** Whether a plan may take washing `a` and leave out `b`, by number of their choices. */
function mayTakeWithout({ core, conditions, branching }: Model, a: number, b: number): boolean {
  const asked = [conditions.options[a]![1]!, conditions.options[b]![0]!];
  return core.solve(asked, branching, 100, Infinity, undefined) === 'solution';
}

const FIRST = 0;
const SECOND = 1;
const LONG = 2;

describe('washings that can stand in for each other', () => {
  it('are taken in one order, while others are free', () => {
    const model = modelWith([]);
    expect([mayTakeWithout(model, FIRST, SECOND), mayTakeWithout(model, SECOND, FIRST)]).toEqual([false, true]);
    expect([mayTakeWithout(model, FIRST, LONG), mayTakeWithout(model, LONG, FIRST)]).toEqual([true, true]);
  });

  it('are free where something is said of one alone', () => {
    const model = modelWith([after('cook', 'first', 4)]);
    expect([mayTakeWithout(model, FIRST, SECOND), mayTakeWithout(model, SECOND, FIRST)]).toEqual([true, true]);
  });

  it('are free where what is said of them names each other one way only', () => {
    const model = modelWith([after('first', 'second')]);
    expect([mayTakeWithout(model, FIRST, SECOND), mayTakeWithout(model, SECOND, FIRST)]).toEqual([true, true]);
  });

  it('are taken in one order where both stand alike to a third', () => {
    const model = modelWith([after('cook', 'first', 4), after('cook', 'second', 4)]);
    expect([mayTakeWithout(model, FIRST, SECOND), mayTakeWithout(model, SECOND, FIRST)]).toEqual([false, true]);
  });
});
