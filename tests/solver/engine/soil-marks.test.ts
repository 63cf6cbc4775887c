import { describe, expect, it } from 'vitest';
import { compileProblem } from '../../../solver/engine/compile-problem.ts';
import { Store } from '../../../solver/engine/propagation/store.ts';
import { mode, problemWith, task, use } from './build-problem.ts';

const resources = ['board', 'bowl'].map((id) => ({ id, capacity: 1 }));
const wheat = { leaves: ['wheat'] };
const without = { avoids: ['wheat'] };

describe('soil marks', () => {
  it('count where another task of the same resource meets them', () => {
    const tasks = [
      task('bread', 3, [use('board', 1, wheat)]),
      task('rice', 3, [use('board', 1, without), use('bowl', 1, without)]),
      task('dough', 3, [use('bowl', 1, { leaves: ['egg'] })]),
    ];
    const { soilMarks, modes } = compileProblem(problemWith({ tasks, resources }));
    expect(soilMarks.any).toBe(true);
    expect(modes.map((each) => soilMarks.concerns(each))).toEqual([true, true, false]);
    const [onBoard, inBowl] = modes[1]!.uses;
    expect(soilMarks.counts(0, onBoard!.soil, 1)).toBe(true);
    expect(soilMarks.counts(1, inBowl!.soil, 1)).toBe(false);
  });

  it('count for each task that is asked about, whichever was asked about before', () => {
    const tasks = [
      task('bread', 3, [use('board', 1, wheat)]),
      task('rice', 3, [use('board', 1, without)]),
      task('oats', 3, [use('board', 1, without)]),
    ];
    const { soilMarks, modes } = compileProblem(problemWith({ tasks, resources }));
    const [soiling, avoiding] = [modes[0]!.uses[0]!.soil, modes[1]!.uses[0]!.soil];
    expect([0, 1, 2, 0].map((of) => soilMarks.counts(0, soiling, of))).toEqual([true, true, true, true]);
    expect([1, 0, 2, 1].map((of) => soilMarks.counts(0, avoiding, of))).toEqual([true, false, true, true]);
  });

  it('of one task alone count for nothing', () => {
    const tasks = [task('bread', 3, [use('board', 1, { ...wheat, ...without })])];
    expect(compileProblem(problemWith({ tasks, resources })).soilMarks.any).toBe(false);
  });
});

describe('users with soil', () => {
  it('are listed when their mode is known, and no longer when that is undone', () => {
    const tasks = [
      task('bread', 3, [use('board', 1, wheat)]),
      {
        id: 'rice',
        choice: 'where',
        modes: [mode(3, [use('board', 1, without)]), mode(3, [use('bowl', 1, without)])],
      },
    ];
    const choices = [{ id: 'where', options: ['board', 'bowl'] }];
    const store = new Store(compileProblem(problemWith({ tasks, choices, resources })));
    const onBoard = (): number[] => [...store.soilUsers.tasks[0]!].slice(0, store.soilUsers.count(0));
    expect(onBoard()).toEqual([0]);
    const mark = store.trail.mark();
    store.assign(0, 0);
    expect(onBoard()).toEqual([0, 1]);
    store.trail.undo(mark);
    expect(onBoard()).toEqual([0]);
    store.assign(0, 1);
    expect(onBoard()).toEqual([0]);
  });
});
