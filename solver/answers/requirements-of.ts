/** All that a user asks of a session in a kitchen. */
import type { SessionInput } from '../translate/session-to-problem.ts';
import { componentRequirements } from './component-requirements.ts';
import { kitchenRequirements } from './kitchen-requirements.ts';
import type { Requirement } from './requirement.ts';
import { sessionRequirements } from './session-requirements.ts';

/** Requirements of the session, of the kitchen it is cooked in, and of the components it cooks; each has an id of its own. */
export function requirementsOf(input: SessionInput): readonly Requirement[] {
  const all = [...sessionRequirements(input), ...kitchenRequirements(input), ...componentRequirements(input)];
  const seen = new Map<string, number>();
  return all.map((requirement) => {
    const count = (seen.get(requirement.id) ?? 0) + 1;
    seen.set(requirement.id, count);
    return count === 1 ? requirement : { ...requirement, id: `${requirement.id} ${count}` };
  });
}
