import type { Choice, Lag, Mode, Problem, Reservoir, Task } from '../../../solver/engine/problem.ts';
import { numbersIn } from './numbers.ts';
import { after, problemOf, resourcesOf, usesOf } from './parts.ts';

/**
 * Reads a multi-mode project (`.mm`). A resource that does not renew is a reservoir that is full at first and drawn from at
 * the start of each activity by the amount of the mode it takes. The dummy first and last activities are left out.
 *
 * @param text the sections of the PSPLIB format, as MMLIB has them too; no doubly constrained resources
 * @param name names the problem and the file in errors
 * @see source: Kolisch & Sprecher (1997), EJOR 96, 205–216; Van Peteghem & Vanhoucke (2014), EJOR 235, 62–72
 */
export function readMultiMode(text: string, name: string): Problem {
  const count = headed(text, name, /jobs[^\n:]*:\s*(\d+)/);
  const renewable = headed(text, name, /-\s*renewable\s*:\s*(\d+)/);
  const nonRenewable = headed(text, name, /nonrenewable\s*:\s*(\d+)/);
  if (headed(text, name, /doubly constrained\s*:\s*(\d+)/) > 0)
    throw new Error(`${name}: doubly constrained resources`);
  const order = section(text, name, /PRECEDENCE RELATIONS:[^\n]*\n[^\n]*\n/, /\*\*\*/);
  const requests = section(text, name, /REQUESTS\/DURATIONS[^\n]*\n[^\n]*\n/, /\*\*\*/);
  const limits = section(text, name, /RESOURCE ?AVAILABILITIES[^\n]*\n[^\n]*\n/, /\*\*\*|$(?![\s\S])/);

  const rows = numbersIn(order, name);
  const activities = Array.from({ length: count }, () => {
    const [number = 0, modes = 0, successors = 0] = rows.take(3);
    return { number, modes, successors: rows.take(successors) };
  });
  const demandRows = numbersIn(requests, name);
  const modesOf = activities.map(({ number, modes }) => {
    if (demandRows.next() !== number)
      throw new Error(`${name}: modes of activity ${number} are not where they should be`);
    return Array.from({ length: modes }, () => {
      const [, duration = 0, ...demands] = demandRows.take(2 + renewable + nonRenewable);
      return { duration, demands: demands.slice(0, renewable), drawn: demands.slice(renewable) };
    });
  });
  const capacities = numbersIn(limits, name).take(renewable + nonRenewable);

  const inner = activities.filter(({ number }) => number > 1 && number < count);
  const choices = inner.map(({ number, modes }): Choice => ({
    id: `mode-${number}`,
    options: Array.from({ length: modes }, (_, mode) => `${mode + 1}`),
  }));
  const tasks = inner.map(({ number }): Task => ({
    id: `a${number}`,
    choice: `mode-${number}`,
    modes: (modesOf[number - 1] ?? []).map(({ duration, demands }): Mode => ({
      shortest: duration,
      longest: duration,
      uses: usesOf(demands),
    })),
  }));
  const reservoirs = capacities.slice(renewable).map((initial, index): Reservoir => ({
    id: `n${index}`,
    initial,
    events: inner.flatMap(({ number }) =>
      (modesOf[number - 1] ?? []).flatMap(({ drawn }, mode) =>
        (drawn[index] ?? 0) === 0
          ? []
          : [
              {
                point: { task: `a${number}`, at: 'start' as const },
                amount: -(drawn[index] ?? 0),
                if: [{ choice: `mode-${number}`, options: [mode] }],
              },
            ],
      ),
    ),
  }));
  const lags = inner.flatMap(({ number, successors }): Lag[] =>
    successors.filter((to) => to < count).map((to) => after(`a${number}`, `a${to}`)),
  );
  const horizon = modesOf.reduce((sum, modes) => sum + Math.max(...modes.map(({ duration }) => duration)), 1);
  return problemOf(name, {
    horizon,
    choices,
    tasks,
    resources: resourcesOf(capacities.slice(0, renewable)),
    reservoirs,
    lags,
  });
}

function headed(text: string, name: string, pattern: RegExp): number {
  const found = pattern.exec(text)?.[1];
  if (found === undefined) throw new Error(`${name}: nothing like ${String(pattern)}`);
  return Number(found);
}

function section(text: string, name: string, head: RegExp, foot: RegExp): string {
  const found = head.exec(text);
  if (!found) throw new Error(`${name}: no section ${String(head)}`);
  const rest = text.slice(found.index + found[0].length);
  return rest.slice(0, foot.exec(rest)?.index ?? rest.length);
}
