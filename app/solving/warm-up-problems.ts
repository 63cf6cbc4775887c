/**
 * Small scheduling problems that between them touch all that the engine can do; every number is invented. They are solved for nothing but
 * to have the engine's code compiled before anybody waits for it.
 */
import { Random } from '../../solver/engine/random.ts';
import type { Lag, Mode, Point, Problem, Task, Tier, Use } from '../../solver/engine/problem.ts';

const start = (task: string): Point & { readonly task: string } => ({ task, at: 'start' });
const end = (task: string): Point & { readonly task: string } => ({ task, at: 'end' });
const after = (first: string, second: string, least = 0): Lag => ({ from: end(first), to: start(second), least });
/** The second starts at most `most` minutes after the first starts. */
const within = (first: string, second: string, most: number): Lag => ({
  from: start(second),
  to: start(first),
  least: -most,
});
const fixed = (minutes: number, ...uses: readonly Use[]): Mode => ({ shortest: minutes, longest: minutes, uses });
const use = (resource: string, amount = 1, soil: Partial<Use> = {}): Use => ({ resource, amount, ...soil });
const finish = (tasks: readonly Task[]): Tier => ({
  kind: 'latest',
  id: 'finish',
  terms: tasks.map(({ id }) => ({ point: end(id) })),
});

type Parts = Partial<Problem> & Pick<Problem, 'tasks' | 'resources' | 'lags' | 'horizon'>;
const problem = (name: string, parts: Parts): Problem => ({
  format: 'afterheat.problem',
  version: 1,
  name,
  choices: [],
  states: [],
  reservoirs: [],
  forbidden: [],
  totals: [],
  tiers: [finish(parts.tasks)],
  ...parts,
});

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

/** What a kitchen asks for: people to choose among, an oven at several heats, boards that get dirty, a pool that is drawn from. */
function kitchen(seed: number): Problem {
  const chance = new Random(seed);
  const people = ['one', 'two'];
  const tasks: Task[] = [];
  const lags: Lag[] = [];
  const choices: { id: string; options: readonly string[] }[] = [];
  const work = (id: string, minutes: number, group: string, ...more: readonly Use[]): void => {
    choices.push({ id, options: people });
    tasks.push({ id, choice: id, group, modes: people.map((person) => fixed(minutes, use(person), ...more)) });
  };
  const wash = (id: string, board: string): void => {
    choices.push({ id, options: ['none', ...people] });
    const washes = people.map((person) => fixed(2, use(person), use(board, 1, { cleans: true })));
    tasks.push({ id, choice: id, group: 'wash', modes: [null, ...washes] });
  };
  const bodies: string[] = [];
  work('fill', 1, 'pool');
  for (let dish = 0; dish < 4; dish++) {
    const [cut, load, take, held] = ['cut', 'load', 'take', 'held'].map((part) => `${part}${dish}`) as [
      string,
      string,
      string,
      string,
    ];
    work(cut, 2 + chance.below(5), held, use('board', 1, dish % 2 === 0 ? { leaves: ['raw'] } : { avoids: ['raw'] }));
    work(load, 1, held);
    work(take, 1, held);
    const least = 6 + chance.below(12);
    lags.push(after(cut, load), after(load, take, least), within(load, take, least + 9));
    const place: Partial<Mode> = dish < 3 ? { state: { state: 'oven', class: chance.below(3) } } : {};
    const hold: Mode = { shortest: 1, longest: 90, uses: [use(dish < 3 ? 'rack' : 'burner')], ...place };
    tasks.push({ id: held, modes: [{ ...hold, cost: { fixed: 3, perMinute: 2 } }] });
    bodies.push(held);
    lags.push(
      { from: start(held), to: start(load), least: 0 },
      { from: start(load), to: start(held), least: 0 },
      { from: end(held), to: end(take), least: 0 },
      { from: end(take), to: end(held), least: 0 },
    );
  }
  wash('wash1', 'board');
  wash('wash2', 'board');
  lags.push(within('fill', 'load3', 60));
  const finishes = tasks.filter(({ choice }) => choice !== undefined);
  return problem('kitchen', {
    horizon: 120,
    choices,
    tasks,
    lags,
    resources: [
      { id: 'one', capacity: 1 },
      { id: 'two', capacity: 1, calendar: [{ from: 20, until: 25, capacity: 0 }] },
      { id: 'board', capacity: 1 },
      { id: 'rack', capacity: 2 },
      { id: 'burner', capacity: 1 },
    ],
    states: [
      {
        id: 'oven',
        classes: ['cool', 'warm', 'hot'],
        gap: [
          [null, 3, 6],
          [5, null, 3],
          [9, 5, null],
        ],
      },
    ],
    reservoirs: [
      {
        id: 'water',
        initial: 0,
        events: [
          { point: end('fill'), amount: 1 },
          { point: start('load3'), amount: -1 },
        ],
      },
    ],
    tiers: [
      finish(finishes),
      {
        kind: 'waiting',
        id: 'waiting',
        terms: bodies.map((id) => ({ weight: 1, from: end(id), to: end('take0'), free: 5 })),
      },
      { kind: 'cost', id: 'cost' },
      { kind: 'changes', id: 'calm', resources: people },
    ],
  });
}

/**
 * Small problems of every kind, in the order in which they are best solved.
 *
 * @param seed any 32-bit integer; the same seed gives the same problems
 */
export function warmUpProblems(seed: number): readonly Problem[] {
  return [kitchen(seed), project(seed, true), modes(seed), project(seed, false), shop(seed, true), shop(seed, false)];
}
