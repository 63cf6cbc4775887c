/** A plan of one problem, told as a plan of another in which more is allowed: tasks and options are known again by their ids. */
import type { Solution } from '../engine/outcome.ts';
import type { Problem, Task } from '../engine/problem.ts';
import { verifySolution } from '../engine/verify-solution.ts';

/**
 * @param from the problem that the solution is of
 * @param to like it, with further tasks, options or room
 * @returns the same times and options there; null where that is no solution of it
 */
export function carriedOver(from: Problem, solution: Solution, to: Problem): Solution | null {
  if (from === to) return solution;
  const taskBefore = new Map(from.tasks.map((task, index) => [task.id, index]));
  const choiceBefore = new Map(from.choices.map((choice, index) => [choice.id, index]));
  const modeBefore = (index: number): Task['modes'][number] => {
    const task = from.tasks[index]!;
    return task.modes[task.choice === undefined ? 0 : solution.choices[choiceBefore.get(task.choice)!]!] ?? null;
  };
  const resources = (mode: Task['modes'][number]): string =>
    (mode?.uses ?? [])
      .map((use) => use.resource)
      .sort()
      .join();

  /** The option of a choice that was not there, by what its tasks used before. */
  const likeBefore = (choice: string, options: number): number => {
    for (const task of to.tasks) {
      const index = task.choice === choice ? taskBefore.get(task.id) : undefined;
      if (index === undefined || solution.tasks[index] === null) continue;
      const used = resources(modeBefore(index));
      for (let option = 0; option < options; option++)
        if (task.modes[option] !== null && resources(task.modes[option]!) === used) return option;
    }
    return 0;
  };

  const choices = to.choices.map((choice) => {
    const index = choiceBefore.get(choice.id);
    if (index === undefined) return likeBefore(choice.id, choice.options.length);
    return Math.max(0, choice.options.indexOf(from.choices[index]!.options[solution.choices[index]!]!));
  });
  const choiceAfter = new Map(to.choices.map((choice, index) => [choice.id, index]));
  const holds = (task: Task): boolean =>
    (task.when ?? []).every((literal) => literal.options.includes(choices[choiceAfter.get(literal.choice)!]!)) &&
    task.modes[task.choice === undefined ? 0 : choices[choiceAfter.get(task.choice)!]!] !== null;
  const tasks = to.tasks.map((task) => {
    if (!holds(task)) return null;
    const index = taskBefore.get(task.id);
    // What was not there takes no time, if it may.
    return index === undefined ? { start: 0, end: 0 } : (solution.tasks[index] ?? null);
  });
  const carried = { choices, tasks };
  return verifySolution(to, carried).length === 0 ? carried : null;
}
