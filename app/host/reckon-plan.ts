/** A plan reckoned: read as any document is, then what it takes and what is in its boxes. */
import type { Answer } from '../api.ts';
import { planFigures, type PlanFigures } from '../../solver/answers/plan-figures.ts';
import { acceptDocument } from '../documents/read-document.ts';
import { wallClockOf } from '../solving/wall-offset.ts';

/** @param given a plan; not trusted, since it may come over a wire */
export function reckonPlan(given: unknown): Answer<PlanFigures> {
  const read = acceptDocument('the plan', given, 'plan');
  if (!read.ok) return read;
  const clock = wallClockOf(read.value.session.start);
  return { ok: true, value: planFigures(read.value, (minute) => clock(minute).day) };
}
