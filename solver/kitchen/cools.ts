/** Food that cools by itself in a hands-off segment, or in boxes: from what to what, and where. */
import * as v from 'valibot';
import { Celsius, Id, numberBetween } from './values.ts';

const CoolingPlace = v.picklist(
  ['air', 'rack', 'cold-water', 'fridge', 'freezer'],
  'one of air, rack, cold-water, fridge, freezer',
);

export const Cools = v.strictObject({
  /** Warmest place within, at first and when it is cool enough. */
  fromC: Celsius,
  toC: Celsius,
  /** Of the layer, or across round pieces. It stays the same when more is made: more takes more trays. */
  depthMm: numberBetween(1, 500, 'mm'),
  /** `air`: on the worktop; `rack`: air below too; `cold-water`: the vessel stands in it. */
  in: CoolingPlace,
  /** Default: open. */
  covered: v.optional(v.boolean()),
  /** Its surface stays wet (rice, stew, steamed greens), so that evaporation cools it too. Default: it dries. */
  wet: v.optional(v.boolean()),
  /** `slab`, the default: a layer. `sphere`: round pieces side by side. */
  shape: v.optional(v.picklist(['slab', 'sphere'], 'slab or sphere')),
  /** Plastic or glass below it; absent: metal. */
  wallMm: v.optional(numberBetween(0.5, 50, 'mm')),
  /** Of what is around it; absent: 25 °C in the kitchen, 15 in water, 5 in the fridge, −18 in the freezer. */
  aroundC: v.optional(Celsius),
  /** Key of a food of the table that it is like; absent: as its ingredients make it. */
  food: v.optional(Id),
});
export type Cools = v.InferOutput<typeof Cools>;
