/** Steps of a component: attention minute by minute, equipment, order. */
import * as v from 'valibot';
import { Cools } from './cools.ts';
import { OvenFunction } from './kitchen.ts';
import {
  Celsius,
  Duration,
  Grams,
  Id,
  Millilitres,
  Name,
  Note,
  Percent,
  RawKind,
  numberBetween,
  wholeBetween,
} from './values.ts';

/**
 * Hands-on minutes that grow with the amount: `fixed + perKg × kg + perPiece × pieces + perPortion × portions`, rounded up to
 * whole minutes. Kilograms and pieces are those of the ingredient `of`; kilograms without `of` are of all ingredients.
 */
export const Work = v.strictObject({
  fixed: v.optional(Duration),
  perKg: v.optional(Duration),
  perPiece: v.optional(Duration),
  perPortion: v.optional(Duration),
  of: v.optional(Id),
});

export type Work = v.InferOutput<typeof Work>;

/** What the hands touch: the food itself (the default), or only the thing that it is in: a tray slid in, a basket lowered. */
export const Handles = v.picklist(['food', 'things'], 'food or things');

/** A look or a turn on the way: hands-on `work` that starts `at` minutes into the hands-off segment, give or take `within`. */
export const Check = v.strictObject({
  name: Name,
  at: Duration,
  within: Duration,
  work: Work,
  who: v.optional(Id),
  probe: v.optional(v.boolean()),
  handles: v.optional(Handles),
});

export const OnSegment = v.strictObject({
  hands: v.literal('on'),
  name: v.optional(Name),
  work: Work,
  /** What a person must be able to do for it, one of the person's `can`. */
  who: v.optional(Id),
  /** The core temperature is read with a probe in this segment. */
  probe: v.optional(v.boolean()),
  handles: v.optional(Handles),
});

/** Goes by itself until a hand ends it. */
export const OffSegment = v.strictObject({
  hands: v.literal('off'),
  name: v.optional(Name),
  /** Default: none, where `boilMl` or `cools` is given. */
  shortest: v.optional(Duration),
  /** Default: equal to the shortest. */
  longest: v.optional(Duration),
  /** Cold water brought to the boil here; its minutes on the chosen burner or kettle are added to shortest and longest. Grows with the amount. */
  boilMl: v.optional(Millilitres),
  /** Food that cools here; the minutes that it takes are added to shortest and longest. */
  cools: v.optional(Cools),
  checks: v.optional(v.array(Check)),
});
export const Segment = v.variant('hands', [OnSegment, OffSegment]);
export type Segment = v.InferOutput<typeof Segment>;

/** The segments through which a need holds, by number from 0, both included; absent: the whole step. */
const during = {
  during: v.optional(v.strictObject({ from: wholeBetween(0, 20, 'segments'), to: wholeBetween(0, 20, 'segments') })),
};

export const Need = v.variant('use', [
  v.strictObject({
    use: v.literal('oven'),
    ...during,
    function: OvenFunction,
    /** All through the step the oven is within this window. */
    leastC: Celsius,
    mostC: Celsius,
    /** Room on the rack, % of one rack. */
    share: Percent,
    /** May go in while the oven is still heating. */
    coldStart: v.optional(v.boolean()),
    /** Only in the switched-off oven, on its falling temperature. */
    afterheat: v.optional(v.boolean()),
    /** Drips or splashes on what stands below. */
    drips: v.optional(v.boolean()),
    /**
     * Cold food for which the oven must make up: the minutes of that are added to the first hands-off segment in it. Food grows
     * with the amount (absent: all of the component), the metal under it does not.
     */
    load: v.optional(v.strictObject({ massG: v.optional(Grams), fromC: Celsius, trayG: v.optional(Grams) })),
  }),
  /** A burner under the pan that this step, or a hold around it, has. */
  v.strictObject({ use: v.literal('burner'), ...during, heat: v.picklist(['full', 'simmer'], 'full or simmer') }),
  v.strictObject({ use: v.literal('pan'), ...during, leastMl: Millilitres, lid: v.optional(v.boolean()) }),
  v.strictObject({ use: v.literal('tray'), ...during }),
  v.strictObject({ use: v.literal('board'), ...during }),
  v.strictObject({ use: v.literal('bowl'), ...during, leastMl: Millilitres }),
  v.strictObject({ use: v.literal('tool'), ...during, kind: Id }),
  v.strictObject({ use: v.literal('kettle'), ...during, ml: Millilitres }),
  /** Boiled in the session's pool in an insert, steamed over it, or hot water ladled out of it at the start of the segments. */
  v.strictObject({
    use: v.literal('pool'),
    ...during,
    how: v.picklist(['boil', 'steam', 'draw'], 'one of boil, steam, draw'),
    /** Room in the insert (boil) or water taken (draw), mL; grows with the amount. */
    ml: v.optional(Millilitres),
    /** Tiers taken (steam). */
    tiers: v.optional(wholeBetween(1, 10, 'tiers')),
  }),
  v.strictObject({
    use: v.literal('appliance'),
    ...during,
    does: Id,
    /** Food comes hot out of it: a microwave or slow cooker, not a mixer. */
    heats: v.optional(v.boolean()),
  }),
  v.strictObject({ use: v.literal('sink'), ...during }),
  v.strictObject({
    use: v.literal('place'),
    ...during,
    place: v.picklist(['resting', 'cooling', 'drying'], 'one of resting, cooling, drying'),
    places: wholeBetween(1, 100, 'places'),
  }),
]);
export type Need = v.InferOutput<typeof Need>;
export type NeedUse = Need['use'];

export const After = v.strictObject({
  /** A step of this component, or `component/step` of another in the session. */
  step: v.pipe(
    v.string(),
    v.regex(/^[a-z0-9-]+(\/[a-z0-9-]+)?$/, 'a step such as "rinse", or "lentils/rinse" of another component'),
  ),
  /** Shortest gap from its end to this start; default none. */
  shortest: v.optional(Duration),
  /** Longest gap; absent: as long as you like. `PT0M`: at once. */
  longest: v.optional(Duration),
  /** The food waits past its best after this long; each further minute weighs `weight`. */
  best: v.optional(Duration),
  weight: v.optional(wholeBetween(1, 100, '(weight)')),
});

/** One way of doing a step: at another temperature, in another thing. */
const method = { segments: v.pipe(v.array(Segment), v.nonEmpty('at least one segment')), needs: v.array(Need) };
export const Alternative = v.strictObject({ name: Name, ...method });

export const Step = v.strictObject({
  id: Id,
  name: Name,
  note: v.optional(Note),
  ...method,
  /** Further ways of doing it; the planner takes one. */
  alternatives: v.optional(v.array(Alternative)),
  after: v.optional(v.array(After)),
  /** Only for one hands-on segment: may be done in up to `pieces` pieces of at least `least`. */
  interruptible: v.optional(
    v.strictObject({ pieces: v.optional(wholeBetween(2, 5, 'pieces')), least: v.optional(Duration) }),
  ),
  /** Ids of the ingredients that touch hands, board and vessels here; absent: all of the component's. */
  touches: v.optional(v.array(Id)),
  /** Raw meat, poultry, fish or egg among what it touches is cooked by now. */
  cooked: v.optional(v.boolean()),
  /** What it touches is eaten without further cooking, so it must not meet raw soil. */
  readyToEat: v.optional(v.boolean()),
  /** Cooks raw food through: its kind, the core temperature to be read, °C, and the hold there, s. */
  cooksThrough: v.optional(
    v.strictObject({
      raw: RawKind,
      /** Of meat: one uncut muscle, or minced; absent: taken for minced, of which more is asked. */
      cut: v.optional(v.picklist(['whole', 'minced'], 'whole or minced')),
      coreC: Celsius,
      holdSeconds: numberBetween(0, 36_000, 's'),
    }),
  ),
  /** Kept hot at or above this, for at most this long in all. */
  hotHold: v.optional(v.strictObject({ leastC: Celsius, longest: Duration })),
  /** Puts cooled food into fridge or freezer: not counted in the finish. */
  putsAway: v.optional(v.boolean()),
});
export type Step = v.InferOutput<typeof Step>;
