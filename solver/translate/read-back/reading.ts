/** What a solution says of the tasks and choices of a translated session. */
import type { Literal } from '../../engine/problem.ts';
import type { Solution } from '../../engine/outcome.ts';
import type { Operation, Translated } from '../legend.ts';

interface Interval {
  readonly start: number;
  readonly end: number;
}

/** Looks up what a solution says of tasks and choices by their ids. */
export class Reading {
  readonly #tasks: ReadonlyMap<string, Interval | null>;
  readonly #choices: ReadonlyMap<string, number>;

  constructor({ problem }: Translated, solution: Solution) {
    this.#tasks = new Map(problem.tasks.map((task, index) => [task.id, solution.tasks[index] ?? null]));
    this.#choices = new Map(problem.choices.map((choice, index) => [choice.id, solution.choices[index]!]));
  }

  at(task: string): Interval | null {
    return this.#tasks.get(task) ?? null;
  }

  sure(task: string): Interval {
    const interval = this.at(task);
    if (interval === null) throw new Error(`task ${task} is absent`);
    return interval;
  }

  option(choice: string | null): number {
    return choice === null ? 0 : (this.#choices.get(choice) ?? 0);
  }

  person(operation: Operation): string {
    return operation.who.people[this.option(operation.who.choice)]!;
  }

  holds(literals: readonly Literal[]): boolean {
    return literals.every((literal) => literal.options.includes(this.option(literal.choice)));
  }
}
