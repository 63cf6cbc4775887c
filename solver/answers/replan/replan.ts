/**
 * Replans a running session from its plan document: what was told by now becomes the past, and the rest goes on from there,
 * changing as little as helps.
 */
import type { WallOffset } from '../../checker/clock.ts';
import { planOrder, type PlanOrder } from '../../engine/explain/plan-order.ts';
import { endNode, startNode } from '../../engine/explain/taken.ts';
import { OPEN, type ReplanAsked } from '../../engine/replan/asked.ts';
import { withoutMeetings } from '../../engine/replan/met.ts';
import { replan } from '../../engine/replan/replan.ts';
import { settle } from '../../engine/replan/settled.ts';
import { withoutShutHours } from '../../engine/replan/shut-hours.ts';
import { timesOf } from '../../engine/replan/worth.ts';
import type { Solution } from '../../engine/outcome.ts';
import type { InputFault } from '../../kitchen/fault.ts';
import { wholeId, type Lived, type LivedStep, type Plan } from '../../kitchen/plan.ts';
import { guardsFood } from '../../translate/requirement-names.ts';
import { finishPoints } from '../../translate/tiers.ts';
import type { Met, Translated } from '../../translate/legend.ts';
import { answer, type Seen } from './answer.ts';
import { eventFaults, type LiveEvent } from './events.ts';
import { historyOf, isOverBy, type History, type PlannedUnit } from './history.ts';
import { mayHaveBroken } from './past-faults.ts';
import { plannedUnits, withoutWork } from './planned-units.ts';
import type { Answered, ReplanResult } from './result.ts';
import { toldAhead } from './told-ahead.ts';
import { translatePlan } from './translate-plan.ts';

/** Minutes of finish that a changed step weighs, unless asked otherwise. */
export const PENALTY = 2;
/** Steps due within so many minutes are left alone. */
export const FROZEN_MINUTES = 3;
/** Work units of a replan while cooks wait for it, what gets its searches ready among them. */
export const REPLAN_EFFORT = 20_000;

export interface ReplanOptions {
  /** Minutes from the start of the session; what is told has happened by then. */
  readonly now: number;
  readonly events: readonly LiveEvent[];
  readonly penalty?: number;
  readonly seed?: number;
  readonly effort?: number;
  readonly shouldStop?: () => boolean;
}

export type { ReplanResult } from './result.ts';

/** A plan that is being cooked by, made ready so that the cooks need not wait for it later. */
export interface RunningPlan {
  readonly plan: Plan;
  readonly replan: (options: ReplanOptions) => ReplanResult;
}

type Prepared = Translated & {
  readonly planned: Solution;
  readonly order: PlanOrder;
  readonly units: readonly PlannedUnit[];
};

/**
 * Makes a plan ready to be replanned, any number of times.
 *
 * @param plan with its own session, components and kitchen; perhaps replanned before
 * @param wallOffset as for `sessionToProblem`
 */
export function runPlan(plan: Plan, wallOffset?: WallOffset): RunningPlan {
  const asPlanned = prepare(plan, plan, plan.lived, wallOffset);
  return { plan, replan: (options) => replanned(plan, asPlanned, options, wallOffset) };
}

/**
 * Replans once.
 *
 * @returns the plan of past and rest together. Splits into batches stay as they are
 */
export const replanSession = (plan: Plan, options: ReplanOptions, wallOffset?: WallOffset): ReplanResult =>
  runPlan(plan, wallOffset).replan(options);

type Ready =
  { readonly ok: true; readonly prepared: Prepared } | { readonly ok: false; readonly faults: readonly InputFault[] };

function prepare(
  plan: Plan,
  followed: Plan,
  lived: Lived | undefined,
  wallOffset: WallOffset | undefined,
  met?: Met,
): Ready {
  const read = translatePlan(plan, wallOffset, lived, followed, met);
  if (!read.ok) return read;
  const { translated, planned } = read;
  // What an earlier replan knew to be past keeps no order any more, whatever rule it broke.
  const before = plan.lived;
  const units = plannedUnits(translated, followed);
  const problem =
    before === undefined
      ? translated.problem
      : settle({
          problem: translated.problem,
          old: planned,
          facts: factsBefore(planned, before, units),
          now: before.now,
        }).problem;
  const readable = withoutShutHours(problem, planned);
  const order = planOrder(met === undefined ? readable : withoutMeetings(readable, planned), planned);
  return { ok: true, prepared: { ...translated, planned, order, units } };
}

function replanned(
  plan: Plan,
  asPlanned: Ready,
  options: ReplanOptions,
  wallOffset: WallOffset | undefined,
): ReplanResult {
  const { now, events } = options;
  const faults = eventFaults(plan, now, events);
  if (faults.length > 0) return { kind: 'refused', faults };
  const left = new Set(events.flatMap((event) => (event.kind === 'skipped' ? [wholeId({ id: event.step })] : [])));
  let lived = mergeLived(
    plan.lived,
    now,
    [...left].map((step): LivedStep => ({ step, skipped: true, minutes: [] })),
  );
  const ready = left.size === 0 ? asPlanned : prepare(plan, withoutWork(plan, left), lived, wallOffset);
  if (!ready.ok) return { kind: 'refused', faults: ready.faults };
  const first = historyIn(ready.prepared, plan, options);
  if (first.notBegun.length > 0)
    return { kind: 'refused', faults: first.notBegun.map((step) => notBegun(plan, step, now)) };
  let [translated, history] = [ready.prepared, first];
  if (first.minutes.size > 0) {
    // What took longer is longer in everything that follows from it; ways that differed may be alike now, so all is read again.
    lived = mergeLived(lived, now, toldSteps(first, lived));
    const again = prepare(plan, left.size === 0 ? plan : withoutWork(plan, left), lived, wallOffset);
    if (!again.ok) return { kind: 'refused', faults: again.faults };
    translated = again.prepared;
    history = historyIn(translated, plan, options);
  }
  const isTold = mayHaveBroken(plan, events, isCut(first.minutes, ready.prepared.units));
  const effort = options.effort ?? REPLAN_EFFORT;
  const goOn = (from: Prepared, known: History, efforts: Efforts): Seen =>
    goingOn(from, known, { plan, options, efforts, lived, mayHaveBroken: isTold, wallOffset });
  // What has met an allergen may have to be planned around: half is kept for that.
  const { answered, met } = goOn(translated, history, { effort, effortIfSoiled: Math.floor(effort / 2) });
  if (met.size === 0 || !wouldSpread(answered)) return answered;
  // What has met an allergen carries it from now on: boards and hands are washed after it, and no other food gets it.
  const carrying = prepare(plan, left.size === 0 ? plan : withoutWork(plan, left), lived, wallOffset, met);
  if (!carrying.ok) return answered;
  const rest = { effort: Math.max(0, effort - answered.work) };
  const kept = goOn(carrying.prepared, historyIn(carrying.prepared, plan, options), rest).answered;
  const work = answered.work + kept.work;
  return kept.kind === 'replanned' || kept.leastBad !== null ? { ...kept, work } : { ...answered, work };
}

/** Whether the way to go on that was found would bring an allergen to more food. */
const wouldSpread = (answered: Answered): boolean =>
  answered.kind !== 'replanned' && answered.against.some(({ harm }) => harm === 'allergen');

/** Most work units. */
type Efforts = Pick<ReplanAsked, 'effort' | 'effortIfSoiled'>;

interface Around {
  readonly plan: Plan;
  readonly options: ReplanOptions;
  readonly efforts: Efforts;
  readonly lived: Lived;
  readonly mayHaveBroken: boolean;
  readonly wallOffset: WallOffset | undefined;
}

/** The rest planned from what has happened, and told. */
function goingOn(translated: Prepared, history: History, around: Around): Seen {
  const { plan, options, efforts, lived, wallOffset } = around;
  const { now } = options;
  const { planned, units } = translated;
  const { problem } = translated;
  const position = new Map(problem.tasks.map((task, index) => [task.id, index]));
  const outcome = replan({
    problem,
    old: planned,
    units,
    facts: history.facts,
    now,
    frozenUntil: now + FROZEN_MINUTES,
    finish: finishPoints(translated.translation).map(({ task, at }) =>
      at === 'start' ? startNode(position.get(task)!) : endNode(position.get(task)!),
    ),
    penalty: options.penalty ?? PENALTY,
    // While cooks wait, a plan that goes on unchanged and is not late is not bettered.
    ...(options.effort === undefined ? { goodEnough: plan.finishMinutes } : {}),
    guarded: new Set(
      problem.lags.flatMap(({ requirement }, lag) =>
        requirement !== undefined && guardsFood(requirement) ? [lag] : [],
      ),
    ),
    kept: lookLags(translated),
    seed: options.seed ?? plan.made.seed,
    ...efforts,
    ...(options.shouldStop === undefined ? {} : { shouldStop: options.shouldStop }),
  });
  return answer(outcome, {
    plan,
    translated,
    units,
    lived,
    mayHaveBroken: around.mayHaveBroken,
    toldAhead: toldAhead(translated, translated.order.times, history.facts, options.events),
    seed: options.seed ?? plan.made.seed,
    effort: efforts.effort,
    wallOffset,
  });
}

/** Lags that hold looks on the way inside their wait: outside it a look is none, so they are no limits that could be wider. */
function lookLags({ problem, translation }: Translated): ReadonlySet<number> {
  const looks = new Set(
    translation.steps.flatMap(({ shapes }) =>
      shapes.flatMap(({ operations }) =>
        operations.flatMap((each) => each.flatMap(({ check, task }) => (check ? [task] : []))),
      ),
    ),
  );
  return new Set(
    problem.lags.flatMap(({ from, to }, lag) =>
      [from, to].some((point) => point !== 'origin' && looks.has(point.task)) ? [lag] : [],
    ),
  );
}

/** Every point that a plan has before the minute of an earlier replan; of steps told to be over at that very minute all. */
function factsBefore(planned: Solution, { now, steps }: Lived, units: readonly PlannedUnit[]): Int32Array {
  const facts = timesOf(planned).map((time) => (time >= 0 && time < now ? time : OPEN));
  const told = new Set(steps.map(({ step }) => step));
  for (const { id, tasks, parts } of units)
    if (told.has(id) && isOverBy(parts, now))
      for (const task of tasks) {
        const at = planned.tasks[task] ?? null;
        if (at?.end === now) [facts[startNode(task)], facts[endNode(task)]] = [at.start, at.end];
      }
  return facts;
}

const historyIn = ({ units, order }: Prepared, plan: Plan, { now, events }: ReplanOptions): History =>
  historyOf(units, order.times, order.arcs, now, events, plan.lived);

/** Whether a part was told to be shorter than it was planned. */
const isCut = (minutes: History['minutes'], units: readonly PlannedUnit[]): boolean =>
  units.some(({ id, parts, inPieces }) => {
    const lengths = parts.map(({ start, end }) => end - start);
    const planned = inPieces ? [lengths.reduce((sum, each) => sum + each, 0)] : lengths;
    return (minutes.get(id) ?? []).some((told, index) => told !== null && told < planned[index]!);
  });

const notBegun = (plan: Plan, step: string, now: number): InputFault => ({
  document: `plan ${plan.id}`,
  path: 'events',
  found: `${step} late at minute ${now}`,
  wanted: 'a step that has begun',
  mend: 'tell that it has started, or wait until it has',
});

/** What is told now; of interrupted work, beside what was told of its pieces before. */
const toldSteps = ({ minutes, pieces }: History, before: Lived): readonly LivedStep[] =>
  [...minutes].map(([step, own]): LivedStep => {
    const now = pieces.get(step);
    if (now === undefined) return { step, minutes: [...own] };
    const known = before.steps.find((each) => each.step === step)?.pieces ?? [];
    const length = Math.max(now.length, known.length);
    return {
      step,
      minutes: [...own],
      pieces: Array.from({ length }, (_, index) => now[index] ?? known[index] ?? null),
    };
  });

/** What was told before, and what is told now; the newer counts. */
function mergeLived(before: Lived | undefined, now: number, steps: readonly LivedStep[]): Lived {
  const told = new Set(steps.map(({ step }) => step));
  return { now, steps: [...(before?.steps ?? []).filter(({ step }) => !told.has(step)), ...steps] };
}
