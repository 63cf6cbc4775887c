/**
 * Questions about shorter steps, all asked of one learner, so that what is learned for one question serves the next.
 *
 * The problem is enlarged by what every help would open, and closed again by lags that hold under a selector of the help. A plan
 * without help is one with all selectors assumed; with a help, with all but its own. Where "shorter than now" is refuted, the
 * assumptions that fail together tell which helps the proof needs closed: all the others gain nothing, even together, by one proof.
 *
 * Source: Eén & Sörensson, "Temporal induction by incremental SAT solving" (2003), for assumptions and those that fail.
 */
import { Model, sealedAtLeast } from '../engine/learning/model/model.ts';
import type { Solution } from '../engine/outcome.ts';
import type { Lag, Problem, Task } from '../engine/problem.ts';
import { tierValues } from '../engine/tier-values.ts';

export interface LengthAnswer {
  /** Best plan found that is better than the value asked about; null: none. Of the enlarged problem. */
  readonly solution: Solution | null;
  readonly value: number;
  /** Nothing is better than `value` with these helps. */
  readonly proven: boolean;
  /** Of the helps that were closed: those that the proof does not need closed. Empty without a proof. */
  readonly idle: readonly string[];
  /** Work units of the learner. */
  readonly work: number;
}

/** A help that opens lengths: its name, and the problem with it open alone. */
export interface Opening {
  readonly name: string;
  readonly open: (problem: Problem) => Problem;
}

const MOST_CONFLICTS = 1_000_000;

export class LengthQuestions {
  /** The problem with all that the helps open, and the lags that close it. */
  readonly problem: Problem;
  readonly #model: Model;

  /** @param base a problem whose first tier is asked about */
  constructor(base: Problem, openings: readonly Opening[]) {
    this.problem = enlarged(base, openings);
    this.#model = new Model(this.problem, true, false);
  }

  /** Whether it can be asked at all. */
  get ready(): boolean {
    return !this.#model.tooLarge && this.#model.tiers[0]?.parts.length === 1;
  }

  /** Lets a plan of the enlarged problem guide the search. */
  guideBy(solution: Solution): void {
    const { core, branching } = this.#model;
    if (!core.dead && core.replay(this.#model.literalsOf(solution), branching)) core.guide.adopt();
  }

  /**
   * @param open names of the helps to be had
   * @param value of the first tier; a smaller one is looked for
   * @param work most work units of the learner
   */
  ask(open: readonly string[], value: number, work: number, shouldStop: (() => boolean) | undefined): LengthAnswer {
    const { core, branching, selectors } = this.#model;
    const closed = [...selectors].filter(([name]) => !open.includes(name));
    const before = core.work;
    let best: { readonly solution: Solution; readonly value: number } | null = null;
    for (;;) {
      const least = best?.value ?? value;
      const assumptions = [...closed.map(([, literal]) => literal), this.#atMost(least - 1)];
      const verdict = core.solve(
        assumptions.filter((literal) => literal !== core.trail.alwaysTrue),
        branching,
        MOST_CONFLICTS,
        before + work,
        shouldStop,
      );
      if (verdict === 'solution') {
        core.guide.adopt();
        const solution = this.#model.solution();
        best = { solution, value: tierValues(this.problem, solution)[0]! };
        continue;
      }
      const proven = verdict === 'refuted';
      return {
        solution: best?.solution ?? null,
        value: least,
        proven,
        idle: proven ? closed.flatMap(([name, literal]) => (core.failed.includes(literal) ? [] : [name])) : [],
        work: core.work - before,
      };
    }
  }

  #atMost(value: number): number {
    const { trail } = this.#model.core;
    const { parts, least } = this.#model.tiers[0]!;
    const { x, factor } = parts[0]!;
    return sealedAtLeast(trail, x, Math.floor((value - least) / factor) + 1) ^ trail.negation;
  }
}

/** The problem with everything open, and for each help the lags that close what it opens. */
function enlarged(base: Problem, openings: readonly Opening[]): Problem {
  // Only the helps have selectors.
  const bare: Problem = { ...base, lags: base.lags.map(({ requirement: _, ...lag }) => lag) };
  const closing = openings.flatMap(({ name, open }) =>
    closingLags(bare, open(bare)).map((lag): Lag => ({ ...lag, requirement: name })),
  );
  const all = openings.reduce((problem, { open }) => open(problem), bare);
  return { ...all, lags: [...all.lags, ...closing] };
}

/** Lags by which a problem with some lengths opened downwards has the plans that it had before. */
function closingLags(before: Problem, after: Problem): readonly Lag[] {
  return [
    ...after.tasks.flatMap((task, index) => {
      const was = before.tasks[index];
      return was === undefined ? [noLength(task)] : was === task ? [] : lengthLags(was);
    }),
    ...after.lags.flatMap((lag, index) => (lag.least === before.lags[index]!.least ? [] : [before.lags[index]!])),
  ];
}

/** Nothing is saved: a task that is only there under the help has no length without it. */
const noLength = ({ id }: Task): Lag => ({ from: { task: id, at: 'end' }, to: { task: id, at: 'start' }, least: 0 });

/** The shortest lengths of a task's modes. */
function lengthLags({ id, choice, modes }: Task): readonly Lag[] {
  const byLength = new Map<number, number[]>();
  modes.forEach((mode, option) => {
    if (mode !== null) byLength.set(mode.shortest, [...(byLength.get(mode.shortest) ?? []), option]);
  });
  return [...byLength].map(([least, options]) => ({
    from: { task: id, at: 'start' },
    to: { task: id, at: 'end' },
    least,
    ...(choice === undefined || byLength.size === 1 ? {} : { if: [{ choice, options }] }),
  }));
}
