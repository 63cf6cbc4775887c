/** Moves back towards the old plan: an option that it took, or two neighbours of it in their old order again. */
import { byNumber, startNode } from '../explain/by-number.ts';
import { neighbourPairs } from './changed-units.ts';
import { elsewhere, overtaken, type MoveGround, type Way } from './moves.ts';
import type { ReplanAsked } from './asked.ts';

/** Ways one move nearer to the old plan, options first. */
export function* restorations(
  asked: ReplanAsked,
  { problem, way, times, still, fixed, present }: MoveGround,
): Generator<Way> {
  const { old, units } = asked;
  for (const [choice, option] of way.choices.entries()) {
    const before = old.choices[choice]!;
    if (option === before || fixed(choice)) continue;
    if (byNumber(problem).tasksOf[choice]!.some(still)) continue;
    const back = elsewhere(problem, way, choice, before, present, times);
    if (back !== null) yield back;
  }
  for (const { resource, first, second } of neighbourPairs(problem, old, units)) {
    const list = way.sequences.get(resource) ?? [];
    const [at, other] = [list.indexOf(first), list.indexOf(second)];
    if (at < 0 || other < 0 || at < other || still(first) || still(second)) continue;
    if (times[startNode(first)]! < 0) continue;
    yield overtaken(way, resource, first, second);
  }
}
