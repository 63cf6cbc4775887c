/** One source of heat in a plan, with who bears it and what each would have taken alone. */
import type { Working } from '../working.ts';
import type { Amount } from './amounts.ts';

export type SourceKind = 'oven' | 'burner' | 'pool' | 'kettle' | 'appliance';

export interface SourceEntry {
  readonly kind: SourceKind;
  readonly id: string;
  readonly name: string;
  readonly amount: Amount;
  /** By component; sums to the amount. */
  readonly borne: ReadonlyMap<string, Amount>;
  /** What each component would have taken of it, cooked alone. */
  readonly alone: readonly AloneEntry[];
  readonly workings: readonly Working[];
}

export interface AloneEntry {
  readonly component: string;
  /** Why sharing made a difference; `own`: it made none. */
  readonly by: 'kept-hot' | 'afterheat' | 'one-boil' | 'own';
  readonly amount: Amount;
}
