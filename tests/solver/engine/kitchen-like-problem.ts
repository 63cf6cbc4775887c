/**
 * Problems in the shape that kitchens give, without any food in them; all numbers invented.
 *
 * Each step has hands-on work at its beginning and end (sometimes between), hands-off stretches with shortest and longest gaps, a body
 * around all, and perhaps a place held from first to last work: rack (with a state a temperature), burner or board (with soil and
 * optional washings). Steps form short chains, some with a longest gap; a pool is filled once and drawn from while hot.
 */
import type { Choice, Lag, Mode, Problem, StateResource, Task, Tier, Use } from '../../../solver/engine/problem.ts';
import { seeded, type Seeded } from '../../support/seeded.ts';
import { after, endOf, mode, startOf, use, within } from './build-problem.ts';

export interface KitchenShape {
  readonly seed: number;
  readonly steps: number;
  readonly people: number;
}

/** A kitchen-like problem with room enough that a plan exists. */
export function kitchenLike({ seed, steps, people }: KitchenShape): Problem {
  return new KitchenMaker(seeded(seed), steps, people).make(seed);
}

class KitchenMaker {
  private readonly tasks: Task[] = [];
  private readonly choices: Choice[] = [];
  private readonly lags: Lag[] = [];
  private readonly work: string[] = [];
  private readonly crew: readonly string[];
  private readonly horizon: number;

  constructor(
    private readonly chance: Seeded,
    private readonly steps: number,
    people: number,
  ) {
    this.crew = Array.from({ length: people }, (_, index) => `person${index}`);
    this.horizon = 60 + Math.ceil((steps * 16) / people);
  }

  make(seed: number): Problem {
    const { chance } = this;
    this.handsOn('fill', 1, 'pool');
    for (let step = 0; step < this.steps; step++) this.step(step);
    for (const board of [0, 1])
      for (let number = 1; number <= 4; number++) this.washing(`wash.board${board}.${number}`, `board${board}`);
    const draws = this.tasks.filter((task) => task.id.endsWith('/draw')).map((task) => task.id);
    for (const draw of draws) this.lags.push(within('fill', draw, 90));
    const heat: StateResource = {
      id: 'oven',
      classes: ['150', '180', '220'],
      gap: [
        [null, 4, 8],
        [6, null, 5],
        [12, 7, null],
      ],
    };
    const tiers: Tier[] = [
      { kind: 'latest', id: 'finish', terms: this.work.map((id) => ({ point: endOf(id) })) },
      {
        kind: 'waiting',
        id: 'waiting',
        terms: this.tasks
          .filter((task) => task.id.endsWith('/body') && chance.chance(0.3))
          .map((task) => ({ weight: chance.int(1, 3), from: endOf(task.id), to: endOf(this.work[0] ?? ''), free: 10 })),
      },
      { kind: 'changes', id: 'calm', resources: this.crew },
    ];
    return {
      format: 'afterheat.problem',
      version: 1,
      name: `kitchen-like ${seed}`,
      horizon: this.horizon,
      choices: this.choices,
      tasks: this.tasks,
      resources: [
        ...this.crew.map((id, index) => ({
          id,
          capacity: 1,
          ...(index > 0 ? { calendar: [{ from: 20, until: 30, capacity: 0 }] } : {}),
        })),
        { id: 'rack', capacity: 200 },
        { id: 'burner0', capacity: 1 },
        { id: 'burner1', capacity: 1 },
        { id: 'board0', capacity: 1 },
        { id: 'board1', capacity: 1 },
        { id: 'power', capacity: 5000 },
      ],
      states: [heat],
      reservoirs: [
        {
          id: 'water',
          initial: 0,
          events: [
            { point: endOf('fill'), amount: 1000 * Math.max(1, draws.length) },
            ...draws.map((id) => ({ point: startOf(id), amount: -1000 })),
          ],
        },
      ],
      lags: this.lags,
      forbidden: [],
      totals: [],
      tiers,
    };
  }

  /** Hands-on work: whoever is free does it. */
  private handsOn(id: string, length: number, group: string, more: readonly Use[] = []): void {
    this.work.push(id);
    if (this.crew.length === 1) {
      this.tasks.push({ id, modes: [mode(length, [use(this.crew[0] ?? ''), ...more])], group });
      return;
    }
    this.choices.push({ id: `who:${id}`, options: this.crew });
    this.tasks.push({
      id,
      choice: `who:${id}`,
      modes: this.crew.map((person) => mode(length, [use(person), ...more])),
      group,
    });
  }

  private step(step: number): void {
    const { chance } = this;
    const group = `component${Math.floor(step / 4)}`;
    const id = `s${step}`;
    const parts = chance.pick([1, 2, 2, 3]);
    const names = Array.from({ length: parts }, (_, part) =>
      part === 0 && step % 4 === 0 && chance.chance(0.5) ? `${id}/draw` : `${id}:${part}`,
    );
    names.forEach((name, part) => {
      this.handsOn(name, chance.int(1, 4), group);
      const before = names[part - 1];
      if (before === undefined) return;
      const least = chance.int(4, 25);
      this.lags.push(after(before, name, least), within(before, name, least + chance.int(2, 15)));
    });
    const [first = ''] = names;
    const last = names.at(-1) ?? '';
    this.body(`${id}/body`, [mode([1, this.horizon])], null, first, last, group);
    this.place(id, parts, first, last, group);
    if (step % 4 === 0) return;
    const before = `s${step - 1}/body`;
    this.lags.push({ from: endOf(before), to: startOf(first), least: 0 });
    if (chance.chance(0.3)) this.lags.push({ from: startOf(first), to: endOf(before), least: -chance.int(20, 40) });
  }

  /** A task from the start of the first work to the end of the last. */
  private body(
    id: string,
    modes: readonly Mode[],
    choice: string | null,
    first: string,
    last: string,
    group: string,
  ): void {
    this.tasks.push({ id, modes, group, ...(choice === null ? {} : { choice }) });
    this.lags.push(
      { from: startOf(id), to: startOf(first), least: 0 },
      { from: startOf(first), to: startOf(id), least: 0 },
      { from: endOf(last), to: endOf(id), least: 0 },
      { from: endOf(id), to: endOf(last), least: 0 },
    );
  }

  private place(id: string, parts: number, first: string, last: string, group: string): void {
    const { chance } = this;
    const long: readonly [number, number] = [1, this.horizon];
    const kind = parts === 1 ? chance.pick(['board', 'board', 'none']) : chance.pick(['rack', 'burner', 'none']);
    if (kind === 'rack') {
      const demand = chance.pick([50, 100]);
      const heat = { state: 'oven', class: chance.int(0, 2) };
      this.body(`${id}/hold`, [mode(long, [use('rack', demand)], { state: heat })], null, first, last, group);
    }
    if (kind === 'burner') {
      this.choices.push({ id: `place:${id}`, options: ['burner0', 'burner1'] });
      const modes = ['burner0', 'burner1'].map((burner) =>
        mode(long, [use(burner), use('power', chance.int(1000, 2400))]),
      );
      this.body(`${id}/hold`, modes, `place:${id}`, first, last, group);
    }
    if (kind === 'board') {
      const soil = chance.pick<Partial<Use>>([
        {},
        { leaves: ['raw'] },
        { avoids: ['raw'] },
        { avoids: ['raw', 'nuts'] },
        { leaves: ['nuts'] },
      ]);
      this.choices.push({ id: `place:${id}`, options: ['board0', 'board1'] });
      const modes = ['board0', 'board1'].map((board) => mode(long, [use(board, 1, soil)]));
      this.body(`${id}/hold`, modes, `place:${id}`, first, last, group);
    }
  }

  private washing(id: string, board: string): void {
    this.work.push(id);
    this.choices.push({ id, options: ['none', ...this.crew] });
    const modes = this.crew.map((person) => mode(2, [use(person), use(board, 1, { cleans: true })]));
    this.tasks.push({ id, choice: id, modes: [null, ...modes], group: 'washing' });
  }
}
