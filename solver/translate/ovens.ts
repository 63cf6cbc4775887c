/**
 * Ovens: each is switched on once, heats, is turned from window to window, and is switched off; what follows is its afterheat.
 * Two windows that share a dial position under the same function may be served together; others wait for each other with the
 * minutes of heating or cooling between them.
 */
import type { Literal } from '../engine/problem.ts';
import { afterheatSpan } from '../heat/afterheat.ts';
import { holdingW, ovenHeat, type OvenHeat } from '../heat/oven-heat.ts';
import { coolMinutes, dialWindow, heatMinutes } from '../heat/oven-tables.ts';
import type { Oven } from '../kitchen/kitchen.ts';
import { minutesDown, minutesUp } from '../kitchen/scaling.ts';
import type { Need } from '../kitchen/step.ts';
import { durationMinutes } from '../kitchen/values.ts';
import type { NeedLegend, OvenClass, StepLegend, Translation } from './legend.ts';
import { whenWays } from './holds.ts';
import { end, picks, start } from './problem-builder.ts';
import { draws, wattHoursPerMinute } from './power.ts';
import { addDrips } from './drips.ts';
import { afterheatName, preheatName } from './requirement-names.ts';

type OvenNeed = Extract<Need, { use: 'oven' }>;

interface OvenUse {
  readonly step: StepLegend;
  readonly need: NeedLegend;
  readonly oven: OvenNeed;
  /** Options of the need that lie in this oven. */
  readonly options: readonly number[];
}

const usesOf = (t: Translation, oven: Oven, afterheat: boolean): readonly OvenUse[] =>
  t.steps.flatMap((step) =>
    step.needs.flatMap((need): OvenUse[] => {
      if (need.need.use !== 'oven' || (need.need.afterheat === true) !== afterheat) return [];
      const options = need.options.flatMap((option, index) => (option.place.oven === oven.id ? [index] : []));
      return options.length === 0 ? [] : [{ step, need, oven: need.need, options }];
    }),
  );

const inOven = (use: OvenUse): readonly Literal[] =>
  use.options.length === use.need.options.length ? [] : picks(use.need.choice, ...use.options);

/** Adds every oven that some step can use. After the steps. */
export function addOvens(t: Translation): void {
  for (const oven of t.kitchen.ovens) {
    const heated = usesOf(t, oven, false);
    if (heated.length === 0) continue;
    const sure = heated.some((use) => inOven(use).length === 0 && whenWays(use.step, use.need).length === 0);
    addState(t, oven);
    addFire(t, oven, heated, sure);
  }
  addAfterheat(t);
  addDrips(t);
}

/** The least minutes between two uses of windows a, then b; null where they share a setting. */
function gapBetween(heat: OvenHeat, a: OvenClass, b: OvenClass, never: number): number | null {
  const minutes = Math.min(
    never,
    minutesUp(a.mostC < b.leastC ? heatMinutes(heat, a.mostC, b.leastC) : coolMinutes(heat, a.leastC, b.mostC)),
  );
  if (a.function === b.function && a.leastC <= b.mostC && b.leastC <= a.mostC) return null;
  return a.leastC <= b.mostC && b.leastC <= a.mostC ? 0 : minutes;
}

function addState(t: Translation, oven: Oven): void {
  const classes = t.ovenClasses.get(oven.id) ?? [];
  const heat = ovenHeat(oven, t.kitchen.roomC);
  t.builder.states.push({
    id: `oven:${oven.id}`,
    classes: classes.map((each) => `${each.function} ${each.leastC}–${each.mostC} °C`),
    gap: classes.map((a) => classes.map((b) => gapBetween(heat, a, b, t.builder.horizon))),
  });
}

function addFire(t: Translation, oven: Oven, heated: readonly OvenUse[], sure: boolean): void {
  const { builder } = t;
  const fire = `${oven.id}/on`;
  const choice = sure ? null : builder.choice(`on:${oven.id}`, ['off', 'on']);
  const coolest = Math.min(...heated.map((use) => dialWindow(oven, use.oven.leastC, use.oven.mostC)!.leastC));
  const heat = ovenHeat(oven, t.kitchen.roomC);
  const heatUp = heatMinutes(heat, t.kitchen.roomC, coolest);
  const holding = holdingW(heat, coolest);
  // While the oven is not there, it cannot be on either.
  const absences = (t.session.absences ?? []).filter(({ what }) => what === oven.id);
  const dial = `dial:${oven.id}`;
  if (absences.length > 0) builder.resource(dial, 1);
  for (const { from, until } of absences)
    builder.absence(dial, minutesDown(durationMinutes(from)), minutesUp(durationMinutes(until)));
  const mode = {
    shortest: 0,
    longest: builder.horizon,
    uses: [...draws(t.kitchen, oven.id, oven.powerW), ...(absences.length > 0 ? [{ resource: dial, amount: 1 }] : [])],
    cost: {
      fixed: Number.isFinite(heatUp) ? Math.max(0, Math.round(((oven.powerW - holding) * heatUp) / 60)) : 0,
      perMinute: wattHoursPerMinute(holding),
    },
  };
  builder.task(fire, choice === null ? [mode] : [null, mode], choice);
  t.ovens.push({ oven, fire, choice });
  for (const use of heated) {
    const window = dialWindow(oven, use.oven.leastC, use.oven.mostC)!;
    const warmUp = heatMinutes(heat, t.kitchen.roomC, window.leastC);
    // What power cannot reach is not reached from a cold start either.
    const preheat =
      use.oven.coldStart === true && Number.isFinite(warmUp) ? 0 : Math.min(builder.horizon, minutesUp(warmUp));
    builder.atLeast(start(fire), start(use.need.task), preheat, inOven(use), preheatName(oven, use.step.instance.step));
    builder.atLeast(end(use.need.task), end(fire), 0, inOven(use));
    if (choice !== null) builder.forbid([...whenWays(use.step, use.need), ...inOven(use), ...picks(choice, 0)]);
  }
}

/**
 * An afterheat use follows the heated use with whose end the oven is switched off: not before the oven has fallen into its
 * window (reckoned from the hottest that the oven may be then), and out before it leaves it (from the coolest).
 */
function addAfterheat(t: Translation): void {
  const { builder } = t;
  const seen = new Set<NeedLegend>();
  for (const oven of t.kitchen.ovens) {
    for (const use of usesOf(t, oven, true)) {
      if (seen.has(use.need)) continue;
      seen.add(use.need);
      const candidates = t.ovens.flatMap((legend) =>
        usesOf(t, legend.oven, false).map((heated) => ({ legend, heated })),
      );
      const after = builder.choice(
        `afterheat:${use.need.task}`,
        candidates.map(({ legend, heated }) => `${legend.oven.id} after ${heated.need.task}`),
      );
      if (candidates.length === 0) {
        if (use.need.ways.length < use.step.wayOptions.length) {
          // There is another way of doing it.
          builder.forbid(whenWays(use.step, use.need));
          continue;
        }
        t.faults.push({
          document: `component ${use.step.instance.component.id}`,
          path: `steps[${use.step.instance.component.steps.indexOf(use.step.instance.step)}].needs`,
          found: 'afterheat of an oven that nothing heats',
          wanted: 'another step that heats the oven before',
          mend: 'add a dish from the oven to the session, or an alternative way with its own heat',
        });
        continue;
      }
      candidates.forEach(({ legend, heated }, index) =>
        bindAfterheat(t, legend, heated, use.need, use.oven, whenWays(use.step, use.need), picks(after, index)),
      );
    }
  }
}

function bindAfterheat(
  t: Translation,
  legend: Translation['ovens'][number],
  heated: OvenUse,
  need: NeedLegend,
  window: OvenNeed,
  exists: readonly Literal[],
  follows: readonly Literal[],
): void {
  const { builder } = t;
  const { oven, fire } = legend;
  need.options.forEach((option, index) => {
    // Elsewhere than in the oven that it follows.
    if (option.place.oven !== oven.id) builder.forbid([...exists, ...follows, ...picks(need.choice, index)]);
  });
  heated.need.options.forEach((_, index) => {
    if (!heated.options.includes(index)) builder.forbid([...exists, ...follows, ...picks(heated.need.choice, index)]);
  });
  // The heated use must exist: forbid each way or split under which it does not.
  for (const literal of whenWays(heated.step, heated.need)) {
    const options = t.builder.choices.find((choice) => choice.id === literal.choice)!.options;
    const others = options.map((_, index) => index).filter((index) => !literal.options.includes(index));
    if (others.length > 0) builder.forbid([...exists, ...follows, { choice: literal.choice, options: others }]);
  }
  const dial = dialWindow(oven, heated.oven.leastC, heated.oven.mostC)!;
  const span = afterheatSpan(ovenHeat(oven, t.kitchen.roomC), dial, window);
  if (span === null || minutesUp(span.from) > builder.horizon) {
    builder.forbid([...exists, ...follows]);
    return;
  }
  const [wait, until] = [minutesUp(span.from), Math.min(builder.horizon, minutesDown(span.until))];
  const requirement = afterheatName(need.task);
  // Done in another way, it follows nothing: it may even be the last that the oven is on for.
  const when = [...exists, ...follows];
  builder.exactly(end(heated.need.task), end(fire), 0, when);
  builder.atLeast(end(heated.need.task), start(need.task), wait, when, requirement);
  builder.atMost(end(heated.need.task), end(need.task), until, when, requirement);
}
