/**
 * The bench of kitchen sessions: each demo session in each of its kitchens and by each of its crews, beside a rule of thumb and
 * the best of twenty priority rules. Every plan, theirs too, is read back and passes the same checker.
 */
import { writeFileSync } from 'node:fs';
import { checkPlan } from '../../solver/checker/check-plan.ts';
import type { Solution } from '../../solver/engine/outcome.ts';
import { planByRule, ruleOfThumb } from '../../solver/engine/plan-by-rule.ts';
import { priorityRules } from '../../solver/engine/search/priority-rules.ts';
import { tierValues } from '../../solver/engine/tier-values.ts';
import { solveTogether } from '../../solver/engine/together.ts';
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import type { Plan } from '../../solver/kitchen/plan.ts';
import type { Session } from '../../solver/kitchen/session.ts';
import type { Translated } from '../../solver/translate/legend.ts';
import { sessionToProblem } from '../../solver/translate/session-to-problem.ts';
import { solutionToPlan } from '../../solver/translate/solution-to-plan.ts';
import { tightened } from '../../solver/translate/tighten.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../support/demo-documents.ts';

/** What the bench of kitchen sessions is asked. */
export interface KitchenBench {
  /** Most seconds by the clock for one plan. */
  readonly seconds: number;
  readonly seed: number;
  /** Where the CSV rows go; to the screen where not given. */
  readonly out: string | undefined;
  /** Further words of the command line: only sessions whose id has one of them. */
  readonly rest: readonly string[];
}

interface Row {
  readonly session: string;
  readonly kitchen: string;
  readonly crew: string;
  readonly steps: number;
  readonly tasks: number;
  readonly firstMs: number;
  /** Milliseconds to within 2 % of the last value. */
  readonly goodMs: number;
  readonly lastMs: number;
  readonly value: number;
  readonly at2s: number | null;
  readonly bound: number;
  readonly tiersProven: number;
  readonly thumb: number | null;
  readonly bestRule: number | null;
  readonly rulesThatPlan: number;
  readonly violations: number;
}

const heading =
  'session,kitchen,crew,steps,tasks,first_ms,within_2_percent_ms,last_ms,value,value_at_2s,bound,tiers_proven,rule_of_thumb,best_of_rules,rules_that_plan,violations';

/** The bench runs bundled, from the project's root. */
const DEMO = `${process.cwd()}/app/demo/`;
const components = demoComponents(DEMO);

/**
 * Measures the plans of the demo sessions: milliseconds to the first and to a good plan, minutes saved over rules of thumb.
 *
 * @returns the exit code of the command: 0 when every plan passes the checker
 */
export async function kitchenBench(asked: KitchenBench): Promise<number> {
  await Promise.resolve();
  const kitchens = demoKitchens(DEMO);
  const sessions = demoSessions(DEMO).filter(
    ({ id }) => asked.rest.length === 0 || asked.rest.some((word) => id.includes(word)),
  );
  const cases = sessions.flatMap((session) =>
    session.kitchens.flatMap((kitchen) =>
      (session.crews?.map((crew) => crew.id) ?? [undefined]).map((crew) => ({
        session,
        kitchen: byId(kitchens, kitchen),
        crew,
      })),
    ),
  );
  // The engine's code is compiled by the first solve; a cook's plan comes from a warm worker.
  if (cases[0] !== undefined) measureCase(cases[0], { ...asked, seconds: 3 });
  const rows = cases.map((each) => {
    const row = measureCase(each, asked);
    console.error(sentence(row));
    return row;
  });
  const csv =
    [
      heading,
      ...rows.map((row) =>
        Object.values(row)
          .map((value: Row[keyof Row]) => value ?? '')
          .join(','),
      ),
    ].join('\n') + '\n';
  if (asked.out === undefined) process.stdout.write(csv);
  else writeFileSync(asked.out, csv);
  return rows.every((row) => row.violations === 0) ? 0 : 1;
}

const sentence = (row: Row): string =>
  `${row.session}, ${row.kitchen}, ${row.crew}: ${row.value} min (at least ${row.bound}), first plan ${row.firstMs} ms, within 2 % ${row.goodMs} ms; ` +
  `rule of thumb ${row.thumb ?? 'no plan'}, best of ${priorityRules.length} rules ${row.bestRule ?? 'no plan'}`;

function measureCase(
  {
    session,
    kitchen,
    crew,
  }: { readonly session: Session; readonly kitchen: Kitchen; readonly crew: string | undefined },
  asked: KitchenBench,
): Row {
  const translated = sessionToProblem({ session, kitchen, components, ...(crew === undefined ? {} : { crew }) });
  if (!translated.ok) throw new Error(JSON.stringify(translated.faults));
  const { problem } = translated;
  const begin = performance.now();
  const improvements: { readonly ms: number; readonly value: number }[] = [];
  const outcome = solveTogether(problem, {
    seed: asked.seed,
    effort: Number.MAX_SAFE_INTEGER,
    shouldStop: () => performance.now() - begin > asked.seconds * 1000,
    onProgress: ({ value }) => {
      if (value !== null && value !== improvements.at(-1)?.value)
        improvements.push({ ms: performance.now() - begin, value });
    },
  });
  if (!('solution' in outcome)) throw new Error(`${session.id}: ${outcome.kind}`);
  const value = outcome.tiers[0]!.value;
  const racks = problem.resources.map((resource) => resource.id).filter((id) => id.startsWith('rack:'));
  const thumb = ruleOfThumb(problem, { firstResources: racks, seed: asked.seed });
  const byRule = priorityRules
    .map((rule) => planByRule(problem, rule, { seed: asked.seed }))
    .filter((plan) => plan !== null);
  const values = byRule.map((plan) => tierValues(problem, plan)[0]!);
  const plans = [outcome.solution, ...(thumb === null ? [] : [thumb]), ...byRule].map((solution) =>
    readBack(translated, solution),
  );
  return {
    session: session.id,
    kitchen: kitchen.id,
    crew: crew ?? 'all',
    steps: translated.translation.steps.length,
    tasks: problem.tasks.length,
    firstMs: Math.round(improvements[0]?.ms ?? NaN),
    goodMs: Math.round(improvements.find((each) => each.value <= value * 1.02)?.ms ?? NaN),
    lastMs: Math.round(improvements.at(-1)?.ms ?? NaN),
    value,
    at2s: improvements.findLast((each) => each.ms <= 2000)?.value ?? null,
    bound: outcome.tiers[0]!.bound,
    tiersProven: outcome.tiers.filter((tier) => tier.proven).length,
    thumb: thumb === null ? null : tierValues(problem, thumb)[0]!,
    bestRule: values.length === 0 ? null : Math.min(...values),
    rulesThatPlan: values.length,
    violations: plans.reduce((sum, plan) => sum + checkPlan(plan).length, 0),
  };
}

function readBack(translated: Translated, solution: Solution): Plan {
  return solutionToPlan(translated, tightened(translated, solution), {
    id: 'bench',
    name: 'bench',
    seed: 0,
    effort: 0,
    kind: 'bounded',
    stopped: false,
    tiers: [],
  });
}
