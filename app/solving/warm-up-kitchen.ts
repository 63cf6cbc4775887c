/** A kitchen's scheduling problem of any size, every number invented. It is solved for nothing but to have code compiled. */
import { Random } from '../../solver/engine/random.ts';
import type { Lag, Literal, Mode, Problem, Task, Total, Use } from '../../solver/engine/problem.ts';
import { after, end, finish, fixed, problem, start, use, within } from './problem-parts.ts';

/**
 * What a kitchen asks for: people to choose among, an oven at several heats, boards that get dirty, a pool that is drawn from, work that is
 * there only where something is done one way, ways that exclude each other, and stirring that adds up.
 *
 * @param seed any 32-bit integer
 * @param dishes at least 4
 */
export function kitchen(seed: number, dishes: number): Problem {
  const chance = new Random(seed);
  const people = ['one', 'two'];
  const tasks: Task[] = [];
  const lags: Lag[] = [];
  const choices: { id: string; options: readonly string[] }[] = [];
  const work = (id: string, minutes: number, group: string, ...more: readonly Use[]): void => {
    choices.push({ id, options: people });
    tasks.push({ id, choice: id, group, modes: people.map((person) => fixed(minutes, use(person), ...more)) });
  };
  /** Work that is there under the second option of a choice alone. */
  const workWhere = (choice: string, id: string, minutes: number, group: string): void => {
    const who = `who ${id}`;
    choices.push({ id: who, options: people });
    const when = [{ choice, options: [1] }];
    tasks.push({ id, when, choice: who, group, modes: people.map((person) => fixed(minutes, use(person))) });
  };
  const wash = (id: string, board: string): void => {
    choices.push({ id, options: ['none', ...people] });
    const washes = people.map((person) => fixed(2, use(person), use(board, 1, { cleans: true })));
    tasks.push({ id, choice: id, group: 'wash', modes: [null, ...washes] });
  };
  /** Searing that is there where the dish is done so, and two stirrings of one length together. */
  const addSteps = (dish: number): void => {
    const [cut, load, sear, stir, again] = ['cut', 'load', 'sear', 'stir', 'again'].map((part) => `${part}${dish}`) as [
      string,
      string,
      string,
      string,
      string,
    ];
    const how = `how${dish}`;
    choices.push({ id: how, options: ['plain', 'seared'] });
    workWhere(how, sear, 2 + chance.below(3), `held${dish}`);
    const seared: Literal = { choice: how, options: [1] };
    lags.push({ ...after(cut, sear), if: [seared] }, { ...after(sear, load), if: [seared] });
    lags.push({ ...after(cut, load, 5), if: [{ choice: how, options: [0] }] });
    for (const id of [stir, again]) {
      choices.push({ id, options: people });
      const modes = people.map((person) => ({ shortest: 1, longest: 3, uses: [use(person)] }));
      tasks.push({ id, choice: id, group: `held${dish}`, modes });
    }
    totals.push({ tasks: [stir, again], total: 4 });
    lags.push(after(load, stir, 1), after(stir, again, 2), within(load, again, 40 + 4 * dishes));
    hands.push(stir, again);
  };
  const bodies: string[] = [];
  const hands: string[] = [];
  const totals: Total[] = [];
  work('fill', 1, 'pool');
  for (let dish = 0; dish < dishes; dish++) {
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
    lags.push(after(cut, load), after(load, take, least), within(load, take, least + 3));
    hands.push(cut, load, take);
    if (dish > 3) addSteps(dish);
    const place: Partial<Mode> = dish % 4 < 3 ? { state: { state: 'oven', class: chance.below(3) } } : {};
    const hold: Mode = { shortest: 1, longest: 90, uses: [use(dish % 4 < 3 ? 'rack' : 'burner')], ...place };
    tasks.push({ id: held, modes: [{ ...hold, cost: { fixed: 3, perMinute: 2 } }] });
    bodies.push(held);
    lags.push(
      { from: start(held), to: start(load), least: 0 },
      { from: start(load), to: start(held), least: 0 },
      { from: end(held), to: end(take), least: 0 },
      { from: end(take), to: end(held), least: 0 },
    );
  }
  for (let k = 1; k <= 2 + (dishes >> 2); k++) wash(`wash${k}`, 'board');
  const plain = (dish: number): Literal => ({ choice: `how${dish}`, options: [0] });
  const forbidden = Array.from({ length: Math.max(0, dishes - 5) }, (_, k) => [plain(k + 4), plain(k + 5)]);
  lags.push(within('fill', 'load3', 60));
  return problem(`kitchen of ${dishes} dishes`, {
    horizon: 25 + 6 * dishes,
    choices,
    tasks,
    lags,
    forbidden,
    totals,
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
      finish(hands.map((id) => ({ id }))),
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
