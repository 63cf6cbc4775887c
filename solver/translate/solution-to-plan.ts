/** A solution of the problem, read back as a plan in the kitchen's own words. */
import type { Literal } from '../engine/problem.ts';
import type { Solution, TierOutcome } from '../engine/outcome.ts';
import { ovenHeat } from '../heat/oven-heat.ts';
import { ovenProgramme, type WindowUse } from '../heat/oven-programme.ts';
import { minutesDown, minutesUp } from '../kitchen/scaling.ts';
import type {
  OvenProgramme,
  Plan,
  PlannedDay,
  PlannedHold,
  PlannedPlace,
  PlannedSegment,
  PlannedStep,
  PlanTier,
  PoolCourse,
  TierId,
} from '../kitchen/plan.ts';
import { durationMinutes } from '../kitchen/values.ts';
import { boilMinutesOnBurner, reboilMinutes, staysHotMinutes } from '../water/boil.ts';
import type { NeedLegend, Operation, PoolLegend, StepLegend, Translated, Translation } from './legend.ts';
import { legendsOf } from './orders.ts';

interface Interval {
  readonly start: number;
  readonly end: number;
}

/** Looks up what a solution says of tasks and choices by their ids. */
class Reading {
  readonly #tasks: ReadonlyMap<string, Interval | null>;
  readonly #choices: ReadonlyMap<string, number>;

  constructor({ problem }: Translated, solution: Solution) {
    this.#tasks = new Map(problem.tasks.map((task, index) => [task.id, solution.tasks[index] ?? null]));
    this.#choices = new Map(problem.choices.map((choice, index) => [choice.id, solution.choices[index]!]));
  }

  at(task: string): Interval | null {
    return this.#tasks.get(task) ?? null;
  }

  sure(task: string): Interval {
    const interval = this.at(task);
    if (interval === null) throw new Error(`task ${task} is absent`);
    return interval;
  }

  option(choice: string | null): number {
    return choice === null ? 0 : (this.#choices.get(choice) ?? 0);
  }

  person(operation: Operation): string {
    return operation.who.people[this.option(operation.who.choice)]!;
  }

  holds(literals: readonly Literal[]): boolean {
    return literals.every((literal) => literal.options.includes(this.option(literal.choice)));
  }
}

const segmentOf = (reading: Reading, operation: Operation): PlannedSegment => ({
  hands: 'on',
  ...(operation.name === null ? {} : { name: operation.name }),
  ...reading.sure(operation.task),
  person: reading.person(operation),
  ...(operation.check ? { check: true } : {}),
  ...(operation.probe ? { probe: true } : {}),
});

function placeOf(reading: Reading, need: NeedLegend): PlannedPlace | null {
  const interval = reading.at(need.task);
  const option = need.options[reading.option(need.choice)];
  if (interval === null || option === undefined) return null;
  return { ...option.place, from: interval.start, until: interval.end };
}

/** A step's planned form: one entry, or one for each piece. */
function plannedSteps(reading: Reading, legend: StepLegend): readonly PlannedStep[] {
  if (!reading.holds(legend.when)) return [];
  const { instance, dish } = legend;
  const alternative = legend.wayOptions[reading.option(legend.wayChoice)]!;
  const places = legend.needs
    .filter((need) => need.ways.includes(alternative))
    .flatMap((need) => placeOf(reading, need) ?? []);
  const common = {
    kind: dish.kind,
    component: instance.component.id,
    step: instance.step.id,
    // A way is named by what is other in it, such as `with fan`.
    name: alternative === 0 ? instance.step.name : `${instance.step.name}, ${instance.ways[alternative]!.name}`,
    batch: instance.batch,
    portions: instance.portions,
    alternative,
    inFinish: instance.inFinish,
  };
  if (legend.pieces.length > 0) {
    const present = legend.pieces.filter((piece) => reading.at(piece.task) !== null);
    return present.map((piece, index): PlannedStep => {
      const interval = reading.sure(piece.task);
      return {
        ...common,
        id: present.length === 1 ? instance.id : `${instance.id}~${index + 1}`,
        ...(present.length === 1 ? {} : { piece: index + 1 }),
        ...interval,
        segments: [segmentOf(reading, piece)],
        // Places are held through all pieces; they are told with the first.
        places: index === 0 ? places : [],
      };
    });
  }
  const shape = legend.shapes.find((each) => each.ways.includes(alternative))!;
  const point = (at: (typeof shape.boundaries)[number]): number => (at === 'origin' ? 0 : reading.sure(at.task)[at.at]);
  const segments = shape.parts.flatMap((part, index): PlannedSegment[] => {
    const operations = shape.operations[index]!.map((operation) => segmentOf(reading, operation));
    if (part.hands === 'on') return operations;
    const own = instance.ways[alternative]!.parts[index]!;
    return [
      {
        hands: 'off',
        ...(own.name === null ? {} : { name: own.name }),
        start: point(shape.boundaries[index]!),
        end: point(shape.boundaries[index + 1]!),
      },
      ...operations,
    ];
  });
  return [{ ...common, id: instance.id, start: point(legend.start), end: point(legend.end), segments, places }];
}

/** Work that the planner added: one hands-on segment. */
function addedWork(
  reading: Reading,
  operation: Operation,
  step: Pick<PlannedStep, 'id' | 'kind' | 'component' | 'step' | 'name'>,
  places: readonly Omit<PlannedPlace, 'from' | 'until'>[],
): PlannedStep {
  const interval = reading.sure(operation.task);
  return {
    ...step,
    batch: 1,
    alternative: 0,
    ...interval,
    segments: [{ hands: 'on', ...interval, person: reading.person(operation) }],
    places: places.map((place) => ({ ...place, from: interval.start, until: interval.end })),
    inFinish: true,
  };
}

const SINK = { kind: 'sink', id: 'sink', amount: 1 } as const;

function washes(t: Translation, reading: Reading): readonly PlannedStep[] {
  return t.washes.flatMap((wash): PlannedStep[] => {
    const option = reading.option(wash.choice);
    if (option === 0) return [];
    const operation: Operation = {
      task: wash.task,
      who: { choice: null, people: [wash.people[option - 1]!] },
      minutes: 0,
      name: null,
      probe: false,
      check: false,
    };
    const thing = wash.place?.id ?? wash.people[option - 1]!;
    const name = wash.place === null ? 'wash hands' : `wash ${nameOfThing(t, wash.place.id)}`;
    return [
      addedWork(reading, operation, { id: wash.task, kind: 'wash', component: thing, step: 'wash', name }, [
        SINK,
        ...(wash.place === null ? [] : [wash.place]),
      ]),
    ];
  });
}

function nameOfThing(t: Translation, id: string): string {
  const { pans, trays, boards, bowls, tools } = t.kitchen;
  return [...pans, ...trays, ...boards, ...bowls, ...tools].find((thing) => thing.id === id)?.name ?? id;
}

function poolSteps(reading: Reading, legend: PoolLegend): readonly PlannedStep[] {
  const { pool } = legend;
  const step = (id: string, name: string) => ({
    id: `${pool.id}/${id}`,
    kind: 'water' as const,
    component: pool.id,
    step: id.split('.')[0]!,
    name,
  });
  return [
    ...legend.boils.flatMap((boil, index): PlannedStep[] => {
      if (boil.fill !== null)
        return [addedWork(reading, boil.fill, step('fill', `fill ${pool.name}, on the heat`), [])];
      const option = reading.option(boil.choice);
      if (option === 1)
        return [addedWork(reading, boil.again!, step(`reboil.${index + 1}`, `${pool.name} back on the heat`), [])];
      if (option === 2)
        return [addedWork(reading, boil.fresh!, step(`change.${index + 1}`, `fresh water for ${pool.name}`), [SINK])];
      return [];
    }),
    addedWork(reading, legend.empty, step('empty', `empty ${pool.name}`), [SINK]),
  ];
}

function poolCourse(t: Translation, reading: Reading, legend: PoolLegend, steps: readonly PlannedStep[]): PoolCourse {
  const { pool } = legend;
  const span = reading.sure(legend.span);
  const pan = t.kitchen.pans.find((candidate) => candidate.id === legend.pans[reading.option(legend.panChoice)])!;
  const burner = t.kitchen.hob.burners.find(
    (candidate) => candidate.id === legend.burners[reading.option(legend.burnerChoice)],
  )!;
  const draws = steps.flatMap((step) =>
    step.places.filter((place) => place.kind === 'pool' && place.id === pool.id && place.how === 'draw'),
  );
  const level: { minute: number; ml: number }[] = [];
  const filled = reading.sure(legend.boils[0]!.fill!.task).end;
  const boils = legend.boils.flatMap((boil, index): PoolCourse['boils'] => {
    const heat = reading.at(boil.heat);
    if (heat === null) return [];
    const water = boil.choice === null ? 'cold' : reading.option(boil.choice) === 1 ? 'again' : 'fresh';
    const minutes =
      water === 'again'
        ? reboilMinutes(t.kitchen, burner, pan, pool.waterMl, pan.lid)
        : boilMinutesOnBurner(t.kitchen, burner, pan, pool.waterMl, pan.lid);
    return [
      {
        boil: index + 1,
        water,
        burner: burner.id,
        onHeat: heat.start,
        boilsAt: heat.start + minutes,
        offHeat: heat.end,
        hotUntil: heat.end + staysHotMinutes(t.kitchen, pan, pool.leastMl),
      },
    ];
  });
  const events = [
    { minute: filled, fill: true, ml: pool.waterMl },
    ...boils
      .filter((boil) => boil.water === 'fresh')
      .map((boil) => ({ minute: boil.onHeat, fill: true, ml: pool.waterMl })),
    ...draws.map((draw) => ({ minute: draw.from, fill: false, ml: draw.amount })),
    { minute: reading.sure(legend.empty.task).end, fill: true, ml: 0 },
  ].sort((a, b) => a.minute - b.minute || Number(b.fill) - Number(a.fill));
  let now = 0;
  for (const event of events) {
    now = event.fill ? event.ml : now - event.ml;
    if (level.at(-1)?.minute === event.minute) level.pop();
    level.push({ minute: event.minute, ml: now });
  }
  return { pool: pool.id, pan: pan.id, from: span.start, until: span.end, boils, level };
}

/** Ovens: when the heat is on, the turns of the dial, and a preheating entry until the first thing goes in. */
function ovens(
  t: Translation,
  reading: Reading,
  steps: readonly PlannedStep[],
  until: number,
): { readonly programmes: readonly OvenProgramme[]; readonly preheats: readonly PlannedStep[] } {
  const programmes: OvenProgramme[] = [];
  const preheats: PlannedStep[] = [];
  for (const legend of t.ovens) {
    const fire = reading.at(legend.fire);
    const uses: WindowUse[] = steps.flatMap((step) =>
      step.places
        .filter((place) => place.kind === 'rack' && place.oven === legend.oven.id && place.afterheat !== true)
        .map((place) => ({
          start: place.from,
          end: place.until,
          function: place.function!,
          leastC: place.leastC!,
          mostC: place.mostC!,
        })),
    );
    if (fire === null || uses.length === 0) continue;
    const programme = ovenProgramme(
      ovenHeat(legend.oven, t.kitchen.roomC),
      uses,
      { from: fire.start, until: fire.end },
      until,
    );
    if (programme !== null) programmes.push(programme);
    const first = Math.min(...uses.map((use) => use.start));
    if (first > fire.start) {
      preheats.push({
        id: `${legend.oven.id}/preheat`,
        kind: 'preheat',
        component: legend.oven.id,
        step: 'preheat',
        name: `${legend.oven.name} heats`,
        batch: 1,
        alternative: 0,
        start: fire.start,
        end: first,
        segments: [{ hands: 'off', start: fire.start, end: first }],
        places: [],
        inFinish: false,
      });
    }
  }
  return { programmes, preheats };
}

function holdsOf(t: Translation, reading: Reading): readonly PlannedHold[] {
  return t.holds.flatMap((legend): PlannedHold[] => {
    const interval = reading.at(legend.task);
    if (interval === null) return [];
    const option = legend.options[reading.option(legend.choice)]!;
    return [
      {
        component: legend.instance.component.id,
        hold: legend.instance.hold.id,
        batch: legend.instance.batch,
        place: { ...option.place, from: interval.start, until: interval.end },
      },
    ];
  });
}

function daysOf(
  t: Translation,
  reading: Reading,
): { readonly ahead: readonly PlannedDay[]; readonly later: readonly PlannedDay[] } {
  const components = [...new Set(t.steps.map((step) => step.dish.component))];
  const ahead = components.flatMap((component) =>
    (component.ahead ?? []).map((step): PlannedDay => {
      const starts = legendsOf(t, component.id, step.until)
        .filter((legend) => reading.holds(legend.when))
        .map((legend) => reading.sure(legend.start.task)[legend.start.at as 'start']);
      return {
        component: component.id,
        step: step.id,
        name: step.name,
        start: t.wallOffset(-step.daysBefore, step.at),
        until: Math.min(...starts),
        handsOnMinutes: minutesUp(durationMinutes(step.hands)),
      };
    }),
  );
  const later = components.flatMap((component) =>
    (component.later ?? []).map((step): PlannedDay => {
      const start = t.wallOffset(step.daysAfter, step.at);
      const handsOnMinutes = minutesUp(durationMinutes(step.hands));
      return {
        component: component.id,
        step: step.id,
        name: step.name,
        start,
        until: start + handsOnMinutes,
        handsOnMinutes,
      };
    }),
  );
  const byStart = (a: PlannedDay, b: PlannedDay): number => a.start - b.start || a.step.localeCompare(b.step);
  return { ahead: ahead.sort(byStart), later: later.sort(byStart) };
}

const UNITS: Readonly<Record<TierId, PlanTier['unit']>> = {
  finish: 'min',
  'latest-start': 'min',
  'others-finish': 'min',
  waiting: 'weighted min',
  energy: 'Wh',
  calm: 'changes',
};

/** What is known of a tier, with what its number counts. */
export const planTier = ({ id, value, bound, proven }: TierOutcome): PlanTier => ({
  id: id as TierId,
  unit: UNITS[id as TierId],
  value,
  bound,
  proven,
});

export interface PlanFrame {
  readonly id: string;
  readonly name: string;
  readonly seed: number;
  readonly effort: number;
  readonly kind: 'proven' | 'bounded';
  readonly stopped: boolean;
  readonly tiers: readonly TierOutcome[];
}

/** Reads a solution back. The solution must be one of the problem's own. */
export function solutionToPlan(translated: Translated, solution: Solution, frame: PlanFrame): Plan {
  const { translation: t } = translated;
  const reading = new Reading(translated, solution);
  const own = [
    ...t.steps.flatMap((legend) => plannedSteps(reading, legend)),
    ...washes(t, reading),
    ...t.pools.flatMap((pool) => poolSteps(reading, pool)),
  ];
  const allAwayMinutes = Math.max(0, ...own.map((step) => step.end));
  const { programmes, preheats } = ovens(t, reading, own, allAwayMinutes);
  const steps = [...own, ...preheats].sort((a, b) => a.start - b.start || a.end - b.end || (a.id < b.id ? -1 : 1));
  const handsOn = steps.flatMap((step) =>
    step.segments.filter((segment) => segment.hands === 'on').map((segment) => ({ step, segment })),
  );
  const finishMinutes = Math.max(0, ...handsOn.filter(({ step }) => step.inFinish).map(({ segment }) => segment.end));
  const { ahead, later } = daysOf(t, reading);
  const used = new Set(t.session.dishes.map((dish) => dish.component));
  return {
    kind: 'plan',
    version: 1,
    id: frame.id,
    name: frame.name,
    start: t.session.start,
    session: t.session,
    kitchen: t.kitchen,
    components: t.components.filter((component) => used.has(component.id)),
    crew: t.crew.map((person) => person.id),
    rules: t.rules,
    intent: t.intent,
    made: { seed: frame.seed, effort: frame.effort },
    status: frame.kind,
    stopped: frame.stopped,
    tiers: frame.tiers.map(planTier),
    finishMinutes,
    boundMinutes: minutesDown(
      frame.tiers.find((tier) => tier.id === 'finish' || tier.id === 'latest-start')?.bound ?? 0,
    ),
    allAwayMinutes,
    handsOnMinutes: handsOn.reduce((sum, { segment }) => sum + segment.end - segment.start, 0),
    steps,
    holds: [...holdsOf(t, reading)],
    ovens: [...programmes],
    pools: t.pools.map((pool) => poolCourse(t, reading, pool, steps)),
    ahead: [...ahead],
    later: [...later],
  };
}
