import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileProblem } from '../../../solver/engine/compile-problem.ts';
import { loosen } from '../../../solver/engine/interchangeable.ts';
import type { Problem, Task } from '../../../solver/engine/problem.ts';
import { validateProblem, type ProblemFault } from '../../../solver/engine/validate-problem.ts';
import { randomProblem, smallShape } from '../../support/random-problem.ts';
import { problemWith, task, use } from './build-problem.ts';

/** The soils of tasks that use one board with these marks, by task. */
function soilsOf(marks: readonly { readonly leaves: readonly string[]; readonly avoids: readonly string[] }[]): {
  readonly soils: readonly (number | undefined)[];
  readonly count: number;
} {
  const compiled = compileProblem(
    problemWith({
      tasks: marks.map((of, k) => task(`t${k}`, 2, [use('board', 1, of)])),
      resources: [{ id: 'board', capacity: 1 }],
    }),
  );
  return { soils: compiled.modes.map((mode) => mode.uses[0]?.soil), count: compiled.soilCount };
}

describe('soil of a compiled problem', () => {
  it('is one for all lists that say the same, in whatever order and however often', () => {
    const shared = ['wheat', 'sesame'];
    const { soils, count } = soilsOf([
      { leaves: shared, avoids: [] },
      { leaves: shared, avoids: [] },
      { leaves: ['sesame', 'wheat', 'sesame'], avoids: [] },
    ]);
    expect(soils).toEqual([1, 1, 1]);
    expect(count).toBe(2);
  });

  it('differs between what leaves a mark and what avoids it', () => {
    const marks = ['wheat'];
    const { soils, count } = soilsOf([
      { leaves: marks, avoids: [] },
      { leaves: [], avoids: marks },
      { leaves: marks, avoids: marks },
    ]);
    expect(new Set(soils).size).toBe(3);
    expect(count).toBe(4);
  });

  it('meets what avoids one of the marks it leaves, and only in that order', () => {
    const marks = [
      { leaves: ['wheat', 'sesame'], avoids: [] },
      { leaves: [], avoids: ['egg', 'sesame'] },
      { leaves: ['egg'], avoids: ['wheat'] },
    ];
    const { soilCount, soilMeets } = compileProblem(
      problemWith({
        tasks: marks.map((of, k) => task(`t${k}`, 2, [use('board', 1, of)])),
        resources: [{ id: 'board', capacity: 1 }],
      }),
    );
    const meets = marks.map((_, u) => marks.map((__, v) => soilMeets[(u + 1) * soilCount + v + 1]));
    expect(meets).toEqual([
      [0, 1, 1],
      [0, 0, 0],
      [0, 1, 0],
    ]);
  });

  it('is none where there are no marks', () => {
    expect(soilsOf([{ leaves: [], avoids: [] }])).toEqual({ soils: [0], count: 1 });
  });
});

describe('modes of a compiled problem', () => {
  it('of one use share its list with all that use the same alike', () => {
    const { modes } = compileProblem(
      problemWith({
        tasks: [task('a', 2, [use('board')]), task('b', 9, [use('board')]), task('c', 2, [use('board', 2)])],
        resources: [{ id: 'board', capacity: 2 }],
      }),
    );
    expect(modes[0]!.uses).toBe(modes[1]!.uses);
    expect(modes.map(({ uses }) => uses[0]!.amount)).toEqual([1, 1, 2]);
  });

  it('are numbered one task after the other, those alike once', () => {
    const long = { shortest: 3, longest: 3, uses: [] };
    const short = { shortest: 1, longest: 1, uses: [] };
    const { taskModes, optionMode } = compileProblem(
      problemWith({
        choices: [{ id: 'way', options: ['a', 'b', 'c'] }],
        tasks: [task('first', 2), { id: 'second', choice: 'way', modes: [long, short, long] }, task('third', 2)],
      }),
    );
    expect([...taskModes.start]).toEqual([0, 1, 3, 4]);
    expect([...taskModes.items]).toEqual([0, 1, 2, 3]);
    expect([...optionMode.items]).toEqual([0, 1, 2, 1, 3]);
  });
});

describe('a compiled problem', () => {
  it('is the same whether tasks share their lists of modes or have copies of them', () => {
    fc.assert(
      fc.property(fc.nat(), fc.integer({ min: 1, max: 3 }), (seed, every) => {
        const drawn = randomProblem(seed, smallShape);
        const choices = new Map(drawn.choices.map(({ id, options }) => [id, options.length]));
        // A task takes the modes of an earlier one where its choice has as many options.
        const lists = new Map<number, Task['modes']>();
        const tasks = drawn.tasks.map((of, k) => {
          const options = of.choice === undefined ? 1 : choices.get(of.choice)!;
          const modes = k % every === 0 ? (lists.get(options) ?? of.modes) : of.modes;
          lists.set(options, modes);
          return { ...of, modes };
        });
        const sharing = { ...drawn, tasks };
        const copied = structuredClone({
          ...drawn,
          tasks: tasks.map((of) => ({ ...of, modes: structuredClone(of.modes) })),
        });
        expect(compileProblem(sharing)).toEqual(compileProblem(copied));
        expect(faultsOf(sharing)).toEqual(faultsOf(copied));
        expect(loosen(sharing).problem).toEqual(loosen(copied).problem);
      }),
    );
  });
});

function faultsOf(problem: Problem): unknown {
  try {
    validateProblem(problem);
    return [];
  } catch (error) {
    return (error as ProblemFault).faults;
  }
}
