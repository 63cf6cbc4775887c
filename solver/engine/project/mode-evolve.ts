/**
 * A genetic algorithm for multi-mode projects: a plan is an activity list with a list of modes; children take orders and modes from both
 * parents, change a few, are mended where stocks are overdrawn, built by serial schedule generation and justified twice.
 *
 * Sources: Hartmann (2001), Project scheduling with multiple modes: a genetic algorithm, Annals of Operations Research 102, 111–135;
 * Lova, Tormos, Cervantes and Barber (2009), International Journal of Production Economics 117, 302–316, for the passes after each.
 */
import type { Solution } from '../outcome.ts';
import type { Random } from '../random.ts';
import { ActivityLists } from './activity-lists.ts';
import { ModeLists } from './mode-lists.ts';
import type { ModeProject } from './mode-project.ts';
import { chooseParent, sameList, worstOf } from './population.ts';
import { ProjectSchedule } from './schedule.ts';

/** Members of a population. */
const POPULATION = 40;
/** Children without a better best after which a population is stale. */
const STALE = 50 * POPULATION;
/** Added to the value of what overdraws a stock, and again for each share of it. */
const OVERDRAWN = 1e6;

export class ModeEvolution {
  /** Least value of a plan found; Infinity before the first. */
  best = Infinity;
  private readonly bestStart: Int32Array;
  private readonly bestModes: Int32Array;
  private readonly schedule: ProjectSchedule;
  private readonly activities: ActivityLists;
  private readonly moded: ModeLists;
  private readonly lists: Int32Array[];
  private readonly modes: Int32Array[];
  /** Minutes between the latest and the earliest start of each task in the plan. */
  private readonly slacks: Int32Array[];
  private readonly values: Float64Array;
  private readonly child: Int32Array;
  private readonly childModes: Int32Array;
  private readonly childSlack: Int32Array;
  private size = 0;
  private idle = 0;

  constructor(
    private readonly given: ModeProject,
    private readonly random: Random,
  ) {
    const { project } = given;
    const { count } = project;
    const population = (): Int32Array[] => Array.from({ length: POPULATION }, () => new Int32Array(count));
    this.bestStart = new Int32Array(count);
    this.bestModes = new Int32Array(count);
    this.schedule = new ProjectSchedule(project);
    this.activities = new ActivityLists(project, random);
    this.moded = new ModeLists(given, random);
    this.lists = population();
    this.modes = population();
    this.slacks = population();
    this.values = new Float64Array(POPULATION);
    this.child = new Int32Array(count);
    this.childModes = new Int32Array(count);
    this.childSlack = new Int32Array(count);
  }

  /** The best plan; only once there is one. */
  solution(): Solution {
    return this.given.solution(this.bestModes, this.bestStart);
  }

  /** Builds one more plan. @returns steps spent */
  step(): number {
    const { schedule, random, activities, moded, child, childModes, childSlack } = this;
    const { count } = this.given.project;
    let drawing = 0;
    if (this.size < POPULATION) {
      moded.sample(childModes);
      childSlack.fill(0);
      moded.mend(childModes, childSlack);
      this.given.take(childModes);
      schedule.reckonNeeds();
      activities.reckonLatest();
      activities.sample(child, this.size === 0 ? 0 : 3 + random.below(30));
      drawing = count * 5;
      const value = this.decode();
      if (value >= 0) this.keep(this.size++, value);
    } else {
      this.cross();
      activities.change(child);
      moded.change(childModes);
      moded.mend(childModes, childSlack);
      moded.fill(childModes);
      this.given.take(childModes);
      schedule.reckonNeeds();
      const worst = worstOf(this.values, this.size);
      const value = this.decode();
      if (value >= 0 && value <= (this.values[worst] as number) && !this.isKnown(value)) this.keep(worst, value);
      // A stale population starts afresh; the best is remembered apart.
      if (++this.idle > STALE) {
        this.size = 0;
        this.idle = 0;
      }
    }
    // The profile is filled anew for each pass, which on long horizons is most of the work.
    return (schedule.steps() >> 2) + drawing + count * 6 + (this.given.project.capacity.length >> 4);
  }

  /** Makes a plan of the child and justifies it. @returns its value, far above all plans' where a stock is overdrawn; −1: none fits */
  private decode(): number {
    const value = this.schedule.justified(this.child);
    if (value < 0) return value;
    const over = this.moded.excess(this.childModes);
    return over > 0 ? value + OVERDRAWN * (1 + over) : value;
  }

  private keep(slot: number, value: number): void {
    const { schedule, childModes } = this;
    const slack = this.slacks[slot] as Int32Array;
    schedule.listInto(this.lists[slot] as Int32Array);
    (this.modes[slot] as Int32Array).set(childModes);
    for (let task = 0; task < slack.length; task++)
      slack[task] = Math.max(0, (schedule.late[task] as number) - (schedule.start[task] as number));
    this.values[slot] = value;
    if (value >= this.best || value >= OVERDRAWN) return;
    this.best = value;
    this.bestStart.set(schedule.start);
    this.bestModes.set(childModes);
    this.idle = 0;
  }

  /** True when the population has lists of this value that are the same as the plan's. */
  private isKnown(value: number): boolean {
    const { child, schedule, childModes } = this;
    schedule.listInto(child);
    for (let k = 0; k < this.size; k++)
      if (
        this.values[k] === value &&
        sameList(this.lists[k] as Int32Array, child) &&
        sameList(this.modes[k] as Int32Array, childModes)
      )
        return true;
    return false;
  }

  private cross(): void {
    const { childModes, childSlack } = this;
    const mother = chooseParent(this.values, this.size, this.random);
    const father = chooseParent(this.values, this.size, this.random);
    const by = this.activities.cross(this.lists[mother] as Int32Array, this.lists[father] as Int32Array, this.child);
    for (let task = 0; task < childModes.length; task++) {
      const parent = by[task] === 2 ? father : mother;
      childModes[task] = (this.modes[parent] as Int32Array)[task] as number;
      childSlack[task] = (this.slacks[parent] as Int32Array)[task] as number;
    }
  }
}
