/** The session document: components with amounts, who cooks, when, in which kitchen, for which boxes. */
import * as v from 'valibot';
import { Cools } from './cools.ts';
import { Work } from './step.ts';
import {
  Avoidable,
  Count,
  Duration,
  Id,
  Millilitres,
  Name,
  Note,
  Places,
  Portions,
  ZonedStart,
  wholeBetween,
} from './values.ts';

export const Person = v.strictObject({
  id: Id,
  name: Name,
  /** What they may do beyond work open to all, such as "adult". */
  can: v.array(Id),
  /** Absent: there all through the session. */
  there: v.optional(v.array(v.strictObject({ from: Duration, until: Duration }))),
});
export type Person = v.InferOutput<typeof Person>;

export const Pool = v.strictObject({
  id: Id,
  name: Name,
  waterMl: Millilitres,
  /** Never less than this stays in it while it is used, mL. */
  leastMl: Millilitres,
  salted: v.optional(v.boolean()),
  /** How often it may come to the boil in all: first from cold, then again after it cooled or with fresh water. */
  boils: v.optional(wholeBetween(1, 3, 'boils')),
});
export type Pool = v.InferOutput<typeof Pool>;

export const Eater = v.strictObject({
  id: Id,
  name: Name,
  /** Coeliacs avoid `gluten`; whoever may eat barley but not wheat avoids `wheat`. */
  avoids: v.array(Avoidable),
  boxes: Count,
  eats: v.optional(v.array(Id)),
});
export type Eater = v.InferOutput<typeof Eater>;

export const Intent = v.picklist(
  ['soonest', 'freshest', 'thriftiest', 'calmest'],
  'one of soonest, freshest, thriftiest, calmest',
);
export type Intent = v.InferOutput<typeof Intent>;

/** How far a length may be from the planned one, % less and % more. */
export const Spread = v.strictObject({ early: wholeBetween(0, 100, '%'), late: wholeBetween(0, 400, '%') });
export type Spread = v.InferOutput<typeof Spread>;

/** Hands-on work; what boils or simmers; what is in an oven or appliance; an oven that heats or cools; food that cools; food that rests or soaks. */
export const SpreadKind = v.picklist(['work', 'boiling', 'roasting', 'heating', 'cooling', 'resting']);
export type SpreadKind = v.InferOutput<typeof SpreadKind>;

export const Session = v.strictObject({
  kind: v.literal('session'),
  version: v.literal(1),
  id: Id,
  name: Name,
  note: v.optional(Note),
  start: ZonedStart,
  /** Everything, the tail too, ends within this. */
  longest: Duration,
  /** Ids of the kitchens it can be cooked in; the first unless another is asked for. */
  kitchens: v.pipe(v.array(Id), v.nonEmpty('at least one kitchen')),
  people: v.pipe(v.array(Person), v.nonEmpty('at least one person')),
  /** Named groups of them; the first unless another is asked for. Absent: everybody. */
  crews: v.optional(
    v.array(v.strictObject({ id: Id, name: Name, people: v.pipe(v.array(Id), v.nonEmpty('at least one person')) })),
  ),
  dishes: v.pipe(v.array(v.strictObject({ component: Id, portions: Portions })), v.nonEmpty('at least one dish')),
  pools: v.optional(v.array(Pool)),
  eaters: v.optional(v.array(Eater)),
  /** Filling boxes once every dish is ready, cooling them, and putting them away. */
  packing: v.optional(
    v.strictObject({
      name: Name,
      boxes: Count,
      work: Work,
      /** Work is per portion: one portion is one box. */
      /** `cools` says how the food in a box cools; the minutes that it takes are added to shortest and longest. */
      cooling: v.optional(
        v.strictObject({ shortest: Duration, longest: Duration, places: Places, cools: v.optional(Cools) }),
      ),
      putAway: v.optional(Work),
      /** Dishes that do not go into the boxes. */
      without: v.optional(v.array(Id)),
      interruptible: v.optional(v.boolean()),
    }),
  ),
  /** On the table at this offset from the start, each dish done within the allowance before it. */
  table: v.optional(
    v.strictObject({
      at: Duration,
      dishes: v.pipe(v.array(Id), v.nonEmpty('at least one dish')),
      allowance: v.optional(Duration),
      othersMayRunPast: v.optional(v.boolean()),
    }),
  ),
  /** Times when a thing of the kitchen is not there, offsets from the start. */
  absences: v.optional(v.array(v.strictObject({ what: Id, from: Duration, until: Duration, why: v.optional(Name) }))),
  /** Fixed by the user: when a step starts, who does it, where. */
  pins: v.optional(
    v.array(
      v.strictObject({
        component: Id,
        step: Id,
        batch: v.optional(wholeBetween(1, 3, '(batch)')),
        start: v.optional(Duration),
        person: v.optional(Id),
        /** An oven, rack, burner, pan, board… by id. */
        place: v.optional(Id),
      }),
    ),
  ),
  /** A last tidy-up by hand at the sink, after all other work that is not putting away. */
  clearing: v.optional(v.strictObject({ work: Work })),
  intent: v.optional(Intent),
  /** Id of the safety rules that hold; absent, or `strictest`: the strictest of the built-in ones. */
  authority: v.optional(Id),
  /** How sure lengths are, by kind of work; absent or in part: the usual. */
  spreads: v.optional(
    v.strictObject({
      work: v.optional(Spread),
      boiling: v.optional(Spread),
      roasting: v.optional(Spread),
      heating: v.optional(Spread),
      cooling: v.optional(Spread),
      resting: v.optional(Spread),
    }),
  ),
});
export type Session = v.InferOutput<typeof Session>;
