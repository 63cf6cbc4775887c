import { describe, expect, it } from 'vitest';
import { OPEN, type ReplanAsked, type Unit } from '../../../../solver/engine/replan/asked.ts';
import { replan } from '../../../../solver/engine/replan/replan.ts';
import type { Solution } from '../../../../solver/engine/outcome.ts';
import type { Problem } from '../../../../solver/engine/problem.ts';
import { bruteForce } from '../../../support/brute-force.ts';
import { faultsOf, holds } from '../../../support/plain-check.ts';
import { randomProblem, tinyShape } from '../../../support/random-problem.ts';
import { seeded } from '../../../support/seeded.ts';

/** Two who share a few jobs, some of which either may do, some after others, some soon after: invented. */
function randomShop(seed: number): Problem {
  const chance = seeded(seed);
  const people = ['a', 'b'];
  const jobs = Array.from({ length: 4 }, (_, job) => {
    const length = chance.int(1, 3);
    const able = chance.chance(0.7) ? people : [chance.pick(people)];
    const modes = able.map((person) => ({
      shortest: length,
      longest: length,
      uses: [{ resource: person, amount: 1 }],
    }));
    return { id: `j${job}`, modes, ...(able.length > 1 ? { choice: `who j${job}` } : {}) };
  });
  const lags: Problem['lags'] = jobs.slice(1).flatMap(({ id }, job) => {
    const before = jobs[chance.int(0, job)]!.id;
    if (chance.chance(0.4)) return [];
    const order = { from: { task: before, at: 'end' as const }, to: { task: id, at: 'start' as const }, least: 0 };
    return chance.chance(0.6)
      ? [order]
      : [order, { from: order.to, to: order.from, least: -chance.int(0, 2), requirement: `${id} soon after` }];
  });
  return {
    format: 'afterheat.problem',
    version: 1,
    name: `shop ${seed}`,
    horizon: 9,
    choices: jobs.flatMap(({ choice }) => (choice === undefined ? [] : [{ id: choice, options: people }])),
    tasks: jobs,
    resources: people.map((id) => ({ id, capacity: 1 })),
    states: [],
    reservoirs: [],
    lags,
    forbidden: [],
    totals: [],
    tiers: [],
  };
}

/** A running plan of a random tiny problem, at a random moment, some work perhaps late; null where there is none. */
function randomAsked(seed: number, shop: boolean): ReplanAsked | null {
  const chance = seeded(seed * 31 + 7);
  const problem = shop
    ? randomShop(seed)
    : randomProblem(seed, {
        ...tinyShape,
        tasks: [3, 5],
        features: { zero: 0, totals: 0, modes: 0.8, calendar: 0.2 },
      });
  const truth = bruteForce(!shop && chance.chance(0.4) ? problem : { ...problem, tiers: [latest(problem)] });
  if (truth.kind !== 'optimal') return null;
  const old = truth.solution;
  const last = Math.max(...old.tasks.map((at) => at?.end ?? 0));
  const now = chance.int(0, Math.ceil(last / 2));
  const facts = new Int32Array(1 + 2 * problem.tasks.length).fill(OPEN);
  old.tasks.forEach((at, task) => {
    if (at === null) return;
    if (at.start < now) facts[1 + 2 * task] = at.start;
    if (at.end < now) facts[2 + 2 * task] = at.end;
  });
  const by = chance.int(0, 5);
  return {
    problem: {
      ...problem,
      horizon: problem.horizon + chance.int(0, 5),
      // What is under way takes longer than was thought.
      tasks: problem.tasks.map((task, index) => {
        const at = old.tasks[index] ?? null;
        if (at === null || at.end < now || chance.chance(at.start < now ? 0.2 : 0.8)) return task;
        return {
          ...task,
          modes: task.modes.map((mode) =>
            mode === null ? null : { ...mode, shortest: mode.shortest + by, longest: mode.longest + by },
          ),
        };
      }),
    },
    old,
    units: unitsOf(problem, chance.chance(0.5)),
    facts,
    now,
    frozenUntil: now,
    finish: problem.tasks.map((_, task) => 2 + 2 * task),
    penalty: chance.int(0, 2),
    seed: 1,
    effort: 3_000_000,
  };
}

const latest = (problem: Problem) => ({
  kind: 'latest' as const,
  id: 'finish',
  terms: problem.tasks.map(({ id }) => ({ point: { task: id, at: 'end' as const } })),
});

/** One task a unit, or two by two. */
const unitsOf = (problem: Problem, pairs: boolean): readonly Unit[] =>
  pairs
    ? problem.tasks.flatMap((_, task) =>
        task % 2 === 1
          ? []
          : [{ id: `unit ${task}`, tasks: [task, task + 1].filter((each) => each < problem.tasks.length) }],
      )
    : problem.tasks.map((_, task) => ({ id: `unit ${task}`, tasks: [task] }));

/** The definition of a changed unit, read off pair by pair with nothing shared with the engine. */
function plainChanges({ problem, units, old }: ReplanAsked, solution: Solution): number {
  const unitOf = (task: number): number => units.findIndex(({ tasks }) => tasks.includes(task));
  const mode = ({ choices, tasks }: Solution, task: number): number =>
    tasks[task] == null
      ? -1
      : problem.tasks[task]!.choice === undefined
        ? 0
        : choices[problem.choices.findIndex(({ id }) => id === problem.tasks[task]!.choice)]!;
  const uses = (plan: Solution, task: number, resource: string): boolean =>
    problem.tasks[task]!.modes[mode(plan, task)]?.uses.some((use) => use.resource === resource && use.amount > 0) ===
    true;
  const changed = new Set<number>();
  problem.tasks.forEach((_, task) => {
    if (mode(old, task) !== mode(solution, task)) changed.add(unitOf(task));
  });
  for (const { id, capacity, calendar } of problem.resources) {
    if (capacity !== 1 || (calendar ?? []).some((entry) => entry.capacity > 1)) continue;
    const users = problem.tasks
      .map((_, task) => task)
      .filter((task) => uses(old, task, id) && old.tasks[task]!.end > old.tasks[task]!.start)
      .sort((a, b) => old.tasks[a]!.start - old.tasks[b]!.start);
    users.slice(1).forEach((second, index) => {
      const first = users[index]!;
      if (unitOf(first) === unitOf(second) || !uses(solution, first, id) || !uses(solution, second, id)) return;
      if (solution.tasks[first]!.end > solution.tasks[second]!.start) {
        changed.add(unitOf(first));
        changed.add(unitOf(second));
      }
    });
  }
  return changed.size;
}

/** What is past, as facts, may break its own rules; these examples are left out where it does. */
function keepsFacts({ problem, facts, now }: ReplanAsked, solution: Solution): boolean {
  return (
    faultsOf(problem, solution).length === 0 &&
    solution.tasks.every((at, task) => {
      const [start, end] = [facts[1 + 2 * task]!, facts[2 + 2 * task]!];
      if (at === null) return start === OPEN;
      return (start === OPEN ? at.start >= now : at.start === start) && (end === OPEN ? at.end >= now : at.end === end);
    })
  );
}

/** Least worth of all ways to go on, by trying every option and every interval. */
function everyWay(asked: ReplanAsked): number {
  const { problem, facts, now } = asked;
  let best = Infinity;
  // What has begun stays as it was begun.
  const decided = problem.tasks.flatMap(({ choice, when }, task) =>
    facts[1 + 2 * task] === OPEN
      ? []
      : [choice, ...(when ?? []).map((literal) => literal.choice)]
          .map((id) => problem.choices.findIndex((each) => each.id === id))
          .filter((index) => index >= 0),
  );
  const sizes = problem.choices.map(({ options }) => options.length);
  const total = sizes.reduce((product, size) => product * size, 1);
  for (let code = 0; code < total; code++) {
    let rest = code;
    const choices = sizes.map((size) => {
      const option = rest % size;
      rest = Math.floor(rest / size);
      return option;
    });
    if (problem.forbidden.some((literals) => holds(problem, choices, literals))) continue;
    if (decided.some((choice) => choices[choice] !== asked.old.choices[choice])) continue;
    const tasks: ({ start: number; end: number } | null)[] = [];
    const descend = (task: number): void => {
      if (task === problem.tasks.length) {
        const solution = { choices, tasks: [...tasks] };
        const finish = Math.max(0, ...tasks.map((at) => at?.end ?? 0));
        if (finish >= best || !keepsFacts(asked, solution)) return;
        best = Math.min(best, finish + asked.penalty * plainChanges(asked, solution));
        return;
      }
      const { when, choice, modes } = problem.tasks[task]!;
      const mode = holds(problem, choices, when ?? [])
        ? modes[choice === undefined ? 0 : choices[problem.choices.findIndex(({ id }) => id === choice)]!]
        : null;
      if (mode == null) {
        tasks[task] = null;
        return descend(task + 1);
      }
      const [start, end] = [facts[1 + 2 * task]!, facts[2 + 2 * task]!];
      for (let from = start === OPEN ? now : start; from <= (start === OPEN ? problem.horizon : start); from++)
        for (let to = from + mode.shortest; to <= Math.min(problem.horizon, from + mode.longest, best - 1); to++) {
          if (end !== OPEN && to !== end) continue;
          // Two at once with the same person are no use.
          const clash = mode.uses.some(({ resource, amount }) =>
            tasks.slice(0, task).some((at, other) => {
              if (at === null || at.end <= from || to <= at.start || amount === 0) return false;
              const { choice: on, modes: others } = problem.tasks[other]!;
              const taken = others[on === undefined ? 0 : choices[problem.choices.findIndex(({ id }) => id === on)]!];
              const room = problem.resources.find(({ id }) => id === resource)!;
              return (
                room.capacity === 1 &&
                room.calendar === undefined &&
                taken!.uses.some((use) => use.resource === resource && use.amount > 0)
              );
            }),
          );
          if (clash) continue;
          tasks[task] = { start: from, end: to };
          descend(task + 1);
        }
    };
    descend(0);
  }
  return best;
}

interface Seen {
  readonly wrong: string[];
  proven: number;
  better: number;
  impossible: number;
}

function holdAgainstEveryWay(asked: ReplanAsked, seed: number, seen: Seen): void {
  const { wrong } = seen;
  const outcome = replan(asked);
  const truth = everyWay(asked);
  if ('clash' in outcome) {
    if (truth < Infinity) wrong.push(`${seed}: ${outcome.kind}, and ${truth} can be had`);
    seen.impossible++;
    return;
  }
  // What is past may have broken a rule; the plain check then says so of every way.
  if (outcome.broken.length > 0) return;
  const { worth, bound, solution } = outcome;
  if (!keepsFacts(asked, solution)) wrong.push(`${seed}: the past or a rule is broken`);
  if (worth.total !== worth.finish + asked.penalty * plainChanges(asked, solution))
    wrong.push(`${seed}: worth ${worth.total} is not what it is worth`);
  if (worth.total < truth || bound > truth) wrong.push(`${seed}: ${bound} to ${worth.total} around ${truth}`);
  if (outcome.kind === 'proven' && worth.total !== truth) wrong.push(`${seed}: proven ${worth.total}, best ${truth}`);
  if (outcome.carriedOn !== null && worth.total > outcome.carriedOn) wrong.push(`${seed}: worse than carried on`);
  if (outcome.kind === 'proven') seen.proven++;
  if (outcome.carriedOn === null || worth.total < outcome.carriedOn) seen.better++;
}

describe('replanning tiny random plans, beside every way to go on', () => {
  it('is worth what the best is worth, where it is proven, and never less: problems of every feature', () => {
    const seen: Seen = { wrong: [], proven: 0, better: 0, impossible: 0 };
    for (let seed = 0; seed < 60; seed++) {
      const asked = randomAsked(seed, false);
      if (asked !== null) holdAgainstEveryWay(asked, seed, seen);
    }
    expect(seen.wrong).toEqual([]);
    expect(seen.proven).toBeGreaterThan(25);
    expect(seen.impossible).toBeGreaterThan(0);
  });

  it('is worth what the best is worth, where it is proven, and never less: two who share jobs', () => {
    const seen: Seen = { wrong: [], proven: 0, better: 0, impossible: 0 };
    for (let seed = 0; seed < 150; seed++) {
      const asked = randomAsked(seed, true);
      if (asked !== null) holdAgainstEveryWay(asked, seed, seen);
    }
    expect(seen.wrong).toEqual([]);
    expect(seen.proven).toBeGreaterThan(80);
    expect(seen.better).toBeGreaterThan(4);
  });
});
