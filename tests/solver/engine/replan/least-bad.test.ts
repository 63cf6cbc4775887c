import { describe, expect, it } from 'vitest';
import { OPEN, type ReplanAsked } from '../../../../solver/engine/replan/asked.ts';
import type { ReplanOutcome } from '../../../../solver/engine/replan/outcome.ts';
import { replan } from '../../../../solver/engine/replan/replan.ts';
import type { Lag, Problem, Task } from '../../../../solver/engine/problem.ts';
import { faultsOf } from '../../../support/plain-check.ts';

type Bad = Extract<ReplanOutcome, { readonly clash: unknown }>;

const task = (id: string, minutes: number, ...people: readonly string[]): Task => ({
  id,
  modes: [{ shortest: minutes, longest: minutes, uses: people.map((resource) => ({ resource, amount: 1 })) }],
});
const after = (first: string, second: string): Lag => ({
  from: { task: first, at: 'end' },
  to: { task: second, at: 'start' },
  least: 0,
});
/** The second ends at most so many minutes after the first. */
const within = (first: string, second: string, minutes: number, requirement: string): Lag => ({
  from: { task: second, at: 'end' },
  to: { task: first, at: 'end' },
  least: -minutes,
  requirement,
});

/** A kitchen of one cook and invented work; one minute of each unit's start and length a task. */
function asked(
  tasks: readonly Task[],
  lags: readonly Lag[],
  old: readonly (readonly [start: number, end: number])[],
  now: number,
  more: Partial<ReplanAsked> = {},
): ReplanAsked {
  const problem: Problem = {
    format: 'afterheat.problem',
    version: 1,
    name: 'invented',
    horizon: 200,
    choices: [],
    tasks,
    resources: [{ id: 'ada', capacity: 1 }],
    states: [],
    reservoirs: [],
    lags,
    forbidden: [],
    totals: [],
    tiers: [],
  };
  const facts = new Int32Array(1 + 2 * tasks.length).fill(OPEN);
  old.forEach(([start, end], index) => {
    if (start < now) facts[1 + 2 * index] = start;
    if (end < now) facts[2 + 2 * index] = end;
  });
  return {
    problem,
    old: { choices: [], tasks: old.map(([start, end]) => ({ start, end })) },
    units: tasks.map(({ id }, index) => ({ id, tasks: [index] })),
    facts,
    now,
    frozenUntil: now,
    finish: tasks.map((_, index) => 2 + 2 * index),
    penalty: 2,
    seed: 1,
    effort: 30_000,
    ...more,
  };
}

function bad(question: ReplanAsked): Bad {
  const outcome = replan(question);
  if (!('clash' in outcome)) throw new Error(`${outcome.kind}, where not every limit can be kept`);
  return outcome;
}

const requirements = ({ broken }: Bad): readonly string[] =>
  broken.map((limit) => (limit.kind === 'lag' ? (limit.requirement ?? 'unnamed') : limit.kind));

/** Fish out of the oven at 10, potatoes that take 60 minutes where 30 were planned, boxes packed with both. */
const lateBoxes = (limits: readonly Lag[], more: Partial<ReplanAsked> = {}): ReplanAsked =>
  asked(
    [task('fish', 10), task('potatoes', 60), task('boxes', 5, 'ada')],
    [after('fish', 'boxes'), after('potatoes', 'boxes'), ...limits],
    [
      [0, 10],
      [5, 35],
      [35, 40],
    ],
    20,
    more,
  );

describe('a replan where the past and the gaps that surely hold leave no time', () => {
  it('proves it without any search, and names the gaps', () => {
    const outcome = bad(lateBoxes([within('fish', 'boxes', 45, 'fish is soon away')], { effort: 0 }));
    expect(outcome.kind).toBe('impossible');
    expect(outcome.work).toBe(0);
    expect(outcome.clash?.reason).toBe('the gaps around fish, potatoes, boxes ask for 15 minutes more than they give');
    expect(outcome.clash?.requirements).toEqual(['fish is soon away']);
  });

  it('goes over the limit by the minutes that are missing and no more, though the old plan has later ones', () => {
    // The cook was to have rested until 100: as planned would be 35 minutes later than need be.
    const question = lateBoxes([within('fish', 'boxes', 45, 'fish is soon away')]);
    const rested: ReplanAsked = {
      ...question,
      old: { choices: [], tasks: [question.old.tasks[0]!, question.old.tasks[1]!, { start: 100, end: 105 }] },
    };
    const outcome = bad(rested);
    expect(outcome.leastBad?.tasks[2]).toEqual({ start: 65, end: 70 });
    expect(requirements(outcome)).toEqual(['fish is soon away']);
  });

  it('keeps the limits that can be kept, by another order where the old one would break them', () => {
    // Ada was to stir the sauce for 10 minutes from 66 on; the boxes, 10 minutes late, come first now or the greens would wait too long.
    const outcome = bad(
      asked(
        [task('fish', 10), task('potatoes', 60), task('sauce', 10, 'ada'), task('boxes', 5, 'ada'), task('greens', 5)],
        [
          after('fish', 'boxes'),
          after('potatoes', 'boxes'),
          after('greens', 'boxes'),
          within('fish', 'boxes', 45, 'fish is soon away'),
          within('greens', 'boxes', 5, 'greens are soon away'),
          { from: 'origin', to: { task: 'sauce', at: 'start' }, least: 62 },
          { from: { task: 'greens', at: 'end' }, to: 'origin', least: -65, requirement: 'greens are off the heat' },
        ],
        [
          [0, 10],
          [5, 35],
          [62, 72],
          [72, 77],
          [30, 35],
        ],
        20,
      ),
    );
    expect(requirements(outcome)).toEqual(['fish is soon away']);
    expect(outcome.leastBad?.tasks[3]).toEqual({ start: 65, end: 70 });
    expect(outcome.leastBad?.tasks[2]!.start).toBeGreaterThanOrEqual(70);
  });

  it('lets a guarded limit go after one that is not', () => {
    // Two longest gaps in one contradiction: potatoes served while the fish is fresh, the salad dressed soon after they are drained.
    const lags = (safe: string, plain: string): readonly Lag[] => [
      after('fish', 'salad'),
      after('salad', 'boxes'),
      within('fish', 'salad', 30, safe),
      within('salad', 'boxes', 15, plain),
      { from: 'origin', to: { task: 'boxes', at: 'start' }, least: 70 },
    ];
    const question = (guarded: readonly number[]): ReplanAsked =>
      asked(
        [task('fish', 10), task('salad', 5, 'ada'), task('boxes', 5, 'ada')],
        lags('salad soon after fish', 'boxes soon after salad'),
        [
          [0, 10],
          [35, 40],
          [40, 45],
        ],
        20,
        { guarded: new Set(guarded) },
      );
    expect(requirements(bad(question([2])))).toEqual(['boxes soon after salad']);
    expect(requirements(bad(question([3])))).toEqual(['salad soon after fish']);
  });

  it('breaks nothing but what it names', () => {
    const question = lateBoxes([
      within('fish', 'boxes', 45, 'fish is soon away'),
      { from: { task: 'boxes', at: 'end' }, to: 'origin', least: -60, requirement: 'boxes are away by minute 60' },
    ]);
    const outcome = bad(question);
    const named = new Set(outcome.broken.flatMap((limit) => (limit.kind === 'lag' ? [limit.lag] : [])));
    expect([...named].length).toBeGreaterThan(0);
    const rest = { ...question.problem, lags: question.problem.lags.filter((_, lag) => !named.has(lag)) };
    expect(faultsOf(rest, outcome.leastBad!)).toEqual([]);
  });
});

describe('a replan where every way to go on breaks what is no limit of time', () => {
  const soiled = (
    id: string,
    minutes: number,
    soil: { leaves?: readonly string[]; avoids?: readonly string[] },
  ): Task => ({
    id,
    modes: [{ shortest: minutes, longest: minutes, uses: [{ resource: 'ada', amount: 1, ...soil }] }],
  });

  it('has no least bad way: raw meat comes to the salad, for it was begun first and there is nothing to wash with', () => {
    const question = asked(
      [soiled('meat', 10, { leaves: ['raw'] }), soiled('salad', 5, { avoids: ['raw'] })],
      [],
      [
        [11, 21],
        [6, 11],
      ],
      5,
    );
    const facts = question.facts.slice();
    facts[1] = 2;
    const outcome = bad({ ...question, facts });
    expect(outcome.leastBad).toBeNull();
  });

  it('never lets go what the asker keeps, and tells which tasks stand in each other’s way', () => {
    const question = lateBoxes([within('fish', 'boxes', 45, 'fish is looked at in time')], { kept: new Set([2]) });
    const outcome = bad(question);
    expect(outcome.leastBad).toBeNull();
    expect(outcome.inTheWay.map((index) => question.problem.tasks[index]!.id)).toEqual(['fish', 'potatoes', 'boxes']);
  });
});
