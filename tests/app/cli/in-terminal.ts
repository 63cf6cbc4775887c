import { runCommand } from '../../../app/cli/run.ts';
import type { Terminal } from '../../../app/cli/terminal.ts';
import { inThreadSolver } from '../../support/solvers.ts';

/** Runs the command line in a folder; all that it printed comes back with its exit code. */
export async function inTerminal(folder: string, args: readonly string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const terminal: Terminal = {
    out: (text) => out.push(text),
    err: (text) => err.push(text),
    progress: () => {},
    onInterrupt: () => () => {},
    folder,
  };
  const code = await runCommand(args, terminal, inThreadSolver);
  return { code, out: out.join('\n'), err: err.join('\n') };
}
