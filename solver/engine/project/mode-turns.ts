/** Turns of the evolution of a multi-mode project; it goes on where it stopped. */
import { STEPS } from '../budget.ts';
import type { Solution } from '../outcome.ts';
import type { Problem } from '../problem.ts';
import { Random } from '../random.ts';
import { ModeEvolution } from './mode-evolve.ts';
import { asModeProject } from './mode-project.ts';

/** Steps between looks at whether to stop. */
const POLL = 10_000;

export interface ModeTurn {
  /** Work units to spend. */
  readonly effort: number;
  /** A plan of this value or less is as good as can be. */
  readonly enough: number;
  readonly shouldStop: () => boolean;
  /** Called with each plan better than `value`, and the work units spent in this turn. */
  readonly onBetter: (solution: Solution, value: number, work: number) => void;
}

export class ModeTurns {
  private readonly evolution: ModeEvolution;

  private constructor(evolution: ModeEvolution) {
    this.evolution = evolution;
  }

  /** @returns null where the problem is no multi-mode project */
  static of(problem: Problem, seed: number): ModeTurns | null {
    const project = asModeProject(problem);
    return project === null ? null : new ModeTurns(new ModeEvolution(project, new Random(seed)));
  }

  /**
   * @param value of the best plan known elsewhere; Infinity where there is none
   * @returns work units spent
   */
  take(value: number, { effort, enough, shouldStop, onBetter }: ModeTurn): number {
    const { evolution } = this;
    let best = value;
    let steps = 0;
    let poll = POLL;
    while (steps < effort * STEPS && best > enough) {
      steps += evolution.step();
      if (evolution.best < best) {
        best = evolution.best;
        onBetter(evolution.solution(), best, Math.floor(steps / STEPS));
      }
      if (steps < poll) continue;
      poll = steps + POLL;
      if (shouldStop()) break;
    }
    return Math.ceil(steps / STEPS);
  }
}
