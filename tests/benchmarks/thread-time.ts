/** Processor time of the main thread alone: what is compiled and collected beside it by other threads does not count. */
import { readFileSync } from 'node:fs';

/** @returns milliseconds since the thread began, to be subtracted from each other; null where the system does not tell (only Linux does) */
export function threadMs(): number | null {
  try {
    // The first field: nanoseconds on a processor (Linux kernel documentation, scheduler/sched-stats, "/proc/<pid>/schedstat").
    const [nanoseconds] = readFileSync(`/proc/self/task/${process.pid}/schedstat`, 'utf8').split(' ');
    return Number(nanoseconds) / 1e6;
  } catch {
    return null;
  }
}
