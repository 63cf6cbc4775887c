/**
 * Which soil counts where: a mark on a use of a resource counts when another task's use of that resource meets it, one leaving what the
 * other avoids.
 */
import type { CompiledMode } from './compiled.ts';

/** For each soil mark on a resource the task that has it; `SEVERAL` where more than one has. */
type Bearers = Map<number, number>;
const SEVERAL = -1;
const NONE = -2;

export class SoilMarks {
  /** False where no task can soil another. */
  readonly any: boolean;
  private readonly bearers: readonly Bearers[];
  /** For each soil asked about, the bearer of all that it meets. */
  private readonly meeting: readonly Bearers[];

  /**
   * @param modes all modes, by number
   * @param resourceCount number of resources
   * @param soilMeets 1 where a use with soil `u` leaves what a use with soil `v` avoids: `soilMeets[u × soilCount + v]`
   */
  constructor(
    modes: readonly CompiledMode[],
    resourceCount: number,
    private readonly soilMeets: Uint8Array,
    private readonly soilCount: number,
  ) {
    this.bearers = Array.from({ length: resourceCount }, (): Bearers => new Map());
    this.meeting = this.bearers.map((): Bearers => new Map());
    for (const { task, uses } of modes)
      for (const { resource, soil } of uses) {
        if (soil === 0) continue;
        const bearers = this.bearers[resource] as Bearers;
        const bearer = bearers.get(soil);
        bearers.set(soil, bearer === undefined || bearer === task ? task : SEVERAL);
      }
    this.any = modes.some((mode) => this.concerns(mode));
  }

  /** Whether a use with soil `u` leaves what a use with soil `v` avoids. */
  meet(u: number, v: number): boolean {
    return this.soilMeets[u * this.soilCount + v] === 1;
  }

  /** Whether a use of the resource by the task, with this soil, can soil one of another task or be soiled by it. */
  counts(resource: number, soil: number, task: number): boolean {
    if (soil === 0) return false;
    const known = this.meeting[resource] as Bearers;
    let bearer = known.get(soil);
    if (bearer === undefined) {
      bearer = this.bearerMeeting(resource, soil);
      known.set(soil, bearer);
    }
    return bearer !== NONE && bearer !== task;
  }

  /** The one task with marks on the resource that meet the soil; `SEVERAL` where there are more, `NONE` where there is none. */
  private bearerMeeting(resource: number, soil: number): number {
    let found = NONE;
    this.bearers[resource]?.forEach((bearer, other) => {
      if (!this.meet(soil, other) && !this.meet(other, soil)) return;
      found = found === NONE || found === bearer ? bearer : SEVERAL;
    });
    return found;
  }

  /** Whether the mode can soil another task's or be soiled by it. */
  concerns({ task, uses }: CompiledMode): boolean {
    return uses.some(({ resource, soil }) => this.counts(resource, soil, task));
  }
}
