/** A request to plan, as it comes over a wire and is not trusted. */
import * as v from 'valibot';
import type { Answer, PlanRequest } from '../api.ts';
import { Intent } from '../../solver/kitchen/session.ts';
import { Id, numberBetween, wholeBetween } from '../../solver/kitchen/values.ts';
import { issueFaults } from '../documents/issue-faults.ts';

export const PlanRequestSchema = v.strictObject({
  session: Id,
  kitchen: v.optional(Id),
  crew: v.optional(Id),
  intent: v.optional(Intent),
  authority: v.optional(Id),
  effort: v.optional(numberBetween(1, 1e15, '(work units)')),
  seed: v.optional(wholeBetween(0, 4_294_967_295, '(seed)')),
});

/** Reads a request, or gives its faults. */
export function readPlanRequest(given: unknown): Answer<PlanRequest> {
  const result = v.safeParse(PlanRequestSchema, given);
  if (!result.success) return { ok: false, faults: issueFaults('the request', result.issues) };
  const { session, kitchen, crew, intent, authority, effort, seed } = result.output;
  return {
    ok: true,
    value: {
      session,
      ...(kitchen === undefined ? {} : { kitchen }),
      ...(crew === undefined ? {} : { crew }),
      ...(intent === undefined ? {} : { intent }),
      ...(authority === undefined ? {} : { authority }),
      ...(effort === undefined ? {} : { effort }),
      ...(seed === undefined ? {} : { seed }),
    },
  };
}
