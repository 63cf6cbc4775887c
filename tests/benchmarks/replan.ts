/**
 * The bench of replanning and of how sure: each demo session while it runs, one step late at a time, through the whole session. A
 * cook waits from the tap to the plan, so what is measured is from what was told to the plan document, checked apart.
 */
import { writeFileSync } from 'node:fs';
import { howSure } from '../../solver/answers/how-sure.ts';
import type { LiveEvent } from '../../solver/answers/replan/events.ts';
import { REPLAN_EFFORT, runPlan } from '../../solver/answers/replan/replan.ts';
import { checkPlan } from '../../solver/checker/check-plan.ts';
import type { Plan } from '../../solver/kitchen/plan.ts';
import { planSession } from '../../solver/translate/plan-session.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../support/demo-documents.ts';

export interface ReplanBench {
  readonly seed: number;
  /** Where the CSV rows go; to the screen where not given. */
  readonly out: string | undefined;
  /** Only sessions whose id has one of these. */
  readonly rest: readonly string[];
}

interface Row {
  readonly session: string;
  readonly steps: number;
  readonly now: number;
  readonly late: string;
  readonly remaining: number;
  readonly kind: string;
  /** By the clock, and of the processor, which other work on the machine disturbs less. */
  readonly ms: number;
  readonly cpuMs: number;
  readonly finish: number | null;
  readonly changed: number | null;
  readonly carriedOn: number | null;
  readonly total: number | null;
  readonly bound: number | null;
  readonly work: number;
  readonly violations: number;
}

const DEMO = `${process.cwd()}/app/demo/`;
/** Share of the session between two looks, and how many more minutes the late step takes. */
const EVERY = 0.08;
const REMAINING = [3, 8, 15];

/**
 * Replans the demo sessions at many moments.
 *
 * @returns the exit code of the command: 0 when every plan passes the checker
 */
export function replanBench(asked: ReplanBench): number {
  const kitchens = demoKitchens(DEMO);
  const components = demoComponents(DEMO);
  const sessions = demoSessions(DEMO).filter(
    ({ id }) => asked.rest.length === 0 || asked.rest.some((word) => id.includes(word)),
  );
  const rows: Row[] = [];
  for (const session of sessions) {
    const made = planSession({
      session,
      kitchen: byId(kitchens, session.kitchens[0]!),
      components,
      seed: asked.seed,
      effort: 300_000,
    });
    if (made.kind !== 'planned') throw new Error(`${session.id}: ${made.kind}`);
    const own = measurePlan(made.plan);
    rows.push(...own);
    console.error(sentence(made.plan, own));
  }
  const [first] = rows;
  if (first === undefined) throw new Error('no such session');
  const csv = [
    Object.keys(first).join(','),
    ...rows.map((row) =>
      Object.values(row)
        .map((value: Row[keyof Row]) => value ?? '')
        .join(','),
    ),
  ].join('\n');
  if (asked.out === undefined) console.log(csv);
  else writeFileSync(asked.out, `${csv}\n`);
  return rows.some((row) => row.violations > 0) ? 1 : 0;
}

/** One step by hand or by itself that is under way. */
const underWay = (plan: Plan, now: number): readonly string[] =>
  plan.steps.filter(({ kind, start, end }) => kind !== 'preheat' && start < now && end > now).map(({ id }) => id);

function measurePlan(plan: Plan): readonly Row[] {
  const running = runPlan(plan);
  const moments = Array.from({ length: Math.floor(1 / EVERY) }, (_, k) =>
    Math.max(1, Math.round(plan.allAwayMinutes * EVERY * (k + 0.5))),
  );
  const cases = moments.flatMap((now) =>
    underWay(plan, now)
      .slice(0, 3)
      .map((step, index): { now: number; event: LiveEvent & { kind: 'late' } } => ({
        now,
        event: { kind: 'late', step, remaining: REMAINING[index]! },
      })),
  );
  // The code is compiled by the first rounds; a cook's tap meets a warm worker.
  for (const { now, event } of cases) running.replan({ now, events: [event] });
  return cases.map(({ now, event }): Row => {
    const began = performance.now();
    const used = process.cpuUsage();
    const result = running.replan({ now, events: [event] });
    const { user, system } = process.cpuUsage(used);
    const ms = performance.now() - began;
    if (result.kind === 'refused') throw new Error(JSON.stringify(result.faults));
    const good = result.kind === 'replanned' ? result : null;
    return {
      session: plan.session.id,
      steps: plan.steps.length,
      now,
      late: event.step,
      remaining: event.remaining,
      kind: good === null ? result.kind : good.proven ? 'proven' : 'bounded',
      ms: Math.round(ms * 10) / 10,
      cpuMs: Math.round((user + system) / 100) / 10,
      finish: good?.worth.finish ?? null,
      changed: good?.worth.changed.length ?? null,
      carriedOn: good?.carriedOn ?? null,
      total: good?.worth.total ?? null,
      bound: good?.bound ?? null,
      work: result.work,
      violations: good === null || good.broken.length > 0 ? 0 : checkPlan(good.plan).length,
    };
  });
}

function sentence(plan: Plan, rows: readonly Row[]): string {
  const spread = (of: (row: Row) => number): string => {
    const times = rows.map(of).sort((a, b) => a - b);
    const at = (share: number): number => times[Math.min(times.length - 1, Math.floor(share * times.length))]!;
    return `median ${at(0.5)} ms, 95 % within ${at(0.95)} ms, worst ${times.at(-1)} ms`;
  };
  const share = (of: (row: Row) => boolean): string => `${Math.round((100 * rows.filter(of).length) / rows.length)} %`;
  const sure = timed(() => howSure(plan));
  const ready = timed(() => runPlan(plan));
  return (
    `${plan.session.id}, ${plan.steps.length} steps, ${rows.length} replans at ${REPLAN_EFFORT} units: ${spread(({ ms }) => ms)} (processor: ${spread(({ cpuMs }) => cpuMs)}); ` +
    `made ready once in ${ready} ms; proven ${share(({ kind }) => kind === 'proven')}, ` +
    `better than the old order ${share((row) => row.total !== null && (row.carriedOn === null || row.total < row.carriedOn))}, ` +
    `within every limit ${share(({ total }) => total !== null)}; how sure (2,000 samples) ${sure} ms`
  );
}

/** Median of seven, ms. */
function timed(run: () => unknown): number {
  const times = Array.from({ length: 7 }, () => {
    const began = performance.now();
    run();
    return performance.now() - began;
  }).sort((a, b) => a - b);
  return Math.round(times[3]!);
}
