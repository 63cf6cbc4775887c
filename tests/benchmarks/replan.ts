/**
 * The bench of replanning and of how sure: the demo sessions and generated ones while they run, at many moments and with many kinds of
 * news. A cook waits from the tap to the plan, so what is measured is from what was told to the plan document, checked apart.
 */
import { writeFileSync } from 'node:fs';
import { rehearseReplans } from '../../app/solving/rehearse-replans.ts';
import { howSure } from '../../solver/answers/how-sure.ts';
import type { LiveEvent } from '../../solver/answers/replan/events.ts';
import { REPLAN_EFFORT, runPlan, type ReplanResult, type RunningPlan } from '../../solver/answers/replan/replan.ts';
import { checkPlan } from '../../solver/checker/check-plan.ts';
import type { Violation } from '../../solver/checker/violation.ts';
import type { Plan, PlannedStep } from '../../solver/kitchen/plan.ts';
import { planSession } from '../../solver/translate/plan-session.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../support/demo-documents.ts';
import { generatedSession, stockOf } from './generated-sessions.ts';
import { threadMs } from './thread-time.ts';
import { workerWarmed } from './worker-warmed.ts';

export interface ReplanBench {
  readonly seed: number;
  /** Work units of a second, long replan of each case, beside which the first is held; absent: none. */
  readonly long: number | undefined;
  /** Where the CSV rows go; to the screen where not given. */
  readonly out: string | undefined;
  /** Only sessions whose id has one of these. */
  readonly rest: readonly string[];
}

interface Row {
  readonly session: string;
  readonly steps: number;
  readonly now: number;
  readonly event: string;
  readonly step: string;
  readonly kind: string;
  /** By the clock, and of the processor, which other work on the machine disturbs less. */
  readonly ms: number;
  readonly cpuMs: number;
  /** Of the processor by the asking thread alone: what a cook waits where another core compiles and collects; null: not known. */
  readonly threadMs: number | null;
  /** Of the processor, asked the same again once every case of the plan has been asked: by then the code is compiled. */
  readonly againCpuMs: number;
  readonly finish: number | null;
  readonly changed: number | null;
  readonly carriedOn: number | null;
  readonly total: number | null;
  readonly bound: number | null;
  /** Worth that the long replan found, and what it bounds. */
  readonly longTotal: number | null;
  readonly longBound: number | null;
  readonly work: number;
  /** By the checker, and not told by the answer. */
  readonly violations: number;
  /** What the plan breaks, where not every limit can be kept; null where there is none at all. */
  readonly broken: number | null;
}

const DEMO = `${process.cwd()}/app/demo/`;
/** Share of the session between two looks. */
const EVERY = 0.08;
/** Steps, and seeds, of generated sessions. */
const GENERATED = { steps: 60, seeds: [1, 2] };
const PLAN_EFFORT = 300_000;
/** Milliseconds that a cook may be kept waiting. */
const MOST_MS = 200;

/**
 * Replans sessions at many moments.
 *
 * @returns the exit code of the command: 0 when every plan passes the checker, or tells what it breaks
 */
export function replanBench(asked: ReplanBench): number {
  console.error(workerWarmed());
  const kitchens = demoKitchens(DEMO);
  const components = demoComponents(DEMO);
  const wanted = ({ id }: { readonly id: string }): boolean =>
    asked.rest.length === 0 || asked.rest.some((word) => id.includes(word));
  const demo = demoSessions(DEMO).map((session) => ({
    session,
    kitchen: byId(kitchens, session.kitchens[0]!),
    components,
  }));
  const stock = stockOf(kitchens[0]!, components);
  const generated = GENERATED.seeds.map((seed) => generatedSession(stock, GENERATED.steps, seed));
  const rows: Row[] = [];
  for (const each of [...demo, ...generated]) {
    if (!wanted(each.session)) continue;
    const made = planSession({ ...each, seed: asked.seed, effort: PLAN_EFFORT });
    if (made.kind !== 'planned') throw new Error(`${each.session.id}: ${made.kind}`);
    const own = measurePlan(made.plan, asked.long);
    rows.push(...own);
    console.error(sentence(made.plan, own));
    for (const line of remarkable(own)) console.error(`  ${line}`);
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

interface Case {
  readonly now: number;
  readonly event: LiveEvent;
  readonly name: string;
}

/** When the part that is under way ends as planned, looks on the way apart; `late` tells of that part alone. */
function partEnd({ segments, end }: PlannedStep, now: number): number {
  const parts = segments.filter(({ check, start }) => check !== true && start <= now);
  return Math.max(now, ...(parts.length === 0 ? [end] : parts.slice(-1).map((part) => part.end)));
}

/** News at a moment: what is under way late, over, or not yet begun; what was to follow already begun. */
function casesAt(plan: Plan, now: number): readonly Case[] {
  const work = plan.steps.filter(({ kind }) => kind !== 'preheat');
  const running = work.filter(({ start, end }) => start < now && end > now);
  const due = work.filter(({ start }) => start === now - 1);
  return [
    ...running.slice(0, 3).flatMap((step): readonly Case[] => {
      const { id } = step;
      const end = partEnd(step, now);
      return [
        { now, name: 'late 5', event: { kind: 'late', step: id, remaining: end - now + 5 } },
        { now, name: 'late 15', event: { kind: 'late', step: id, remaining: end - now + 15 } },
        ...(end - now > 2
          ? [
              {
                now,
                name: 'shorter',
                event: { kind: 'late', step: id, remaining: Math.ceil((end - now) / 2) },
              } as const,
            ]
          : []),
        { now, name: 'done', event: { kind: 'done', step: id, at: now } },
      ];
    }),
    ...due.slice(0, 1).map(({ id }): Case => ({ now, name: 'waiting', event: { kind: 'waiting', step: id } })),
  ];
}

function measurePlan(plan: Plan, long: number | undefined): readonly Row[] {
  const running = runPlan(plan);
  const cases = Array.from({ length: Math.floor(1 / EVERY) }, (_, k) =>
    Math.max(1, Math.round(plan.allAwayMinutes * EVERY * (k + 0.5))),
  ).flatMap((now) => casesAt(plan, now));
  // As while the cooks begin; its news is other news. Some code is compiled only once all cases have been asked: so each is asked twice.
  rehearseReplans(running, () => false);
  const first = cases.map(({ now, event }) => timedReplan(running, now, event));
  const again = cases.map(({ now, event }) => timedReplan(running, now, event));
  return cases.flatMap(({ now, event, name }, index): readonly Row[] => {
    const { result, ms, cpuMs, threadMs } = first[index]!;
    // News that no cook could tell of that step, as that a pause is over.
    if (result.kind === 'refused') return [];
    const good = result.kind === 'replanned' ? result : null;
    const leastBad = result.kind === 'replanned' ? null : result.leastBad;
    const longer = long === undefined ? null : running.replan({ now, events: [event], effort: long });
    const best = longer?.kind === 'replanned' ? longer : null;
    return [
      {
        session: plan.session.id,
        steps: plan.steps.length,
        now,
        event: name,
        step: event.step,
        kind: good === null ? result.kind : good.proven ? 'proven' : 'bounded',
        ms,
        cpuMs,
        threadMs,
        againCpuMs: again[index]!.cpuMs,
        finish: good?.worth.finish ?? leastBad?.finishMinutes ?? null,
        changed: good?.worth.changed.length ?? null,
        carriedOn: good?.carriedOn ?? null,
        total: good?.worth.total ?? null,
        bound: good?.bound ?? null,
        longTotal: best?.worth.total ?? null,
        longBound: best?.bound ?? null,
        work: result.work,
        violations: untold(good?.plan ?? leastBad, result.broken),
        broken: good === null && leastBad === null ? null : result.broken.length,
      },
    ];
  });
}

interface Timed {
  readonly result: ReplanResult;
  readonly ms: number;
  readonly cpuMs: number;
  readonly threadMs: number | null;
}

function timedReplan(running: RunningPlan, now: number, event: LiveEvent): Timed {
  const began = performance.now();
  const used = process.cpuUsage();
  const ran = threadMs();
  const result = running.replan({ now, events: [event] });
  const ranNow = threadMs();
  const { user, system } = process.cpuUsage(used);
  const ms = performance.now() - began;
  const tenths = (value: number): number => Math.round(value * 10) / 10;
  return {
    result,
    ms: tenths(ms),
    cpuMs: tenths((user + system) / 1000),
    threadMs: ran === null || ranNow === null ? null : tenths(ranNow - ran),
  };
}

/** What the checker has against a plan that the answer does not tell. */
const untold = (plan: Plan | null, broken: readonly Violation[]): number =>
  plan === null ? 0 : checkPlan(plan).filter(({ message }) => broken.every((told) => told.message !== message)).length;

/** Lines on the cases that a cook would mind, each with its news: no plan within every limit, or too long a wait. */
function remarkable(rows: readonly Row[]): readonly string[] {
  const named = (what: string, of: (row: Row) => boolean): readonly string[] => {
    const those = rows.filter(of);
    return [
      `${those.length} of ${rows.length} ${what}${those.length === 0 ? '' : ':'}`,
      ...those.map(
        ({ session, now, event, step, kind, cpuMs, threadMs: own, againCpuMs, work, finish, broken }) =>
          `  ${session} at minute ${now}, ${event}: ${step}: ${kind}, ${cpuMs} ms of the processor (${own ?? '?'} of the thread), again ${againCpuMs}, ${work} units` +
          (broken === null
            ? ', no plan at all'
            : broken > 0
              ? `; breaks ${broken} by the checker, finish ${finish ?? ''}`
              : ''),
      ),
    ];
  };
  return [
    ...named('unknown', ({ kind }) => kind === 'unknown'),
    ...named('impossible', ({ kind }) => kind === 'impossible'),
    ...named(`over ${MOST_MS} ms of the processor`, ({ cpuMs }) => cpuMs > MOST_MS),
    ...named(`over ${MOST_MS} ms of the thread`, ({ threadMs: own }) => (own ?? 0) > MOST_MS),
    ...named(`over ${MOST_MS} ms of the processor when asked again`, ({ againCpuMs }) => againCpuMs > MOST_MS),
    ...named('with what the checker finds and the answer does not tell', ({ violations }) => violations > 0),
  ];
}

/** How far the replans are from the best that is known, where a long one was made. */
function gaps(rows: readonly Row[]): string {
  const held = rows.filter(({ longTotal }) => longTotal !== null);
  const worth = held.flatMap(({ total, longTotal }) =>
    total === null || longTotal === null ? [] : [Math.max(0, total - longTotal)],
  );
  if (worth.length === 0) return '';
  const mean = worth.reduce((sum, each) => sum + each, 0) / worth.length;
  const best = held.filter(({ longTotal, longBound }) => longTotal === longBound).length;
  return (
    `; over the best known: mean ${mean.toFixed(2)} min, worst ${Math.max(...worth)} min, none found ${held.length - worth.length}, ` +
    `equal in ${worth.filter((each) => each === 0).length} of ${held.length} (the long one proven in ${best})`
  );
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
    `${plan.session.id}, ${plan.steps.length} steps, ${rows.length} replans at ${REPLAN_EFFORT} units: ${spread(({ ms }) => ms)} (processor: ${spread(({ cpuMs }) => cpuMs)}; its thread alone: ${spread(({ threadMs: own }) => own ?? NaN)}; again: ${spread(({ againCpuMs }) => againCpuMs)}); ` +
    `made ready once in ${ready} ms; proven ${share(({ kind }) => kind === 'proven')}, ` +
    `better than the old order ${share((row) => row.total !== null && (row.carriedOn === null || row.total < row.carriedOn))}, ` +
    `within every limit ${share(({ total }) => total !== null)}; how sure (2,000 samples) ${sure} ms${gaps(rows)}`
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
