/** `afterheat replan PLAN` */
import { resolve } from 'node:path';
import type { LiveEvent } from '../../../solver/answers/replan/events.ts';
import { replanSession } from '../../../solver/answers/replan/replan.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { documentText, writeText } from '../../documents/write-document.ts';
import { wallOffsetOf } from '../../solving/wall-offset.ts';
import type { Options, Told } from '../arguments.ts';
import { findNamed } from '../find-documents.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { faultsText } from '../text/faults.ts';
import { replanSummary, replanText } from '../text/replan.ts';
import { ruleText, violationsOf } from '../text/violations.ts';
import { tellNoPlan } from './no-plan.ts';

/** Work units when nobody stands waiting: about a second. */
const EFFORT = 120_000;

/** The id of the step that is meant: its id, or its name where no other step has it; else as it was given. */
function stepIdOf(plan: Plan, given: string): string {
  if (plan.steps.some(({ id }) => id === given)) return given;
  const asked = given.trim().toLowerCase();
  const named = plan.steps.filter((each) => {
    const dish = plan.components.find(({ id }) => id === each.component);
    // The name in the plan tells the way that was taken; the one in the recipe does not.
    return [each.name, dish?.steps.find(({ id }) => id === each.step)?.name].some(
      (name) => name?.toLowerCase() === asked,
    );
  });
  return named.length === 1 ? named[0]!.id : given;
}

function eventOf({ what, step, minutes }: Told, now: number): LiveEvent {
  switch (what) {
    case 'started':
      return { kind: 'started', step, at: minutes! };
    case 'done':
      return { kind: 'done', step, at: minutes ?? now };
    case 'late':
      return { kind: 'late', step, remaining: minutes! };
    case 'waiting':
      return { kind: 'waiting', step };
    case 'skip':
      return { kind: 'skipped', step };
  }
}

/** Plans the rest of a running session; prints what changes and the running order, and writes the plan where `--out` says. */
export async function replanVerb(subject: string, options: Options, terminal: Terminal): Promise<ExitCode> {
  const named = await findNamed('plan', subject, {
    folder: terminal.folder,
    ...(options.data === undefined ? {} : { data: options.data }),
  });
  if (!named.ok) return tellNoPlan({ kind: 'refused', faults: named.faults }, options.json, terminal);
  const plan = named.value.document;
  const now = options.now!;
  const events = (options.told ?? []).map((told) => eventOf({ ...told, step: stepIdOf(plan, told.step) }, now));
  const result = replanSession(
    plan,
    {
      now,
      events,
      effort: options.effort ?? EFFORT,
      ...(options.penalty === undefined ? {} : { penalty: options.penalty }),
      ...(options.seed === undefined ? {} : { seed: options.seed }),
    },
    wallOffsetOf(plan.session.start),
  );
  if (result.kind === 'refused') return tellNoPlan(result, options.json, terminal);
  if (result.kind === 'replanned') {
    const told = result.broken.map(ruleText);
    const violations = violationsOf(result.plan).filter((violation) => !told.includes(violation));
    if (violations.length > 0) return tellNoPlan({ kind: 'failed-check', violations }, options.json, terminal);
  }
  terminal.out(
    options.json ? JSON.stringify(replanSummary(plan, result), null, 2) : replanText(plan, result, now, events),
  );
  const made = result.kind === 'replanned' ? result.plan : result.leastBad;
  if (options.out !== undefined && made !== null) {
    const written = await writeText(resolve(terminal.folder, options.out), documentText(made));
    if (!written.ok) {
      terminal.err(faultsText(written.faults));
      return 2;
    }
  }
  return result.kind === 'replanned' && result.broken.length === 0 ? 0 : 1;
}
