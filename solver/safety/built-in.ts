/** The rule sets that come with the program. */
import type { SafetyRules } from '../kitchen/safety-rules.ts';
import { UNITED_KINGDOM } from './data/united-kingdom.ts';
import { UNITED_STATES } from './data/united-states.ts';

export const BUILT_IN_RULES: readonly SafetyRules[] = [UNITED_KINGDOM, UNITED_STATES];
