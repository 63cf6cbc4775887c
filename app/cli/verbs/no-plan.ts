/** How a planning that gave no plan is told. */
import type { PlanResult } from '../../api.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { clashText } from '../text/clash.ts';
import { faultsText } from '../text/faults.ts';

type NoPlan = Exclude<PlanResult, { readonly kind: 'planned' }>;

/** The sentence or sentences that say why there is no plan. */
export function noPlanText(result: NoPlan): string {
  switch (result.kind) {
    case 'impossible':
      if (result.clash !== undefined && result.clash.members.length > 0) return clashText(result.clash);
      return [
        `No plan is possible: ${result.reason}`,
        ...result.requirements.map((requirement) => `  clashes: ${requirement}`),
      ].join('\n');
    case 'unknown':
      return `No plan: ${result.reason}. More --effort may find one.`;
    case 'refused':
      return faultsText(result.faults);
    case 'failed-check':
      return [
        'The plan that was found breaks a rule, so it is not shown. This is a defect of Afterheat:',
        ...result.violations.map((violation) => `  ${violation}`),
      ].join('\n');
  }
}

/** Tells it and gives the exit code: 2 for bad input, else 1. */
export function tellNoPlan(result: NoPlan, json: boolean, terminal: Terminal): ExitCode {
  if (json) {
    const { kind, ...rest } = result;
    terminal.out(JSON.stringify({ status: kind, ...rest }, null, 2));
  } else terminal.err(noPlanText(result));
  return result.kind === 'refused' ? 2 : 1;
}
