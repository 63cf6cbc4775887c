/**
 * The bench of kitchen sessions: each demo session in each of its kitchens and by each of its crews, beside a rule of thumb and
 * the best of the priority rules; then generated sessions, each size about twice the one before, for the growth of the time to a first
 * plan. Every plan, the rules' too, is read back and passes the same checker.
 */
import { writeFileSync } from 'node:fs';
import { checkPlan } from '../../solver/checker/check-plan.ts';
import type { Solution } from '../../solver/engine/outcome.ts';
import { planByRule, ruleOfThumb } from '../../solver/engine/plan-by-rule.ts';
import { priorityRules } from '../../solver/engine/search/priority-rules.ts';
import { tierValues } from '../../solver/engine/tier-values.ts';
import { solveTogether } from '../../solver/engine/together.ts';
import type { Problem } from '../../solver/engine/problem.ts';
import type { Component } from '../../solver/kitchen/component.ts';
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import type { Plan } from '../../solver/kitchen/plan.ts';
import type { Session } from '../../solver/kitchen/session.ts';
import type { Translated } from '../../solver/translate/legend.ts';
import { sessionToProblem } from '../../solver/translate/session-to-problem.ts';
import { solutionToPlan } from '../../solver/translate/solution-to-plan.ts';
import { tightened } from '../../solver/translate/tighten.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../support/demo-documents.ts';
import { generatedSession, stockOf } from './generated-sessions.ts';

/** What the bench of kitchen sessions is asked. */
export interface KitchenBench {
  /** Most seconds by the clock for one plan. */
  readonly seconds: number;
  readonly seed: number;
  /** Where the CSV rows go; to the screen where not given. */
  readonly out: string | undefined;
  /** Further words of the command line: only sessions whose id has one of them. */
  readonly rest: readonly string[];
  /** Steps of the generated sessions; none where empty. */
  readonly sizes: readonly number[];
}

/** A session with what it is cooked in and of. */
interface Case {
  readonly session: Session;
  readonly kitchen: Kitchen;
  readonly components: readonly Component[];
  readonly crew?: string | undefined;
  /** Whether the priority rules alone are tried too. */
  readonly rules: boolean;
}

interface Row {
  readonly session: string;
  readonly kitchen: string;
  readonly crew: string;
  readonly steps: number;
  readonly tasks: number;
  /** Milliseconds from the session to the scheduling problem, before anything else is counted. */
  readonly translateMs: number;
  /** Null, like all of the plan, where there is none in time. */
  readonly firstMs: number | null;
  /** Milliseconds to within 2 % of the last value. */
  readonly goodMs: number | null;
  readonly lastMs: number | null;
  /** Milliseconds to the proof of the first tier. */
  readonly proofMs: number | null;
  readonly value: number | null;
  readonly at2s: number | null;
  readonly bound: number;
  readonly tiersProven: number;
  readonly thumb: number | null;
  readonly bestRule: number | null;
  readonly rulesThatPlan: number;
  readonly violations: number;
}

const heading =
  'session,kitchen,crew,steps,tasks,translate_ms,first_ms,within_2_percent_ms,last_ms,proof_ms,value,value_at_2s,bound,tiers_proven,rule_of_thumb,best_of_rules,rules_that_plan,violations';

/** The bench runs bundled, from the project's root. */
const DEMO = `${process.cwd()}/app/demo/`;

/**
 * Measures plans of the demo sessions and of generated ones: milliseconds to the first plan, to a good one and to the proof, minutes
 * saved over rules of thumb, growth of the time to the first plan.
 *
 * @returns the exit code of the command: 0 when there is a plan for each and every one passes the checker
 */
export async function kitchenBench(asked: KitchenBench): Promise<number> {
  await Promise.resolve();
  const demo = demoCases(asked.rest);
  const components = demoComponents(DEMO);
  const stock = stockOf(byId(demoKitchens(DEMO), 'harbour-one-oven'), components);
  const generated = asked.sizes.map((size): Case => ({ ...generatedSession(stock, size, asked.seed), rules: false }));
  const cases = [...demo, ...generated];
  // The engine's code is compiled by the first solve; a cook's plan comes from a warm worker.
  if (cases[0] !== undefined) measureCase(cases[0], { ...asked, seconds: Math.min(3, asked.seconds) });
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
  const drawn = rows.slice(demo.length);
  if (drawn.length > 1) console.error(`\n${growthOf(drawn)}`);
  return rows.every((row) => row.violations === 0 && row.value !== null) ? 0 : 1;
}

function demoCases(words: readonly string[]): Case[] {
  const components = demoComponents(DEMO);
  const kitchens = demoKitchens(DEMO);
  return demoSessions(DEMO)
    .filter(({ id }) => words.length === 0 || words.some((word) => id.includes(word)))
    .flatMap((session) =>
      session.kitchens.flatMap((kitchen) =>
        (session.crews?.map((crew) => crew.id) ?? [undefined]).map((crew) => ({
          session,
          kitchen: byId(kitchens, kitchen),
          components,
          crew,
          rules: true,
        })),
      ),
    );
}

/** How much longer a first plan takes for twice the steps, from each size to the next and over all. */
function growthOf(rows: readonly Row[]): string {
  const known = rows.filter((row) => row.firstMs !== null && row.firstMs > 0);
  const between = (a: Row, b: Row): number => (b.firstMs! / a.firstMs!) ** (Math.LN2 / Math.log(b.steps / a.steps));
  const steps = known.slice(1).map((row, k) => {
    const before = known[k]!;
    return `${before.steps} to ${row.steps} steps: ${before.firstMs} to ${row.firstMs} ms, ${between(before, row).toFixed(2)} times per doubling`;
  });
  const [first] = known;
  const last = known.at(-1);
  const over = first === undefined || last === undefined || first === last ? '–' : between(first, last).toFixed(2);
  return ['first plan:', ...steps.map((step) => `  ${step}`), `  over all ${over} times per doubling`].join('\n');
}

const sentence = (row: Row): string =>
  row.value === null
    ? `${row.session}, ${row.steps} steps: no plan in time`
    : `${row.session}, ${row.kitchen}, ${row.crew}: ${row.steps} steps, ${row.value} min (at least ${row.bound}), first plan ${row.firstMs} ms, ` +
      `within 2 % ${row.goodMs} ms, ${row.proofMs === null ? 'not proved' : `proved ${row.proofMs} ms`}; ` +
      `rule of thumb ${row.thumb ?? 'no plan'}, best of ${priorityRules.length} rules ${row.bestRule ?? 'no plan'}`;

function measureCase(each: Case, asked: KitchenBench): Row {
  const { session, kitchen, components, crew } = each;
  const asking = performance.now();
  const translated = sessionToProblem({ session, kitchen, components, ...(crew === undefined ? {} : { crew }) });
  if (!translated.ok) throw new Error(JSON.stringify(translated.faults));
  const { problem } = translated;
  const begin = performance.now();
  const rows: { readonly ms: number; readonly value: number; readonly bound: number }[] = [];
  const outcome = solveTogether(problem, {
    seed: asked.seed,
    effort: Number.MAX_SAFE_INTEGER,
    shouldStop: () => performance.now() - begin > asked.seconds * 1000,
    onProgress: ({ value, bound }) => {
      if (value !== null) rows.push({ ms: performance.now() - begin, value, bound });
    },
  });
  const found = 'solution' in outcome ? outcome : null;
  const value = found?.tiers[0]!.value ?? null;
  const byRule = each.rules ? plansByRule(problem, asked.seed) : { thumb: null, rules: [] };
  const values = byRule.rules.map((plan) => tierValues(problem, plan)[0]!);
  const plans = [found?.solution ?? null, byRule.thumb, ...byRule.rules].filter((plan) => plan !== null);
  const when = (test: (row: (typeof rows)[number]) => boolean): number | null => {
    const row = rows.find(test);
    return row === undefined ? null : Math.round(row.ms);
  };
  return {
    session: session.id,
    kitchen: kitchen.id,
    crew: crew ?? 'all',
    steps: translated.translation.steps.length,
    tasks: problem.tasks.length,
    translateMs: Math.round(begin - asking),
    firstMs: each.rules
      ? when(() => true)
      : leastFirstMs(
          problem,
          asked,
          when(() => true),
        ),
    goodMs: value === null ? null : when((row) => row.value <= value * 1.02),
    lastMs: when((row) => row.value === value),
    proofMs: found?.tiers[0]!.proven === true ? when((row) => row.bound === value && row.value === value) : null,
    value,
    at2s: rows.findLast((row) => row.ms <= 2000)?.value ?? null,
    bound: found?.tiers[0]!.bound ?? 0,
    tiersProven: found?.tiers.filter((tier) => tier.proven).length ?? 0,
    thumb: byRule.thumb === null ? null : tierValues(problem, byRule.thumb)[0]!,
    bestRule: values.length === 0 ? null : Math.min(...values),
    rulesThatPlan: values.length,
    violations: plans.reduce((sum, plan) => sum + checkPlan(readBack(translated, plan)).length, 0),
  };
}

/** Other work on the machine only ever adds: the least of three times to a first plan is nearest to what it takes. */
function leastFirstMs(problem: Problem, asked: KitchenBench, first: number | null): number | null {
  let least = first;
  for (let again = 0; first !== null && again < 2; again++) {
    const begin = performance.now();
    let ms: number | null = null;
    solveTogether(problem, {
      seed: asked.seed,
      effort: Number.MAX_SAFE_INTEGER,
      shouldStop: () => ms !== null,
      onProgress: ({ value }) => {
        if (value !== null) ms ??= performance.now() - begin;
      },
    });
    least = Math.min(least!, Math.round(ms ?? Infinity));
  }
  return least;
}

function plansByRule(
  problem: Problem,
  seed: number,
): { readonly thumb: Solution | null; readonly rules: readonly Solution[] } {
  const racks = problem.resources.map((resource) => resource.id).filter((id) => id.startsWith('rack:'));
  const rules = priorityRules.map((rule) => planByRule(problem, rule, { seed })).filter((plan) => plan !== null);
  return { thumb: ruleOfThumb(problem, { firstResources: racks, seed }), rules };
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
