/** The command `afterheat`. */
import { createSolverClient } from '../solving/solver-client.ts';
import { runCommand } from './run.ts';
import { processTerminal } from './terminal.ts';

// `afterheat model … | head` closes the pipe early; that is no fault of ours or of the user.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

process.exitCode = await runCommand(process.argv.slice(2), processTerminal(), () =>
  createSolverClient({ worker: new URL('./worker.js', import.meta.url) }),
);
