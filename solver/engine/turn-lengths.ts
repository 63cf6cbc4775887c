/**
 * How long the turns of schedule generation, of an evolution in its stead and of the learner are, in work units: by the kind of problem,
 * and by what came of the turns before.
 */
import { isHuge } from './learning/model/model.ts';
import type { Problem } from './problem.ts';
import { isLargeProject, LARGE } from './project/large.ts';

/** Units a mode of the ensemble's first turn, and its least: short, so that small proofs are not kept waiting. */
const OPENING = 30;
const LEAST_OPENING = 1_000;
/** Its first turn where a plan is known, or an evolution will look for one: there its bounds count most. */
const EASED_OPENING = 300;
/** And where a project is large. */
export const BIG_OPENING = 3_000;
/**
 * What the ensemble may spend in a turn to find a first plan, at most and by the square of the number of modes: before there is one, the learner's
 * model is not worth its building, but what is small and impossible is refuted sooner than dives can tell.
 */
const UNTIL_PLAN = 120_000;
const UNTIL_PLAN_MODES = 3;
/** The learner's first turn, and how much longer each turn is than the last. */
const FIRST_TURN = 60_000;
const GROWTH = 1.6;
/** The learner's turns are so much longer where choices are open: there it finds the better plans, too. */
const LEARNER_TURN = 4;
/**
 * Turns of the ensemble that gain nothing become shorter, except on plain projects so large that the learner seldom gains; but no shorter than so
 * many units a mode, or than the last figure.
 */
const DECLINE = 0.5;
const SHORTEST_TURN_MODE = 250;
const SHORTEST_TURN = 30_000;
/** A large project's evolution before the learner's first turn, and its later turns as a multiple of the learner's last. */
const LARGE_OPENING = 300_000;
const LARGE_EVOLUTION = 2;
/** Units a mode of a multi-mode project's evolution before the learner's first turn, and in its next; its least turn as a share of the learner's. */
const EVOLUTION_OPENING = 60;
const EVOLUTION_TURN = 300;
const LEAST_EVOLUTION = 0.03;

export class TurnLengths {
  /** The next turn of the ensemble, or of the evolution that takes its turns from the second on. */
  ensemble: number;
  learner: number;
  /** An evolution's turn before the learner's first. */
  readonly evolutionOpening: number;
  /** What a turn of the ensemble may take until it has a plan, where none is known. */
  readonly untilPlan: number;
  /** Whether the problem is a large project, where an evolution gains most. */
  readonly isLarge: boolean;
  private readonly modes: number;
  private readonly decline: number;
  /** The shortest turn of the ensemble after its first. */
  private readonly shortest: number;
  private hasTurned = false;

  /**
   * @param isEased whether a plan is known, or an evolution will look for one: then schedule generation opens with little
   */
  constructor(problem: Problem, isEased: boolean) {
    const { tasks, choices } = problem;
    const isPlain = choices.length === 0;
    const isBig = isPlain && tasks.length > LARGE;
    this.isLarge = isLargeProject(problem);
    this.modes = tasks.reduce((sum, task) => sum + task.modes.length, 0);
    // Where lengths are open, as where jobs block each other, the ensemble has no evolution of the whole and gains seldom.
    const hasFixedLengths = tasks.every(({ modes }) => modes.every((mode) => mode?.shortest === mode?.longest));
    this.decline = isBig && hasFixedLengths ? GROWTH : DECLINE;
    this.learner = FIRST_TURN * (isPlain ? 1 : LEARNER_TURN);
    this.evolutionOpening = this.isLarge ? LARGE_OPENING : EVOLUTION_OPENING * this.modes;
    this.untilPlan = Math.min(UNTIL_PLAN, UNTIL_PLAN_MODES * this.modes ** 2);
    this.shortest = Math.min(SHORTEST_TURN, SHORTEST_TURN_MODE * this.modes);
    if (isHuge(problem)) this.ensemble = Infinity;
    else if (isBig && !this.isLarge) this.ensemble = FIRST_TURN;
    else if (this.isLarge) this.ensemble = BIG_OPENING;
    else this.ensemble = isEased ? EASED_OPENING : Math.max(LEAST_OPENING, OPENING * this.modes);
  }

  /**
   * Sets the lengths of the next turns.
   *
   * @param gains whether the ensemble's turn, or the evolution's, gave a better plan than the learner had
   * @param evolves whether an evolution takes the ensemble's turns
   * @param learns false where the problem is too large for the learner
   */
  next(gains: boolean, evolves: boolean, learns: boolean): void {
    const changed = Math.ceil(this.ensemble * (gains ? GROWTH : this.decline));
    if (!learns) this.ensemble = Infinity;
    else if (this.isLarge) this.ensemble = LARGE_EVOLUTION * this.learner;
    else if (!evolves) this.ensemble = Math.max(this.shortest, changed);
    else if (!this.hasTurned) this.ensemble = EVOLUTION_TURN * this.modes;
    else this.ensemble = Math.max(changed, Math.ceil(this.learner * LEAST_EVOLUTION));
    this.hasTurned = true;
    this.learner = Math.ceil(this.learner * GROWTH);
  }
}
