/**
 * Small scheduling problems that between them touch all that the engine can do; every number is invented. They are solved for nothing but
 * to have the engine's code compiled before anybody waits for it.
 */
import { Random } from '../../solver/engine/random.ts';
import type { Lag, Problem, Task } from '../../solver/engine/problem.ts';
import { after, end, fixed, problem, start, use, within } from './problem-parts.ts';
import { kitchen } from './warm-up-kitchen.ts';

/** A project of 12 tasks on shared resources; `gaps` adds longest gaps, which some seeds make impossible. */
function project(seed: number, gaps: boolean): Problem {
  const chance = new Random(seed);
  const names = Array.from({ length: 12 }, (_, k) => `task${k}`);
  const tasks = names.map((id): Task => {
    const uses = ['a', 'b', 'c'].flatMap((resource) =>
      chance.percent(60) ? [use(resource, 1 + chance.below(5))] : [],
    );
    return { id, modes: [fixed(1 + chance.below(9), ...uses)] };
  });
  const lags: Lag[] = [];
  names.forEach((id, k) => {
    if (k < 2) return;
    const before = names[chance.below(k)]!;
    lags.push(gaps ? { from: start(before), to: start(id), least: chance.below(9) } : after(before, id));
    if (gaps && chance.percent(50)) lags.push(within(before, id, 9 + chance.below(14)));
  });
  const resources = ['a', 'b', 'c'].map((id) => ({ id, capacity: 7 }));
  return problem(gaps ? 'gaps' : 'project', { horizon: 120, tasks, resources, lags });
}

/** A project of 10 tasks with two modes each, and a stock that the quicker modes use up. */
function modes(seed: number): Problem {
  const chance = new Random(seed);
  const names = Array.from({ length: 10 }, (_, k) => `task${k}`);
  const tasks = names.map((id): Task => {
    const slow = 4 + chance.below(6);
    return {
      id,
      choice: id,
      modes: [
        fixed(slow, use('a', 1 + chance.below(3))),
        fixed(slow - 3, use('a', 2 + chance.below(3)), use('b', 1 + chance.below(4))),
      ],
    };
  });
  return problem('modes', {
    horizon: 120,
    choices: names.map((id) => ({ id, options: ['slow', 'quick'] })),
    tasks,
    resources: ['a', 'b'].map((id) => ({ id, capacity: 5 })),
    reservoirs: [
      { id: 'stock', initial: 5, events: names.map((id) => ({ point: start(id), amount: -1, if: [quick(id)] })) },
    ],
    lags: names.slice(3).map((id, k) => after(names[chance.below(k + 3)]!, id)),
  });
}

const quick = (choice: string): { readonly choice: string; readonly options: readonly number[] } => ({
  choice,
  options: [1],
});

/** Five jobs on four machines; each machine has one job at a time, and is `held` until the next takes the job over. */
function shop(seed: number, held: boolean): Problem {
  const chance = new Random(seed);
  const tasks: Task[] = [];
  const lags: Lag[] = [];
  for (let job = 0; job < 5; job++) {
    const first = chance.below(4);
    for (let k = 0; k < 4; k++) {
      const shortest = 2 + chance.below(9);
      const longest = held && k < 3 ? 200 : shortest;
      const id = `job${job}.${k}`;
      tasks.push({ id, modes: [{ shortest, longest, uses: [use(`machine${(first + k) % 4}`)] }] });
      if (k === 0) continue;
      const before = `job${job}.${k - 1}`;
      lags.push(after(before, id));
      if (held) lags.push({ from: start(id), to: end(before), least: 0 });
    }
  }
  const resources = [0, 1, 2, 3].map((k) => ({ id: `machine${k}`, capacity: 1 }));
  return problem(held ? 'shop that blocks' : 'shop', { horizon: 200, tasks, resources, lags });
}

/**
 * Small problems of every kind, in the order in which they are best solved.
 *
 * @param seed any 32-bit integer; the same seed gives the same problems
 */
export function warmUpProblems(seed: number): readonly Problem[] {
  return [
    kitchen(seed, 4),
    kitchen(seed, 10),
    project(seed, true),
    modes(seed),
    project(seed, false),
    shop(seed, true),
    shop(seed, false),
  ];
}
