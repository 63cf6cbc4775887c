/** Faults as the terminal shows them. */
import type { Fault } from '../../api.ts';

/** Two lines a fault: where and what; what is wanted and the mend. */
export function faultsText(faults: readonly Fault[]): string {
  return faults
    .map(({ document, path, found, wanted, mend }) =>
      [`${document}${path === '' ? '' : `, ${path}`}: found ${found}`, `    wanted: ${wanted}; ${mend}`].join('\n'),
    )
    .join('\n');
}
