/** The command line from its arguments to its exit code. */
import type { SolverClient } from '../solving/solver-client.ts';
import { readArguments } from './arguments.ts';
import { HELP } from './help.ts';
import type { ExitCode, Terminal } from './terminal.ts';
import { accountVerb } from './verbs/account.ts';
import { chartVerb } from './verbs/chart.ts';
import { checkVerb } from './verbs/check.ts';
import { compareVerb } from './verbs/compare.ts';
import { coolingsVerb } from './verbs/coolings.ts';
import { improveVerb } from './verbs/improve.ts';
import { labelsVerb } from './verbs/labels.ts';
import { modelVerb } from './verbs/model.ts';
import { nutritionVerb } from './verbs/nutrition.ts';
import { planVerb } from './verbs/plan.ts';
import { replanVerb } from './verbs/replan.ts';
import { schemaVerb } from './verbs/schema.ts';
import { sureVerb } from './verbs/sure.ts';
import { whyVerb } from './verbs/why.ts';

/**
 * Runs one command.
 *
 * @param args after the program's name
 * @param openSolver opens a solver; called only by verbs that plan, and closed here
 */
export async function runCommand(
  args: readonly string[],
  terminal: Terminal,
  openSolver: () => SolverClient,
): Promise<ExitCode> {
  const read = readArguments(args);
  switch (read.kind) {
    case 'help':
      terminal.out(HELP);
      return 0;
    case 'wrong':
      terminal.err(`afterheat: ${read.problem}\nTry: afterheat --help`);
      return 2;
    case 'verb': {
      const opened: SolverClient[] = [];
      const solver = (): SolverClient => {
        const client = openSolver();
        opened.push(client);
        return client;
      };
      try {
        const { verb, subject, options } = read;
        switch (verb) {
          case 'plan':
            return await planVerb(subject, options, terminal, solver);
          case 'check':
            return await checkVerb(subject, options, terminal);
          case 'why':
            return await whyVerb(subject, options, terminal);
          case 'improve':
            return await improveVerb(subject, options, terminal, solver);
          case 'sure':
            return await sureVerb(subject, options, terminal);
          case 'replan':
            return await replanVerb(subject, options, terminal);
          case 'compare':
            return await compareVerb(subject, options, terminal, solver);
          case 'model':
            return await modelVerb(subject, options, terminal);
          case 'chart':
            return await chartVerb(subject, options, terminal);
          case 'labels':
            return await labelsVerb(subject, options, terminal);
          case 'nutrition':
            return await nutritionVerb(subject, options, terminal);
          case 'coolings':
            return await coolingsVerb(subject, options, terminal);
          case 'account':
            return await accountVerb(subject, options, terminal);
          case 'schema':
            return await schemaVerb(subject, options, terminal);
        }
      } finally {
        await Promise.all(opened.map((client) => client.close()));
      }
    }
  }
}
