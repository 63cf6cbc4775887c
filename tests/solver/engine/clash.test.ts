import { describe, expect, it } from 'vitest';
import { solveByLearning } from '../../../solver/engine/learning/prove.ts';
import type { Clash, Solve } from '../../../solver/engine/outcome.ts';
import type { Problem } from '../../../solver/engine/problem.ts';
import { engines } from '../../benchmarks/engines.ts';
import { bruteForce } from '../../support/brute-force.ts';
import { randomProblem, type ProblemShape } from '../../support/random-problem.ts';
import { after, endOf, mode, problemWith, task, use } from './build-problem.ts';

/** Many lags, half of them with a requirement's name, so that most that cannot be planned could be with some left out. */
const shape: ProblemShape = {
  tasks: [3, 5],
  horizon: [5, 9],
  length: 4,
  otherwise: 0.25,
  features: { lags: 1, longest: 1, conditional: 0.5 },
};

/** The problem with those lags only that have no requirement, or one of the names. */
const keeping = (problem: Problem, names: readonly string[]): Problem => ({
  ...problem,
  lags: problem.lags.filter(({ requirement }) => requirement === undefined || names.includes(requirement)),
});

function clashOf(solve: Solve, problem: Problem, effort: number): Clash | null {
  const outcome = solve(problem, { seed: 1, effort });
  return outcome.kind === 'impossible' ? outcome.clash : null;
}

// Each answer is held against complete enumeration.
describe('the requirements that clash in random problems', () => {
  const impossible = Array.from({ length: 200 }, (_, k) => randomProblem(70_000 + k, shape)).filter(
    (problem) => bruteForce(problem).kind === 'infeasible',
  );

  it('cannot be kept together, and can without any one of them', () => {
    let members = 0;
    for (const problem of impossible) {
      const clash = clashOf(solveByLearning, problem, 5_000_000);
      expect(clash, problem.name).not.toBeNull();
      const names = clash!.requirements;
      expect(bruteForce(keeping(problem, names)).kind, problem.name).toBe('infeasible');
      for (const name of names) {
        const others = names.filter((other) => other !== name);
        expect(bruteForce(keeping(problem, others)).kind, `${problem.name} without ${name}`).toBe('optimal');
      }
      members += names.length;
    }
    expect(impossible.length).toBeGreaterThan(50);
    expect(members).toBeGreaterThan(20);
  });

  it.each(Object.keys(engines))('are a clash where the engine "%s" tells of a cycle', (name) => {
    let cycles = 0;
    for (const problem of impossible) {
      const clash = clashOf(engines[name]!, problem, 1_000);
      if (clash?.kind !== 'cycle') continue;
      cycles++;
      expect(bruteForce(keeping(problem, clash.requirements)).kind, problem.name).toBe('infeasible');
    }
    expect(cycles).toBeGreaterThan(10);
  });
});

describe.each(Object.keys(engines))(
  'a problem that is bad in itself is told before search by the engine "%s":',
  (name) => {
    const hands = { id: 'hands', capacity: 2 };
    it.each<{ name: string; given: Problem; kind: Clash['kind'] }>([
      {
        name: 'a cycle in the order',
        given: problemWith({
          tasks: [task('a', 2), task('b', 2), task('c', 2)],
          lags: [after('a', 'b'), after('b', 'c'), after('c', 'a')],
        }),
        kind: 'cycle',
      },
      {
        name: 'a task before itself',
        given: problemWith({ tasks: [task('a', 2)], lags: [after('a', 'a')] }),
        kind: 'cycle',
      },
      {
        name: 'a demand over capacity',
        given: problemWith({ resources: [hands], tasks: [task('a', 2, [use('hands', 3)])] }),
        kind: 'capacity',
      },
      {
        name: 'a demand over capacity by two uses of one resource',
        given: problemWith({ resources: [hands], tasks: [task('a', 2, [use('hands', 2), use('hands', 1)])] }),
        kind: 'capacity',
      },
      {
        name: 'a demand over capacity in each mode',
        given: problemWith({
          choices: [{ id: 'c', options: ['x', 'y'] }],
          resources: [hands],
          tasks: [{ id: 'a', choice: 'c', modes: [mode(2, [use('hands', 3)]), mode(4, [use('hands', 5)])] }],
        }),
        kind: 'capacity',
      },
      {
        name: 'a task longer than there is time',
        given: problemWith({ horizon: 30, tasks: [task('a', 31)] }),
        kind: 'horizon',
      },
      {
        name: 'a chain longer than there is time',
        given: problemWith({ horizon: 30, tasks: [task('a', 16), task('b', 15)], lags: [after('a', 'b')] }),
        kind: 'horizon',
      },
      {
        name: 'an end required before the work can be done',
        given: problemWith({ tasks: [task('a', 9)], lags: [{ from: endOf('a'), to: 'origin', least: -8 }] }),
        kind: 'cycle',
      },
    ])('$name', ({ given, kind }) => {
      const outcome = engines[name]!(given, { seed: 1, effort: 1_000 });
      expect(outcome.kind).toBe('impossible');
      if (outcome.kind !== 'impossible') return;
      expect(outcome.clash.kind).toBe(kind);
      expect(outcome.clash.reason).not.toBe('');
    });
  },
);
