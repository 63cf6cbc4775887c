/**
 * The plan document: start times and places for every step of a session, with frozen copies of what it was made from, so that
 * it can be checked, drawn and cooked alone. All times are whole minutes from the start of the session.
 */
import * as v from 'valibot';
import { ChainLink } from './chain.ts';
import { Component } from './component.ts';
import { Kitchen, OvenFunction } from './kitchen.ts';
import { SafetyRules } from './safety-rules.ts';
import { Intent, Session } from './session.ts';
import { Celsius, Id, Millilitres, Name, ZonedStart, numberBetween, wholeBetween } from './values.ts';

const Minute = wholeBetween(-30_000, 200_000, 'minutes');

export const PlannedSegment = v.strictObject({
  hands: v.picklist(['on', 'off']),
  name: v.optional(Name),
  start: Minute,
  end: Minute,
  /** Who does it; only for hands-on. */
  person: v.optional(Id),
  /** A look or turn within a hands-off segment: lies inside the span of that segment. */
  check: v.optional(v.boolean()),
  probe: v.optional(v.boolean()),
});
export type PlannedSegment = v.InferOutput<typeof PlannedSegment>;

export const PlaceKind = v.picklist([
  'rack',
  'burner',
  'pan',
  'tray',
  'board',
  'bowl',
  'tool',
  'kettle',
  'pool',
  'appliance',
  'sink',
  'resting',
  'cooling',
  'drying',
]);
export type PlaceKind = v.InferOutput<typeof PlaceKind>;

export const PlannedPlace = v.strictObject({
  kind: PlaceKind,
  /** Id of the thing: the rack, burner, pan, board, the pool… */
  id: Id,
  /** The rack's oven. */
  oven: v.optional(Id),
  from: Minute,
  until: Minute,
  /** % of a rack, places of a shelf, mL of an insert or of water drawn, tiers; 1 for a single thing. */
  amount: numberBetween(0, 1_000_000, '(amount)'),
  /** For a pool: how it is used, and which of its boils serves. */
  how: v.optional(v.picklist(['boil', 'steam', 'draw'])),
  boil: v.optional(wholeBetween(1, 3, '(boil)')),
  /** For a rack: the oven's function and window there, and whether it is afterheat. */
  function: v.optional(OvenFunction),
  leastC: v.optional(Celsius),
  mostC: v.optional(Celsius),
  afterheat: v.optional(v.boolean()),
});
export type PlannedPlace = v.InferOutput<typeof PlannedPlace>;

/**
 * What a planned step is: a step of a component; one the planner added (a wash, filling or refilling a pool, putting it back on
 * the heat, emptying it, preheating); or one the session asks for (packing, cooling and putting away boxes, the last clearing).
 */
export const PlannedKind = v.picklist(['step', 'wash', 'water', 'preheat', 'packing', 'clearing']);

export const PlannedStep = v.strictObject({
  /** Unique in the plan, such as `lentils/boil`, `lentils/boil.2` (second batch), `wash/board-1.1`. */
  id: v.string(),
  kind: PlannedKind,
  /** Component id; for added work `boxes`, `kitchen`, or the pool's or oven's or washed thing's id. */
  component: Id,
  /** Step id within the component; for added work `pack`, `cool`, `put-away`, `clear`, `wash`, `fill`, `reboil`, `change`, `empty`, `preheat`. */
  step: Id,
  name: Name,
  /** 1 unless the component is cooked in several batches. */
  batch: wholeBetween(1, 3, '(batch)'),
  /** Portions in this batch. */
  portions: v.optional(wholeBetween(1, 2_000, 'portions')),
  /** Which piece of an interrupted step, from 1; absent: done in one go. */
  piece: v.optional(wholeBetween(1, 5, '(piece)')),
  /** 0: the step as written; n: its n-th alternative. */
  alternative: wholeBetween(0, 20, '(alternative)'),
  start: Minute,
  end: Minute,
  segments: v.array(PlannedSegment),
  places: v.array(PlannedPlace),
  /** Counted in the finish. */
  inFinish: v.boolean(),
  /** Minutes by which it may start later, with what hangs on it, before the finish does (or the latest start is missed). */
  slack: v.optional(wholeBetween(0, 200_000, 'minutes')),
});
export type PlannedStep = v.InferOutput<typeof PlannedStep>;

const PIECE = /~\d+$/;
/** Id of the step that a planned step is, or is a piece of: `lentils/peel` of `lentils/peel~2`. */
export const wholeId = ({ id }: { readonly id: string }): string => id.replace(PIECE, '');

/** Equipment kept across steps (a component's `holds`). */
export const PlannedHold = v.strictObject({
  component: Id,
  hold: Id,
  batch: wholeBetween(1, 3, '(batch)'),
  place: PlannedPlace,
});
export type PlannedHold = v.InferOutput<typeof PlannedHold>;

export const OvenProgramme = v.strictObject({
  oven: Id,
  /** Turns of the dial, in order; `celsius: null` is off. From each minute on the oven heats or falls towards it. */
  settings: v.array(v.strictObject({ minute: Minute, celsius: v.nullable(Celsius), function: OvenFunction })),
  /** Its temperature, for drawing: between two entries a straight line. */
  line: v.array(v.strictObject({ minute: numberBetween(0, 200_000, 'minutes'), celsius: Celsius })),
});
export type OvenProgramme = v.InferOutput<typeof OvenProgramme>;

export const PoolCourse = v.strictObject({
  pool: Id,
  pan: Id,
  /** The pan is the pool's from filling to emptying. */
  from: Minute,
  until: Minute,
  boils: v.array(
    v.strictObject({
      boil: wholeBetween(1, 3, '(boil)'),
      /** `cold`: first filling; `again`: the same water back on the heat; `fresh`: poured away and filled anew. */
      water: v.picklist(['cold', 'again', 'fresh']),
      burner: Id,
      onHeat: Minute,
      boilsAt: Minute,
      offHeat: Minute,
      /** Hot enough to soak in until then. */
      hotUntil: Minute,
    }),
  ),
  /** Level after each change, mL. */
  level: v.array(v.strictObject({ minute: Minute, ml: Millilitres })),
});
export type PoolCourse = v.InferOutput<typeof PoolCourse>;

export const PlannedDay = v.strictObject({
  component: Id,
  step: Id,
  name: Name,
  /** Clock minutes from the session's start; negative: before it. */
  start: wholeBetween(-30_000, 200_000, 'minutes'),
  /** When its waiting ends (an ahead step: the start of the step that it is for). */
  until: wholeBetween(-30_000, 200_000, 'minutes'),
  handsOnMinutes: wholeBetween(0, 10_000, 'minutes'),
});
export type PlannedDay = v.InferOutput<typeof PlannedDay>;

/** What a step turned out to be, where that differs from what its component says. */
export const LivedStep = v.strictObject({
  /** Id of the planned step; of interrupted work, of the step as a whole. */
  step: v.string(),
  /** Left out: it takes no time, nobody's hands and no place. */
  skipped: v.optional(v.boolean()),
  /** Minutes that its segments took or will take, checks apart, from the first on; null: as the component says. */
  minutes: v.array(v.nullable(wholeBetween(0, 10_000, 'minutes'))),
  /** Of interrupted work: minutes of the pieces that were told of themselves, from the first on; null: as planned. */
  pieces: v.optional(v.array(v.nullable(wholeBetween(0, 10_000, 'minutes')))),
});
export type LivedStep = v.InferOutput<typeof LivedStep>;

/** The part of a session that is over, told by the cooks: the plan was made again at that minute. */
export const Lived = v.strictObject({ now: Minute, steps: v.array(LivedStep) });
export type Lived = v.InferOutput<typeof Lived>;

export const TierId = v.picklist(['finish', 'latest-start', 'others-finish', 'waiting', 'energy', 'calm']);
export type TierId = v.InferOutput<typeof TierId>;

export const PlanTier = v.strictObject({
  id: TierId,
  /** What the number counts: minutes, weighted minutes, Wh, changes. */
  unit: v.picklist(['min', 'weighted min', 'Wh', 'changes']),
  value: wholeBetween(0, 2_000_000_000, '(value)'),
  bound: wholeBetween(0, 2_000_000_000, '(bound)'),
  proven: v.boolean(),
});
export type PlanTier = v.InferOutput<typeof PlanTier>;

export const Plan = v.strictObject({
  kind: v.literal('plan'),
  version: v.literal(1),
  id: Id,
  name: Name,
  start: ZonedStart,
  session: Session,
  kitchen: Kitchen,
  components: v.array(Component),
  /** Ids of the people who cook in this plan. */
  crew: v.array(Id),
  /** The safety rules that it was made under; absent in older plans: the strictest of the built-in ones hold. */
  rules: v.optional(SafetyRules),
  intent: Intent,
  made: v.strictObject({
    seed: wholeBetween(0, 4_294_967_295, '(seed)'),
    effort: numberBetween(0, 1e15, '(work units)'),
  }),
  status: v.picklist(['proven', 'bounded']),
  stopped: v.boolean(),
  tiers: v.array(PlanTier),
  /** End of the last hands-on segment apart from putting away. */
  finishMinutes: Minute,
  /** Proved lower bound of the first tier. */
  boundMinutes: Minute,
  /** End of everything, the tail too. */
  allAwayMinutes: Minute,
  handsOnMinutes: Minute,
  steps: v.array(PlannedStep),
  holds: v.array(PlannedHold),
  ovens: v.array(OvenProgramme),
  pools: v.array(PoolCourse),
  ahead: v.array(PlannedDay),
  later: v.array(PlannedDay),
  /** Why this long: the links that decide the finish or the latest start, first to last. Absent in plans that were not asked. */
  bindingChain: v.optional(v.array(ChainLink)),
  /** Absent: nothing has been cooked yet, or all went as planned. */
  lived: v.optional(Lived),
});
export type Plan = v.InferOutput<typeof Plan>;
