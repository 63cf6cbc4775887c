/** Where a limit comes from, for a panel that shows it. */
import type { SafetyRule } from '../kitchen/safety-rules.ts';
import type { Source } from '../source.ts';
import type { Working } from '../working.ts';
import type { Limit } from './limits.ts';

export interface RuleBehind {
  readonly id: string;
  /** Ids of the rule sets that ask for it. */
  readonly from: readonly string[];
  readonly source: Source;
  readonly edition: string;
}

/** The rule behind a limit: its source, its edition, and the rule sets that ask for just as much. */
export function ruleBehind({ rule }: { readonly rule: SafetyRule }): RuleBehind {
  const { standing, cite, region } = rule.source;
  return {
    id: rule.id,
    from: rule.from ?? [],
    source: { standing, cite, ...(region === undefined ? {} : { region }) },
    edition: rule.edition,
  };
}

/** A limit as the working of a number: what the authority says, taken over as it stands. */
export function limitWorking(
  name: string,
  limit: Pick<Limit, 'value' | 'unit'> & { readonly rule: SafetyRule },
): Working {
  const { source, edition } = ruleBehind(limit);
  return {
    name,
    value: limit.value,
    unit: limit.unit,
    formula: 'as the rule says',
    inputs: [],
    source: { ...source, cite: `${source.cite} (${edition})` },
    caution: 'Local rules come first, and a probe thermometer decides.',
  };
}
