/**
 * A plan read as a solution of its session's problem: the way back of `solution-to-plan.ts`. What the plan document shows is taken
 * over (who, where, which way, which boil, when); what it does not show follows from the ties of the problem.
 */
import type { Literal, Point, Problem } from '../engine/problem.ts';
import type { Solution } from '../engine/outcome.ts';
import { wholeId, type Plan, type PlannedPlace, type PlannedSegment, type PlannedStep } from '../kitchen/plan.ts';
import { followTies } from './follow-ties.ts';
import type { NeedLegend, Operation, PlaceOption, PoolLegend, StepLegend, Translated } from './legend.ts';

export interface Interval {
  readonly start: number;
  readonly end: number;
}

/** What the plan shows: options by choice, intervals by task. */
export interface Shown {
  readonly options: Map<string, number>;
  readonly intervals: Map<string, Interval>;
}

/** The portions of each batch that a plan shows, by component: its split. */
export function splitsShown(plan: Plan): ReadonlyMap<string, readonly number[]> {
  const splits = new Map<string, number[]>();
  for (const component of plan.components) {
    const batched = new Set(component.batches?.steps ?? []);
    const sizes: number[] = [];
    for (const step of plan.steps)
      if (step.component === component.id && batched.has(step.step) && step.portions !== undefined)
        sizes[step.batch - 1] = step.portions;
    if (sizes.length > 0)
      splits.set(
        component.id,
        Array.from(sizes, (size) => size ?? 0),
      );
  }
  return splits;
}

class Reader {
  readonly shown: Shown = { options: new Map(), intervals: new Map() };

  readonly #steps = new Map<string, PlannedStep[]>();

  constructor(
    private readonly translated: Translated,
    private readonly plan: Plan,
  ) {
    for (const step of plan.steps) {
      if (step.kind === 'preheat') continue;
      const id = wholeId(step);
      const list = this.#steps.get(id);
      if (list === undefined) this.#steps.set(id, [step]);
      else list.push(step);
    }
    for (const list of this.#steps.values()) list.sort((a, b) => a.start - b.start || a.end - b.end);
  }

  read(): Shown {
    const { translation: t } = this.translated;
    for (const legend of t.steps) this.#step(legend);
    for (const hold of t.holds) {
      const planned = this.plan.holds.find(
        ({ component, hold: id, batch }) =>
          component === hold.instance.component.id && id === hold.instance.hold.id && batch === hold.instance.batch,
      );
      if (planned !== undefined) this.#place(hold, planned.place);
    }
    for (const wash of t.washes) {
      const planned = this.#planned(wash.task)[0];
      const person = planned?.segments[0]?.person;
      this.shown.options.set(wash.choice, person === undefined ? 0 : wash.people.indexOf(person) + 1);
      if (planned !== undefined) this.#at(wash.task, planned);
    }
    for (const pool of t.pools) this.#pool(pool);
    for (const { oven, fire, choice } of t.ovens) {
      const programme = this.plan.ovens.find((each) => each.oven === oven.id);
      const last = programme?.settings.at(-1);
      if (choice !== null) this.shown.options.set(choice, last === undefined ? 0 : 1);
      if (last !== undefined) this.#at(fire, { start: programme!.settings[0]!.minute, end: last.minute });
    }
    return this.shown;
  }

  #planned(id: string): readonly PlannedStep[] {
    return this.#steps.get(id) ?? [];
  }

  #at(task: string, { start, end }: Interval): void {
    this.shown.intervals.set(task, { start, end });
  }

  #person({ task, who }: Operation, { start, end, person }: PlannedSegment): void {
    this.#at(task, { start, end });
    if (who.choice !== null) this.shown.options.set(who.choice, Math.max(0, who.people.indexOf(person ?? '')));
  }

  #place(
    legend: { readonly task: string; readonly choice: string | null; readonly options: readonly PlaceOption[] },
    { from, until, ...place }: PlannedPlace,
  ): void {
    this.#at(legend.task, { start: from, end: until });
    if (legend.choice !== null)
      this.shown.options.set(
        legend.choice,
        Math.max(
          0,
          legend.options.findIndex((option) => alike(option, place)),
        ),
      );
  }

  #step(legend: StepLegend): void {
    const planned = this.#planned(legend.instance.id);
    const [first] = planned;
    if (first === undefined) return;
    const { wayChoice, wayOptions, pieces, key } = legend;
    if (wayChoice !== null) this.shown.options.set(wayChoice, Math.max(0, wayOptions.indexOf(first.alternative)));
    const whole = { start: first.start, end: Math.max(...planned.map(({ end }) => end)) };
    if (legend.start.task === key) this.#at(key, whole);
    const places = planned.flatMap((step) => step.places);
    if (pieces.length > 0) {
      this.shown.options.set(`pieces:${key}`, planned.length - 1);
      planned.forEach((step, index) => {
        const piece = pieces[index];
        const segment = step.segments[0];
        if (piece !== undefined && segment !== undefined) this.#person(piece, segment);
      });
    } else this.#parts(legend, first);
    this.#needs(
      legend.needs.filter((need) => need.ways.includes(first.alternative) && need.task !== key),
      places,
    );
  }

  #parts(legend: StepLegend, planned: PlannedStep): void {
    const shape = legend.shapes.find(({ ways }) => ways.includes(planned.alternative));
    if (shape === undefined) return;
    const main = planned.segments
      .filter(({ check }) => check !== true)
      .sort((a, b) => a.start - b.start || a.end - b.end);
    const looks = planned.segments.filter(({ check }) => check === true).sort((a, b) => a.start - b.start);
    shape.parts.forEach((part, index) => {
      const segment = main[index];
      if (segment === undefined) return;
      const [operation] = shape.operations[index]!;
      if (part.hands === 'on') {
        if (operation !== undefined) this.#person(operation, segment);
        return;
      }
      // Each look by the wait that it lies in: one that a shorter wait no longer has must not be taken for one of a later wait.
      const within = looks.filter(({ start, end }) => start >= segment.start && end <= segment.end);
      shape.operations[index]!.forEach((look, number) => {
        const next = within[number];
        if (next !== undefined) this.#person(look, next);
      });
    });
  }

  /** Places stand in a plan in the order of their needs; a document written otherwise is matched thing by thing. */
  #needs(needs: readonly NeedLegend[], places: readonly PlannedPlace[]): void {
    const left = [...places];
    for (const need of needs) {
      const index = left.findIndex((place) => need.options.some((option) => alike(option, place)));
      if (index >= 0) this.#place(need, left.splice(index, 1)[0]!);
    }
  }

  #pool(legend: PoolLegend): void {
    const { pool } = legend;
    const course = this.plan.pools.find((each) => each.pool === pool.id);
    const work = (operation: Operation, step: string): boolean => {
      const planned = this.#planned(`${pool.id}/${step}`)[0];
      const segment = planned?.segments[0];
      if (segment !== undefined) this.#person(operation, segment);
      return segment !== undefined;
    };
    work(legend.empty, 'empty');
    if (course === undefined) return;
    if (legend.panChoice !== null) this.shown.options.set(legend.panChoice, legend.pans.indexOf(course.pan));
    if (legend.burnerChoice !== null)
      this.shown.options.set(legend.burnerChoice, Math.max(0, legend.burners.indexOf(course.boils[0]?.burner ?? '')));
    legend.boils.forEach((boil, index) => {
      const planned = course.boils[index];
      if (boil.fill !== null) work(boil.fill, 'fill');
      if (boil.choice !== null)
        this.shown.options.set(boil.choice, planned === undefined ? 0 : planned.water === 'again' ? 1 : 2);
      if (planned === undefined) return;
      this.#at(boil.heat, { start: planned.onHeat, end: planned.offHeat });
      if (planned.water === 'again' && boil.again !== null) work(boil.again, `reboil.${index + 1}`);
      if (planned.water === 'fresh' && boil.fresh !== null) work(boil.fresh, `change.${index + 1}`);
    });
  }
}

const alike = ({ place: a }: PlaceOption, b: Omit<PlannedPlace, 'from' | 'until'>): boolean =>
  a.kind === b.kind && a.id === b.id && a.oven === b.oven && a.how === b.how && a.boil === b.boil;

/** By choice: the items with a literal of it. */
function byChoice<T>(
  items: readonly T[],
  literalsOf: (item: T) => readonly Literal[] | undefined,
): ReadonlyMap<string, readonly T[]> {
  const lists = new Map<string, T[]>();
  for (const item of items)
    for (const { choice } of literalsOf(item) ?? []) {
      const list = lists.get(choice);
      if (list === undefined) lists.set(choice, [item]);
      else if (list.at(-1) !== item) list.push(item);
    }
  return lists;
}

/** The options of a choice that nothing shows, least first, of which the first that breaks no tie is taken: which use an afterheat follows. */
function settleHidden(problem: Problem, shown: Shown): void {
  const hidden = problem.choices.filter(({ id }) => !shown.options.has(id));
  for (const { id } of hidden) shown.options.set(id, 0);
  followTies(problem, shown);
  const lagsOf = byChoice(problem.lags, (lag) => lag.if);
  const forbiddenOf = byChoice(problem.forbidden, (literals) => literals);
  for (const { id, options } of hidden) {
    const lags = lagsOf.get(id) ?? [];
    const forbidden = forbiddenOf.get(id) ?? [];
    if (lags.length === 0 && forbidden.length === 0) continue;
    const at = (point: Point): number | undefined => {
      if (point === 'origin') return 0;
      const interval = shown.intervals.get(point.task);
      return interval?.[point.at];
    };
    const holds = (literals: readonly Literal[] | undefined): boolean =>
      (literals ?? []).every((literal) => literal.options.includes(shown.options.get(literal.choice) ?? -1));
    const fits = (option: number): boolean => {
      shown.options.set(id, option);
      return (
        !forbidden.some(holds) &&
        lags.every((lag) => {
          const [from, to] = [at(lag.from), at(lag.to)];
          return from === undefined || to === undefined || !holds(lag.if) || to - from >= lag.least;
        })
      );
    };
    const found = options.findIndex((_, option) => fits(option));
    shown.options.set(id, Math.max(0, found));
  }
}

/**
 * Reads a plan as a solution of a problem translated from the plan's own documents, with its own splits.
 *
 * @returns the solution with the plan's times and choices. Whether it keeps every rule of the problem is for `verifySolution` to say: a
 *   problem with other lengths than the plan was made for has the same tasks, and the solution then tells what was planned
 */
export function planToSolution(translated: Translated, plan: Plan): Solution {
  const { problem } = translated;
  const shown = new Reader(translated, plan).read();
  settleHidden(problem, shown);
  const taken = problem.choices.map((choice) => shown.options.get(choice.id) ?? 0);
  const options = new Map(problem.choices.map((choice, index) => [choice.id, taken[index]!]));
  return {
    choices: taken,
    tasks: problem.tasks.map((task) => {
      const present = (task.when ?? []).every((literal) => literal.options.includes(options.get(literal.choice) ?? -1));
      const mode = task.modes[task.choice === undefined ? 0 : (options.get(task.choice) ?? 0)] ?? null;
      return present && mode !== null ? (shown.intervals.get(task.id) ?? { start: 0, end: mode.shortest }) : null;
    }),
  };
}
