/** What the command line has of its surroundings, so that verbs can be run without a terminal. */
export interface Terminal {
  /** Writes lines to the standard output. */
  readonly out: (text: string) => void;
  /** Writes lines to the standard error. */
  readonly err: (text: string) => void;
  /** Shows a line on the standard error in place of the one before, where that can be; otherwise now and then a line. Empty: takes it away. */
  readonly progress: (text: string) => void;
  /** Calls back when the user asks to stop (Ctrl-C); what it returns ends the listening. */
  readonly onInterrupt: (stop: () => void) => () => void;
  readonly folder: string;
}

/** How a command ends: good; no plan, or a violation; bad input. */
export type ExitCode = 0 | 1 | 2;

/** The terminal that the process has. */
export function processTerminal(): Terminal {
  let shown = 0;
  let last = 0;
  const clear = (): void => {
    if (shown > 0) process.stderr.write(`\r${' '.repeat(shown)}\r`);
    shown = 0;
  };
  return {
    out: (text) => {
      clear();
      process.stdout.write(`${text}\n`);
    },
    err: (text) => {
      clear();
      process.stderr.write(`${text}\n`);
    },
    progress: (text) => {
      if (process.stderr.isTTY) {
        const line = text.slice(0, (process.stderr.columns ?? 80) - 1);
        process.stderr.write(`\r${line.padEnd(shown)}`);
        shown = line.length;
      } else if (text !== '' && Date.now() - last > 2000) {
        last = Date.now();
        process.stderr.write(`${text}\n`);
      }
    },
    onInterrupt: (stop) => {
      const once = (): void => {
        process.once('SIGINT', () => process.exit(130));
        stop();
      };
      process.once('SIGINT', once);
      return () => void process.removeListener('SIGINT', once);
    },
    folder: process.cwd(),
  };
}
