/** Rules in words, for faults and cautions. */
import type { SafetyRule } from '../kitchen/safety-rules.ts';

/** Who asks for it: "USDA … (United States)". */
export const askedBy = ({ source, edition }: SafetyRule): string =>
  `${source.cite} (${source.region === undefined ? '' : `${source.region}, `}${edition})`;
