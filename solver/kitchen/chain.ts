/** The binding chain of a plan: the links that decide its finish, or how late it can start, from first to last. */
import * as v from 'valibot';
import { Id, wholeBetween } from './values.ts';

const Minute = wholeBetween(-30_000, 200_000, 'minutes');

/**
 * What a link waits for. `start`: nothing, it begins the chain. `order`: another step, and perhaps minutes after it. `limit`:
 * it may not be long before another step, which waits itself. `hands`: the person was at other work. `place`: the thing or its
 * room was in use. `away`: the person or thing is not there. `heat`: the oven had to heat, to cool, or to be at another setting.
 * `water`: a pool boils, or its water. `clean`: a wash, or what is clean going first. `power`: a limit in watts. `table`: the
 * hour at the table. `asked`: the user's pin, or a limit from an earlier day.
 */
export const ChainReason = v.picklist([
  'start',
  'order',
  'limit',
  'hands',
  'place',
  'away',
  'heat',
  'water',
  'clean',
  'power',
  'table',
  'asked',
]);
export type ChainReason = v.InferOutput<typeof ChainReason>;

export const ChainLink = v.strictObject({
  /** Id of the planned step; absent for what is no step: an oven that heats, a pool that comes to the boil, the table. */
  step: v.optional(v.string()),
  /** Id of the pool or oven that it is about, where it is no step. */
  thing: v.optional(Id),
  /** What goes on: the step's name and its component's, or that of the time between. */
  name: v.pipe(v.string(), v.nonEmpty('a name that is not empty'), v.maxLength(400, 'at most 400 characters')),
  /** The part of it that binds, whole minutes from the start of the session. */
  from: Minute,
  until: Minute,
  why: ChainReason,
  /** Why it is not sooner (for a latest start: no later), as the end of a sentence: `waits for Mara's hands`. */
  because: v.pipe(v.string(), v.maxLength(400, 'at most 400 characters')),
});
export type ChainLink = v.InferOutput<typeof ChainLink>;
