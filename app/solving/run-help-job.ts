/** The question what would help, from order to result. */
import type { HelpProgress, HelpResult } from '../api.ts';
import { whatWouldHelp } from '../../solver/answers/what-would-help.ts';
import type { PlanJob } from './job.ts';
import { wallOffsetOf } from './wall-offset.ts';

export interface HelpControls {
  readonly shouldStop: () => boolean;
  readonly onProgress: (progress: HelpProgress) => void;
}

/** Asks about every help. @returns what is known when the effort is spent, all is asked, or it was stopped */
export function runHelpJob(job: PlanJob, { shouldStop, onProgress }: HelpControls): HelpResult {
  const answer = whatWouldHelp(
    { ...job, wallOffset: wallOffsetOf(job.session.start) },
    {
      seed: job.seed,
      effort: job.effort,
      shouldStop,
      onProgress: (share, report) => onProgress({ share, report }),
    },
  );
  switch (answer.kind) {
    case 'answered': {
      const { kind, ...report } = answer;
      return { kind, report };
    }
    case 'impossible':
      return { kind: 'impossible', reason: 'there is no plan that anything could make shorter' };
    case 'unknown':
      return {
        kind: 'unknown',
        reason: shouldStop() ? 'stopped before a plan was found' : 'no plan was found in the effort given',
      };
    case 'refused':
      return answer;
  }
}
