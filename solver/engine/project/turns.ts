/** Turns of the evolution of a project; it goes on where it stopped. */
import { STEPS } from '../budget.ts';
import { compileProblem } from '../compile-problem.ts';
import type { Solution } from '../outcome.ts';
import type { Problem } from '../problem.ts';
import { Random } from '../random.ts';
import { Evolution } from './evolve.ts';
import { ModeEvolution } from './mode-evolve.ts';
import { asModeProject } from './mode-project.ts';
import { asPlainProject } from './plain-project.ts';

/** Members of a plain project's first population, which has long turns (measured at 120 tasks: better than 40 from half a second on). */
const PLAIN_POPULATION = 80;

/** Steps between looks at whether to stop. */
const POLL = 10_000;

export interface EvolutionTurn {
  /** Work units to spend. */
  readonly effort: number;
  /** A plan of this value or less is as good as can be. */
  readonly enough: number;
  readonly shouldStop: () => boolean;
  /** Called with each plan better than `value`, and the work units spent in this turn. */
  readonly onBetter: (solution: Solution, value: number, work: number) => void;
}

interface Evolving {
  /** Least value of a plan found; Infinity before the first. */
  readonly best: number;
  solution(): Solution;
  step(): number;
}

export class EvolutionTurns {
  private constructor(private readonly evolution: Evolving) {}

  /** @returns null where the problem is no multi-mode project */
  static ofModes(problem: Problem, seed: number): EvolutionTurns | null {
    const project = asModeProject(problem);
    return project === null ? null : new EvolutionTurns(new ModeEvolution(project, new Random(seed)));
  }

  /** @returns null where the problem is no classical project, or has other tiers than its finish */
  static ofPlain(problem: Problem, seed: number): EvolutionTurns | null {
    const project = problem.tiers.length === 1 ? asPlainProject(compileProblem(problem)) : null;
    return project === null ? null : new EvolutionTurns(new Evolution(project, new Random(seed), PLAIN_POPULATION));
  }

  /**
   * @param value of the best plan known elsewhere; Infinity where there is none
   * @returns work units spent
   */
  take(value: number, { effort, enough, shouldStop, onBetter }: EvolutionTurn): number {
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
