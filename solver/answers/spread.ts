/**
 * How much lengths vary, by kind of work: at most so many per cent less, and so many more, than planned.
 *
 * The defaults are invented, from no source; that work by hand runs over rather than under, and that heat and clocks are surer than
 * hands, is common practice. A session may carry its own.
 */
import type { Session, Spread, SpreadKind } from '../kitchen/session.ts';
import type { Need } from '../kitchen/step.ts';

/** Per cent of the planned length. Invented. */
export const DEFAULT_SPREADS: Readonly<Record<SpreadKind, Spread>> = {
  work: { early: 20, late: 40 },
  boiling: { early: 10, late: 25 },
  roasting: { early: 10, late: 20 },
  heating: { early: 5, late: 20 },
  cooling: { early: 10, late: 30 },
  resting: { early: 0, late: 10 },
};

/** The spread of a kind in a session. */
export const spreadOf = (session: Session, kind: SpreadKind): Spread =>
  session.spreads?.[kind] ?? DEFAULT_SPREADS[kind];

/** What goes by itself in a step with these needs. */
export function kindOfWaiting(needs: readonly Need[], boils: boolean): SpreadKind {
  if (boils) return 'boiling';
  const uses = (use: Need['use']): boolean => needs.some((need) => need.use === use);
  if (uses('oven') || uses('appliance')) return 'roasting';
  if (uses('burner') || uses('kettle') || needs.some((need) => need.use === 'pool' && need.how !== 'draw'))
    return 'boiling';
  if (needs.some((need) => need.use === 'place' && need.place === 'cooling')) return 'cooling';
  return 'resting';
}
