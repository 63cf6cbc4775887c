/**
 * The bench of kitchen sessions: each demo session in each of its kitchens and by each of its crews, beside a rule of thumb and
 * the best of the priority rules; then generated sessions of several seeds, each size about twice the one before, for the growth of the time to a
 * first plan. Every plan, the rules' too, is read back and passes the same checker.
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
import { workerWarmed } from './worker-warmed.ts';

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

/** Seeds of the generator for each size: the first is planned whole, of the others only the first plan is measured. */
const SEEDS = 5;

interface FirstPlan {
  readonly steps: number;
  /** Null where there is no plan in time. */
  readonly firstMs: number | null;
  readonly violations: number;
}
interface FirstPlans {
  readonly size: number;
  /** By seed. */
  readonly plans: readonly FirstPlan[];
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
  const generatedOf = (size: number, seed: number): Case => ({ ...generatedSession(stock, size, seed), rules: false });
  const generated = asked.sizes.map((size) => generatedOf(size, asked.seed));
  const cases = [...demo, ...generated];
  console.error(workerWarmed());
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
  const firsts = asked.sizes.map((size, index): FirstPlans => {
    const others = Array.from({ length: SEEDS - 1 }, (_, k) =>
      firstPlanOf(generatedOf(size, asked.seed + k + 1), asked),
    );
    const { steps, firstMs, violations } = rows[demo.length + index]!;
    return { size, plans: [{ steps, firstMs, violations }, ...others] };
  });
  if (firsts.length > 0) console.error(`\n${growthOf(firsts)}`);
  const plans = [...rows, ...firsts.flatMap((each) => each.plans)];
  return plans.every((plan) => plan.violations === 0 && plan.firstMs !== null) ? 0 : 1;
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

/** The median over the seeds of each size, and how much longer that is for twice the steps, from each size to the next and over all. */
function growthOf(firsts: readonly FirstPlans[]): string {
  const known = firsts.map(({ size, plans }) => ({
    size,
    steps: median(plans.map(({ steps }) => steps)),
    ms: median(plans.map(({ firstMs }) => firstMs ?? Infinity)),
    most: Math.max(...plans.map(({ firstMs }) => firstMs ?? Infinity)),
  }));
  type Known = (typeof known)[number];
  const between = (a: Known, b: Known): string =>
    ((Math.max(1, b.ms) / Math.max(1, a.ms)) ** (1 / Math.log2(b.steps / a.steps))).toFixed(2);
  const lines = known.map((each, k) => {
    const before = known[k - 1];
    const growth = before === undefined ? '' : `, ${between(before, each)} times per doubling`;
    return `  ${each.size} steps: ${each.ms} ms, at most ${each.most} ms${growth}`;
  });
  const [first] = known;
  const last = known.at(-1);
  const over = first === undefined || last === undefined || first === last ? '–' : between(first, last);
  return [`first plan, median of ${SEEDS} seeds:`, ...lines, `  over all ${over} times per doubling`].join('\n');
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;

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
  return first === null ? null : Math.min(first, ...[1, 2].map(() => firstPlan(problem, asked).ms ?? Infinity));
}

/** The time to a first plan of a session, the least of three, and that plan checked. */
function firstPlanOf({ session, kitchen, components }: Case, asked: KitchenBench): FirstPlan {
  const translated = sessionToProblem({ session, kitchen, components });
  if (!translated.ok) throw new Error(JSON.stringify(translated.faults));
  const { ms, plan } = firstPlan(translated.problem, asked);
  return {
    steps: translated.translation.steps.length,
    firstMs: leastFirstMs(translated.problem, asked, ms),
    violations: plan === null ? 0 : checkPlan(readBack(translated, plan)).length,
  };
}

function firstPlan(
  problem: Problem,
  asked: KitchenBench,
): { readonly ms: number | null; readonly plan: Solution | null } {
  const begin = performance.now();
  const found: { ms: number | null; plan: Solution | null } = { ms: null, plan: null };
  solveTogether(problem, {
    seed: asked.seed,
    effort: Number.MAX_SAFE_INTEGER,
    shouldStop: () => found.plan !== null || performance.now() - begin > asked.seconds * 1000,
    onProgress: (_, solution) => {
      if (solution === null || found.plan !== null) return;
      found.ms = Math.round(performance.now() - begin);
      found.plan = solution;
    },
  });
  return found;
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
