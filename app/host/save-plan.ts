/** Saving a plan: read as any document is, held to the checker, then written. */
import type { Answer, DocumentEntry } from '../api.ts';
import { checkPlan } from '../../solver/checker/check-plan.ts';
import { acceptDocument } from '../documents/read-document.ts';
import { wallOffsetOf } from '../solving/wall-offset.ts';
import { saveDocument } from './save-document.ts';

/**
 * Saves a plan into a folder under its id.
 *
 * @param given a plan; not trusted, since it may come over a wire
 * @returns its entry; or its faults, the checker's among them; or why it could not be written
 */
export async function savePlan(given: unknown, folder: string): Promise<Answer<DocumentEntry>> {
  const read = acceptDocument('the plan', given, 'plan');
  if (!read.ok) return read;
  const plan = read.value;
  const violations = checkPlan(plan, { wallOffset: wallOffsetOf(plan.session.start) });
  if (violations.length > 0)
    return {
      ok: false,
      faults: violations.map(({ rule, message, steps }) => ({
        document: 'the plan',
        path: steps.join(', '),
        found: message,
        wanted: `a plan that keeps rule ${rule}`,
        mend: 'plan the session again',
      })),
    };
  return saveDocument(plan, folder);
}
