/** The chart's cursor: set by hand while planning, moved by the wall clock while the session runs. */
import type { Plan } from '../../solver/kitchen/plan.ts';
import { startEpoch } from '../chart/layout/wall-clock.ts';

const MINUTE = 60_000;

export class ClockState {
  #start = $state.raw(0);
  #until = $state.raw(0);
  #minute = $state(0);
  #following = $state(false);
  /** Present time, ms since 1970; handed in, so that a test can turn it. */
  readonly #now: () => number;

  constructor(now: () => number) {
    this.#now = now;
  }

  /** Minutes from the session's start; a fraction while it follows the wall clock. */
  get minute(): number {
    return this.#minute;
  }

  get following(): boolean {
    return this.#following;
  }

  get until(): number {
    return this.#until;
  }

  /** Minutes that the wall clock is past the session's start; negative before. */
  get wallMinute(): number {
    return (this.#now() - this.#start) / MINUTE;
  }

  /** The wall clock is within the session. */
  get running(): boolean {
    return this.wallMinute >= 0 && this.wallMinute <= this.#until;
  }

  /** Takes a plan's span; follows the wall clock where the session is running now, else stands at its start. */
  open(plan: Plan): void {
    this.#start = startEpoch(plan.start);
    this.#until = plan.allAwayMinutes;
    this.#following = this.running;
    this.#minute = this.#following ? this.wallMinute : 0;
  }

  /** Takes the span of a better plan of the same session; the cursor stays. */
  renew(plan: Plan): void {
    if (startEpoch(plan.start) !== this.#start) return this.open(plan);
    this.#until = plan.allAwayMinutes;
    if (!this.#following) this.#minute = Math.min(this.#minute, this.#until);
  }

  set(minute: number): void {
    this.#following = false;
    this.#minute = Math.min(Math.max(0, Math.round(minute)), this.#until);
  }

  moveBy(minutes: number): void {
    this.set(Math.round(this.#minute) + minutes);
  }

  /** Follows the wall clock again; nothing happens outside the session. */
  follow(): void {
    if (!this.running) return;
    this.#following = true;
    this.tick();
  }

  /** Called as time passes. */
  tick(): void {
    if (!this.#following) return;
    this.#minute = this.wallMinute;
    if (!this.running) this.set(this.#until);
  }
}
