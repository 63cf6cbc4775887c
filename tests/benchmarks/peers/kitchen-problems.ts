/** Kitchen sessions as scheduling problems, small ones and those of the demo: what the engines are compared on. */
import type { Problem } from '../../../solver/engine/problem.ts';
import { sessionToProblem } from '../../../solver/translate/session-to-problem.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../support/demo-documents.ts';
import { randomSession } from '../../support/random-session.ts';
import { generatedSession, stockOf } from '../generated-sessions.ts';

export interface NamedProblem {
  readonly name: string;
  readonly problem: Problem;
}

/** What the random and generated sessions are drawn with. */
export interface Drawn {
  readonly seed: number;
  /** How many random sessions, and of each size how many generated ones. */
  readonly random: number;
  readonly generated: number;
}

/** The demo's folder: the bench runs bundled, from the project's root. */
export const DEMO = `${process.cwd()}/app/demo/`;

/**
 * Lists kitchen problems, the small ones first. Sessions that are refused are left out.
 *
 * @param drawn how many are drawn beside those of the demo
 */
export function kitchenProblems(drawn: Drawn): NamedProblem[] {
  const components = demoComponents(DEMO);
  const kitchens = demoKitchens(DEMO);
  const random = Array.from({ length: drawn.random }, (_, k) => {
    const seed = drawn.seed * 1000 + k;
    return { name: `random-${seed}`, input: randomSession(seed, k % 4 === 3 ? 2 : 1) };
  });
  const stock = stockOf(byId(kitchens, 'harbour-one-oven'), components);
  const generated = [10, 20, 40].flatMap((steps) =>
    Array.from({ length: drawn.generated }, (_, k) => ({
      name: `generated-${steps}-${drawn.seed + k}`,
      input: generatedSession(stock, steps, drawn.seed + k),
    })),
  );
  const demo = demoSessions(DEMO).flatMap((session) =>
    session.kitchens.flatMap((kitchen) =>
      (session.crews?.map(({ id }) => id) ?? [undefined]).map((crew) => ({
        name: [session.id, kitchen, ...(crew === undefined ? [] : [crew])].join(' '),
        input: { session, kitchen: byId(kitchens, kitchen), components, ...(crew === undefined ? {} : { crew }) },
      })),
    ),
  );
  return [...random, ...generated, ...demo].flatMap(({ name, input }) => {
    const translated = sessionToProblem(input);
    return translated.ok ? [{ name, problem: translated.problem }] : [];
  });
}
