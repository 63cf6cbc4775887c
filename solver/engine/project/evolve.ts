/**
 * A genetic algorithm over activity lists (Hartmann 1998; Alcaraz and Maroto 2001) with double justification of every child (Valls,
 * Ballestín and Quintanilla 2008). The first generation comes from biased random sampling by latest start (Kolisch and Drexl 1996).
 */
import type { Solution } from '../outcome.ts';
import type { Random } from '../random.ts';
import { ActivityLists } from './activity-lists.ts';
import type { PlainProject } from './plain-project.ts';
import { chooseParent, sameList, worstOf } from './population.ts';
import { ProjectSchedule } from './schedule.ts';

/** Members of the first population where little time is given, and of the largest; one that starts afresh has twice as many as the last. */
const FIRST_POPULATION = 40;
const LARGEST_POPULATION = 640;
/** Children for each member without a better best after which a population is stale. */
const STALE = 60;

export class Evolution {
  /** Least value found and its starts; Infinity before the first plan. */
  best = Infinity;
  readonly bestStart: Int32Array;
  private readonly schedule: ProjectSchedule;
  private readonly lists: Int32Array[] = [];
  private readonly values = new Float64Array(LARGEST_POPULATION);
  private readonly child: Int32Array;
  private readonly activities: ActivityLists;
  private size = 0;
  private idle = 0;

  /** @param members of the first population */
  constructor(
    private readonly project: PlainProject,
    private readonly random: Random,
    private members = FIRST_POPULATION,
  ) {
    const { count } = project;
    this.bestStart = new Int32Array(count);
    this.schedule = new ProjectSchedule(project);
    this.child = new Int32Array(count);
    this.activities = new ActivityLists(project, random);
  }

  /** The best plan; only once there is one. */
  solution(): Solution {
    const { length } = this.project;
    return {
      choices: [],
      tasks: Array.from(this.bestStart, (start, task) => ({ start, end: start + length[task]! })),
    };
  }

  /** Builds one more plan. @returns steps spent */
  step(): number {
    const { schedule, random } = this;
    let drawing = 0;
    if (this.size < this.members) {
      this.activities.sample(this.child, this.size === 0 ? 0 : 3 + random.below(30));
      drawing = this.project.count * 5;
      const value = schedule.justified(this.child);
      if (value >= 0) this.keep(this.size++, value);
      else if (random.below(50) === 0 && this.size === 0) this.idle++;
    } else {
      const mother = this.parent();
      const father = this.parent();
      this.activities.cross(mother, father, this.child);
      this.activities.change(this.child);
      const worst = worstOf(this.values, this.size);
      const value = schedule.justified(this.child);
      if (value >= 0 && value <= (this.values[worst] as number) && !this.isKnown(value)) this.keep(worst, value);
      this.idle++;
      // A stale population starts afresh; the best is remembered apart.
      if (this.idle > STALE * this.members) {
        this.members = Math.min(LARGEST_POPULATION, 2 * this.members);
        this.size = 0;
        this.idle = 0;
      }
    }
    return (schedule.steps() >> 2) + drawing + this.project.count * 3;
  }

  /** Takes a plan from outside into the population, by its starts. */
  adopt(start: Int32Array, value: number): void {
    this.schedule.start.set(start);
    this.keep(this.size < this.members ? this.size++ : worstOf(this.values, this.size), value);
  }

  private keep(slot: number, value: number): void {
    this.lists[slot] ??= new Int32Array(this.project.count);
    this.schedule.listInto(this.lists[slot]);
    this.values[slot] = value;
    if (value >= this.best) return;
    this.best = value;
    this.bestStart.set(this.schedule.start);
    this.idle = 0;
  }

  /** True when the population has a list of this value that is the same as the plan's. */
  private isKnown(value: number): boolean {
    const { child, schedule } = this;
    schedule.listInto(child);
    for (let k = 0; k < this.size; k++)
      if (this.values[k] === value && sameList(this.lists[k] as Int32Array, child)) return true;
    return false;
  }

  private parent(): Int32Array {
    return this.lists[chooseParent(this.values, this.size, this.random)] as Int32Array;
  }
}
