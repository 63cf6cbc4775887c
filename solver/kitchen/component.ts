/** The component document: one thing cooked or made in bulk. */
import * as v from 'valibot';
import { Need, Step } from './step.ts';
import {
  Allergen,
  ClockTime,
  Count,
  Duration,
  GlutenCereal,
  Grams,
  Id,
  Millilitres,
  Name,
  Note,
  Portions,
  RawKind,
  numberBetween,
  wholeBetween,
} from './values.ts';

export const Ingredient = v.strictObject({
  id: Id,
  name: Name,
  massG: v.optional(Grams),
  volumeMl: v.optional(Millilitres),
  count: v.optional(Count),
  form: v.optional(Name),
  group: v.optional(
    v.picklist([
      'grain',
      'pulse',
      'vegetable',
      'fruit',
      'meat',
      'poultry',
      'fish',
      'egg',
      'dairy',
      'nut-or-seed',
      'fat',
      'seasoning',
      'water',
      'other',
    ]),
  ),
  allergens: v.array(Allergen),
  /** Which cereals its gluten is of; absent: it may be any. */
  cereals: v.optional(v.pipe(v.array(GlutenCereal), v.nonEmpty('at least one cereal'))),
  raw: v.optional(RawKind),
  /** A toxin that soaking and boiling destroy (as of raw kidney beans), and the steps that do so: soak or step of the day before, drain, boil. */
  toxin: v.optional(v.strictObject({ kind: Id, soak: v.optional(Id), drain: v.optional(Id), boil: v.optional(Id) })),
  /** Key of the program's own table of foods, such as `lentils-dry`: the food in the state in which it is weighed here. */
  food: v.optional(Id),
  /** The amount is of the food as bought, with what is cut off; absent: of what is eaten. */
  asBought: v.optional(v.boolean()),
  /** Key of the food that it is when done, such as `lentils-cooked`; its nutrients are then those of the cooked food. */
  becomes: v.optional(Id),
  /** Weight done of 1 g, by the cook's own scales; absent: by the published yield of what it becomes. */
  yield: v.optional(numberBetween(0.05, 20, '(yield)')),
  /** Price of the amount given, in the kitchen's currency. */
  price: v.optional(numberBetween(0, 10_000, '(price)')),
});
export type Ingredient = v.InferOutput<typeof Ingredient>;

/** Equipment kept from the start of one step to the end of another: the pan the sauce stays in. */
export const Hold = v.strictObject({ id: Id, need: Need, from: Id, to: Id });
export type Hold = v.InferOutput<typeof Hold>;

/** Work on an earlier day, outside the minute lanes: the beans go into water at 20:30 the day before. */
export const AheadStep = v.strictObject({
  id: Id,
  name: Name,
  daysBefore: wholeBetween(1, 14, 'days'),
  at: ClockTime,
  hands: Duration,
  /** From the end of its hands-on minutes to the start of the step `until`. */
  shortest: Duration,
  longest: Duration,
  until: Id,
});
/** Work on a later day: Thursday's boxes move from freezer to fridge. */
export const LaterStep = v.strictObject({
  id: Id,
  name: Name,
  daysAfter: wholeBetween(1, 60, 'days'),
  at: ClockTime,
  hands: Duration,
});

export const Component = v.strictObject({
  kind: v.literal('component'),
  version: v.literal(1),
  id: Id,
  name: Name,
  note: v.optional(Note),
  /** The amounts below make this much. */
  makes: v.strictObject({ portions: Portions, massG: Grams }),
  ingredients: v.array(Ingredient),
  steps: v.pipe(v.array(Step), v.nonEmpty('at least one step')),
  holds: v.optional(v.array(Hold)),
  /** Steps that are done batch by batch, and how many portions one batch can be. */
  batches: v.optional(
    v.strictObject({ steps: v.pipe(v.array(Id), v.nonEmpty('at least one step')), mostPortions: Portions }),
  ),
  ahead: v.optional(v.array(AheadStep)),
  later: v.optional(v.array(LaterStep)),
  /** The step after which it can go into boxes; absent: its last step that puts nothing away. */
  ready: v.optional(Id),
  /** It goes into boxes hot (shallow, lid ajar) or cooled. */
  packed: v.picklist(['hot', 'cooled'], 'hot or cooled'),
  /** Leaves the heat at the end of `from`; must be in the fridge `within` that long, by this component's own step that puts it away or with the boxes. */
  fridge: v.optional(v.strictObject({ from: Id, within: Duration })),
  keeps: v.strictObject({ fridge: Duration, freezer: v.optional(Duration) }),
  /** Class of food that the safety rules tell the life of, such as `cooked-rice`; absent: cooked leftovers. */
  storage: v.optional(Id),
});
export type Component = v.InferOutput<typeof Component>;
