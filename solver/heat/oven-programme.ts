/**
 * The turns of an oven's dial that serve a schedule of windows, and the temperature that follows.
 *
 * Minute by minute: the dial stands at the hottest of the lower limits of what is inside; it is raised early enough for what
 * comes next, never above the upper limit of anything inside; and it is lowered as soon as nothing inside needs the heat. Where
 * any curve serves the windows, this one does.
 */
import type { OvenFunction } from '../kitchen/kitchen.ts';
import type { OvenProgramme } from '../kitchen/plan.ts';
import type { OvenHeat } from './oven-heat.ts';
import { celsiusAfter, dialWindow, heatMinutes } from './oven-tables.ts';

export interface WindowUse {
  readonly start: number;
  readonly end: number;
  readonly function: OvenFunction;
  readonly leastC: number;
  readonly mostC: number;
}

interface Setting {
  readonly minute: number;
  readonly celsius: number | null;
  readonly function: OvenFunction;
}

/**
 * What the dial may be turned down to for the uses that come: cool enough for the next, and for those soon behind it as far as
 * the next allows, for they may leave no time to cool in.
 */
function coolestNext(coming: readonly WindowUse[], previous: number): number {
  let [wanted, least] = [previous, 0];
  for (const use of coming) {
    if (use.leastC > wanted) break;
    wanted = Math.min(wanted, Math.max(use.mostC, least));
    least = Math.max(least, use.leastC);
  }
  return wanted;
}

/** The dial at one minute: hot enough for what is inside, on the way to what comes, within everybody's limits. */
function dialAt(heat: OvenHeat, uses: readonly WindowUse[], minute: number, celsius: number, previous: number): number {
  const { oven } = heat;
  const inside = uses.filter((use) => use.start <= minute && minute < use.end);
  const floor = Math.max(oven.dial.leastC, ...inside.map((use) => use.leastC));
  const soon = uses.filter((use) => use.start === minute + 1);
  const cap = Math.min(oven.dial.mostC, ...[...inside, ...soon].map((use) => use.mostC));
  const coming = uses.filter((use) => use.start > minute).sort((a, b) => a.start - b.start || b.leastC - a.leastC);
  const next = coming[0];
  // Left alone it keeps what it has; with nothing inside, it is turned down at once to what comes next when that is cooler.
  let wanted =
    inside.length > 0
      ? floor
      : next === undefined
        ? previous
        : Math.max(oven.dial.leastC, coolestNext(coming, previous));
  // Whatever would come too late otherwise is heated for now; what stands between has its time to heat reckoned in.
  const later = celsiusAfter(heat, celsius, wanted, 1);
  for (const use of coming) {
    if (minute + 1 + heatMinutes(heat, later, use.leastC) > use.start + 1e-9) wanted = Math.max(wanted, use.leastC);
  }
  return Math.max(floor, Math.min(cap, wanted));
}

/**
 * @param heat the oven and its curves; it is as cold as its room before
 * @param uses what is cooked with the heat on (not afterheat), minutes and °C as written in the needs
 * @param on minute at which it is switched on, and minute at which it is switched off
 * @param until the line is drawn to this minute
 * @returns settings, the last of them off, and the temperature line; null where nothing was cooked
 */
export function ovenProgramme(
  heat: OvenHeat,
  uses: readonly WindowUse[],
  on: { readonly from: number; readonly until: number },
  until: number,
): OvenProgramme | null {
  if (uses.length === 0) return null;
  const { oven, roomC } = heat;
  const onDial = uses.map((use) => ({ ...use, ...dialWindow(oven, use.leastC, use.mostC)! }));
  const ordered = [...onDial].sort((a, b) => a.start - b.start);
  const settings: Setting[] = [];
  const line: { minute: number; celsius: number }[] = [{ minute: on.from, celsius: roomC }];
  let celsius = roomC;
  // Switched on, it is set for the first thing that comes.
  let dial = ordered[0]!.leastC;
  for (let minute = on.from; minute < on.until; minute++) {
    dial = dialAt(heat, onDial, minute, celsius, dial);
    const current =
      onDial.find((use) => use.start <= minute && minute < use.end) ??
      ordered.find((use) => use.start > minute) ??
      ordered.at(-1)!;
    const last = settings.at(-1);
    if (last === undefined || last.celsius !== dial || last.function !== current.function)
      settings.push({ minute, celsius: dial, function: current.function });
    celsius = celsiusAfter(heat, celsius, dial, 1);
    line.push({ minute: minute + 1, celsius });
  }
  settings.push({ minute: on.until, celsius: null, function: settings.at(-1)?.function ?? 'conventional' });
  for (let minute = on.until; minute < until; minute++) {
    celsius = celsiusAfter(heat, celsius, null, 1);
    line.push({ minute: minute + 1, celsius });
  }
  return { oven: oven.id, settings, line: withoutStraightRuns(line) };
}

/** Drops points on a straight line between their neighbours. */
function withoutStraightRuns(
  line: readonly { readonly minute: number; readonly celsius: number }[],
): { minute: number; celsius: number }[] {
  const rounded = line.map((point) => ({ minute: point.minute, celsius: Math.round(point.celsius * 100) / 100 }));
  return rounded.filter((point, index) => {
    const before = rounded[index - 1];
    const after = rounded[index + 1];
    if (before === undefined || after === undefined) return true;
    const straight =
      before.celsius +
      ((after.celsius - before.celsius) * (point.minute - before.minute)) / (after.minute - before.minute);
    return Math.abs(straight - point.celsius) > 0.02;
  });
}
