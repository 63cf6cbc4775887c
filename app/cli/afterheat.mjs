#!/usr/bin/env node
// The command `afterheat`: builds the command line if its sources have changed, and runs it.
import { runNodeEntry } from '../../.config/run.mjs';

await runNodeEntry('app/cli/main.ts', process.argv.slice(2));
