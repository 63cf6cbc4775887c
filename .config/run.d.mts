/** Types of `run.mjs`. */
export function buildNodeEntry(entry: string): Promise<string>;
export function runNodeEntry(entry: string, args: readonly string[]): Promise<void>;
