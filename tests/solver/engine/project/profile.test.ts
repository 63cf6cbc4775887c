import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileProblem } from '../../../../solver/engine/compile-problem.ts';
import { asPlainProject } from '../../../../solver/engine/project/plain-project.ts';
import { Profile } from '../../../../solver/engine/project/profile.ts';
import type { Problem } from '../../../../solver/engine/problem.ts';
import { problemWith, task, use } from '../build-problem.ts';

const HORIZON = 30;

/** Resources with a break, more than share one word when they are many or large, and tasks that use some of them. */
const problems = fc
  .array(fc.record({ capacity: fc.integer({ min: 1, max: 70 }), less: fc.nat(70), from: fc.nat(HORIZON - 1) }), {
    minLength: 1,
    maxLength: 9,
  })
  .chain((resources) =>
    fc.record({
      resources: fc.constant(
        resources.map(({ capacity, less, from }, r) => ({
          id: `r${r}`,
          capacity,
          calendar: [{ from, until: from + 1, capacity: Math.max(0, capacity - less) }],
        })),
      ),
      tasks: fc
        .array(
          fc.record({
            length: fc.integer({ min: 1, max: 6 }),
            amounts: fc.tuple(...resources.map(({ capacity }) => fc.nat(capacity))),
          }),
          { minLength: 1, maxLength: 25 },
        )
        .map((list) =>
          list.map(({ length, amounts }, k) =>
            task(
              `t${k}`,
              length,
              amounts.flatMap((amount, r) => (amount > 0 ? [use(`r${r}`, amount)] : [])),
            ),
          ),
        ),
    }),
  );

/** By definition: at every minute of every resource there is enough for all that runs. */
class Plain {
  private readonly left: number[][];
  constructor(private readonly problem: Problem) {
    this.left = problem.resources.map(({ capacity, calendar = [] }) =>
      Array.from(
        { length: problem.horizon },
        (_, t) => calendar.find(({ from, until }) => from <= t && t < until)?.capacity ?? capacity,
      ),
    );
  }

  private minutes(k: number, start: number): { readonly r: number; readonly t: number; readonly amount: number }[] {
    const { uses, shortest } = this.problem.tasks[k]!.modes[0]!;
    return uses.flatMap(({ resource, amount }) =>
      Array.from({ length: shortest }, (_, i) => ({
        r: this.problem.resources.findIndex(({ id }) => id === resource),
        t: start + i,
        amount,
      })),
    );
  }

  /** @returns the first of the starts with room, which it takes; −1 where there is none */
  place(k: number, starts: readonly number[]): number {
    const { shortest } = this.problem.tasks[k]!.modes[0]!;
    const at = starts.find(
      (start) =>
        start >= 0 &&
        start + shortest <= this.problem.horizon &&
        this.minutes(k, start).every(({ r, t, amount }) => this.left[r]![t]! >= amount),
    );
    if (at === undefined) return -1;
    for (const { r, t, amount } of this.minutes(k, at)) this.left[r]![t]! -= amount;
    return at;
  }
}

const upFrom = (at: number): number[] => Array.from({ length: HORIZON - at + 1 }, (_, k) => at + k);
const downFrom = (at: number): number[] => Array.from({ length: at + 1 }, (_, k) => at - k);

describe('the profile of a project', () => {
  it('places each task where the definition of capacity first or last has room', () => {
    fc.assert(
      fc.property(problems, fc.array(fc.tuple(fc.boolean(), fc.nat(HORIZON))), (drawn, moves) => {
        const problem = problemWith({ ...drawn, horizon: HORIZON });
        const project = asPlainProject(compileProblem(problem))!;
        const profile = new Profile(project);
        const plain = new Plain(problem);
        problem.tasks.forEach((_, k) => {
          const length = project.length[k]!;
          const [late, drawnAt] = moves[k % Math.max(1, moves.length)] ?? [false, 0];
          const at = Math.min(drawnAt, HORIZON - length);
          const placed = late ? profile.placeLate(k, at, length) : profile.placeEarly(k, at, length);
          expect(placed).toBe(plain.place(k, late ? downFrom(at) : upFrom(at)));
        });
      }),
      { numRuns: 300 },
    );
  });

  it('has no room for what needs more than there ever is, and all the room again once it is cleared', () => {
    const problem = problemWith({
      horizon: 4,
      resources: [{ id: 'r', capacity: 3 }],
      tasks: [task('much', 1, [use('r', 4)]), task('some', 3, [use('r', 2)])],
    });
    const project = asPlainProject(compileProblem(problem));
    const profile = new Profile(project!);
    expect(profile.placeEarly(0, 0, 1)).toBe(-1);
    expect(profile.placeEarly(1, 0, 3)).toBe(0);
    expect(profile.placeEarly(1, 0, 3)).toBe(-1);
    profile.clear();
    expect(profile.placeLate(1, 1, 3)).toBe(1);
  });
});
