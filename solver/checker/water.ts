/**
 * Rule 7: a pool is filled before it is heated, used only after it boils and while it is hot enough, and never below its least
 * level. What fits the insert and the tiers is checked with the other places.
 */
import { boilMinutesOnBurner, reboilMinutes, staysHotMinutes } from '../water/boil.ts';
import { livedMinutes } from '../kitchen/lived.ts';
import { readPools, type PoolReading } from './pool-course.ts';
import type { Reading } from './reading.ts';
import type { Violation } from './violation.ts';

const rule = 7 as const;
type Tell = (message: string, minute: number, steps?: readonly string[]) => void;

/** Minutes of hands that filling, changing, putting back on the heat and emptying take. */
const WORK_MINUTES: Readonly<Record<string, number>> = { fill: 1, change: 2, reboil: 1, empty: 1 };
/** Of these, the work that is done at the sink. */
const AT_SINK: readonly string[] = ['change', 'empty'];

function checkWork({ course, work, pool }: PoolReading, reading: Reading, tell: Tell): void {
  for (const { id, step, start, end, segments, places } of work) {
    const minutes = livedMinutes(reading.plan.lived, id) ?? WORK_MINUTES[step];
    const hands = segments.filter(({ hands }) => hands === 'on');
    const when = reading.clock.at(start);
    if (minutes === undefined) {
      tell(`${pool.name} has work planned at ${when} that water does not need (${step}).`, start, [id]);
      continue;
    }
    if (hands.length !== 1 || hands[0]!.start !== start || hands[0]!.end !== end || end - start !== minutes)
      tell(`To ${step} ${pool.name} takes ${minutes} min of hands, and at ${when} it has ${end - start}.`, start, [id]);
    if (
      AT_SINK.includes(step) &&
      !places.some(({ kind, from, until }) => kind === 'sink' && from <= start && until >= end)
    )
      tell(`To ${step} ${pool.name} at ${when} takes the sink, which is not planned.`, start, [id]);
    if (start < course.from || end > course.until)
      tell(
        `${pool.name} has its pan ${reading.clock.span(course.from, course.until)}, and is worked on at ${when}.`,
        start,
        [id],
      );
  }
}

function checkBoils(read: PoolReading, reading: Reading, tell: Tell): void {
  const { course, pool, pan, work, levelBefore } = read;
  const { clock, plan } = reading;
  const most = pool.boils ?? 1;
  if (course.boils.length > most)
    tell(`${pool.name} comes to the boil ${course.boils.length} times, and ${most} is allowed.`, course.from);
  if (pan !== undefined && pan.volumeMl < pool.waterMl)
    tell(`${pan.name} holds ${pan.volumeMl} mL, and ${pool.name} is ${pool.waterMl} mL.`, course.from);
  course.boils.forEach((boil, index) => {
    const { onHeat, boilsAt, offHeat, hotUntil, water } = boil;
    const before = course.boils[index - 1];
    const told: Tell = (message) => tell(message, onHeat);
    const at = clock.at(onHeat);
    if (boil.boil !== index + 1 || (water === 'cold') !== (index === 0))
      told(`The boils of ${pool.name} are not in order.`, onHeat);
    if (before !== undefined && onHeat < before.offHeat)
      told(`${pool.name} goes on the heat at ${at} while it is on it.`, onHeat);
    if (!(course.from <= onHeat && onHeat <= boilsAt && boilsAt <= offHeat && offHeat <= hotUntil))
      told(
        `${pool.name} boils at ${clock.at(boilsAt)}, outside its time on the heat, ${clock.span(onHeat, offHeat)}.`,
        onHeat,
      );
    const kind = water === 'cold' ? 'fill' : water === 'fresh' ? 'change' : 'reboil';
    const since = before?.offHeat ?? course.from;
    const made = work.find(
      ({ step, start, end }) => step === kind && start >= since && (kind === 'reboil' ? start : end) <= onHeat,
    );
    if (made === undefined)
      told(`${pool.name} goes on the heat at ${at}, and nobody is planned to ${kind} it before.`, onHeat);
    const burner = plan.kitchen.hob.burners.find(({ id }) => id === boil.burner);
    if (burner === undefined || pan === undefined)
      return told(`${pool.name} goes on ${boil.burner} in ${course.pan}, and the kitchen lacks one of them.`, onHeat);
    const level = levelBefore(onHeat);
    const stillHot = water === 'again' && before !== undefined && onHeat <= before.hotUntil;
    const minutes = (stillHot ? reboilMinutes : boilMinutesOnBurner)(plan.kitchen, burner, pan, level, pan.lid);
    if (boilsAt - onHeat < minutes)
      told(
        `${pool.name} (${level} mL) on the heat at ${at} boils at ${clock.at(onHeat + minutes)} and not at ${clock.at(boilsAt)}.`,
        onHeat,
      );
    const hot = offHeat + staysHotMinutes(plan.kitchen, pan, levelBefore(offHeat));
    if (hotUntil > hot)
      told(
        `${pool.name} off the heat at ${clock.at(offHeat)} is hot enough until ${clock.at(hot)} and not until ${clock.at(hotUntil)}.`,
        onHeat,
      );
  });
}

function checkUses(read: PoolReading, reading: Reading, tell: Tell): void {
  const { course, pool, pan, uses, work, levelBefore, waterOf } = read;
  const { clock } = reading;
  for (const { how, boil: number, from, until, ml, label, steps } of uses) {
    const boil = course.boils.find((each) => each.boil === number);
    const when = clock.at(from);
    const told: Tell = (message) => tell(message, from, steps);
    if (boil === undefined) {
      told(`${label} at ${when} wants a boil of ${pool.name} that is not planned.`, from);
      continue;
    }
    if (from < boil.boilsAt)
      told(`${label} begins at ${when}, and ${pool.name} boils at ${clock.at(boil.boilsAt)}.`, from);
    if (how === 'draw') {
      const hot = Math.min(
        boil.hotUntil,
        boil.offHeat + (pan === undefined ? 0 : staysHotMinutes(reading.plan.kitchen, pan, levelBefore(from))),
      );
      if (from > hot)
        told(`${label} draws from ${pool.name} at ${when}, and it is hot enough until ${clock.at(hot)}.`, from);
    } else if (until > boil.offHeat) {
      told(
        `${label} is in ${pool.name} until ${clock.at(until)}, which is off the heat at ${clock.at(boil.offHeat)}.`,
        from,
      );
    }
    const poured = work.find(
      ({ step, start, end }) => (step === 'change' || step === 'empty') && start < until && end > boil.boilsAt,
    );
    if (poured !== undefined)
      told(`${pool.name} is poured away at ${clock.at(poured.start)}, before or while ${label} uses it.`, from);
    const other = course.boils.find((each) => each.onHeat <= from && each.onHeat > boil.onHeat);
    if (other !== undefined && waterOf(other.boil) !== waterOf(number))
      told(`${label} at ${when} wants the water of an earlier boil of ${pool.name}.`, from);
    const drawn = uses
      .filter((each) => each.how === 'draw' && each.from === from)
      .reduce((sum, each) => sum + each.ml, 0);
    const left = levelBefore(from) - drawn;
    if (left < pool.leastMl)
      told(
        `${pool.name} is down to ${left} mL at ${when}${ml > 0 ? `, when ${label} draws ${ml} mL` : ''}; ${pool.leastMl} mL must stay in it.`,
        from,
      );
  }
  // Water drawn while others cook in it must leave enough for them too.
  for (const { how, from, until, label, steps } of uses) {
    if (how === 'draw') continue;
    const low = uses.find(
      (each) =>
        each.how === 'draw' && each.from > from && each.from < until && levelBefore(each.from + 1) < pool.leastMl,
    );
    if (low !== undefined)
      tell(`${pool.name} falls below ${pool.leastMl} mL while ${label} is in it.`, low.from, [...steps, ...low.steps]);
  }
}

/** The level that the plan shows is the level that the draws leave. */
function checkShown({ course, pool, uses, levelBefore }: PoolReading, reading: Reading, tell: Tell): void {
  for (const { how, from, steps } of uses) {
    if (how !== 'draw') continue;
    const left = levelBefore(from + 1);
    const shown = course.level.filter(({ minute }) => minute <= from).at(-1)?.ml;
    if (shown !== left)
      tell(
        `After ${reading.clock.at(from)} ${pool.name} is at ${left} mL, and the plan shows ${shown ?? 'nothing'}.`,
        from,
        steps,
      );
  }
}

export function checkWater(reading: Reading): readonly Violation[] {
  const violations: Violation[] = [];
  const tell: Tell = (message, minute, steps = []) => violations.push({ rule, message, steps, minute });
  const pools = readPools(reading);
  for (const read of pools) {
    checkWork(read, reading, tell);
    checkBoils(read, reading, tell);
    checkUses(read, reading, tell);
    checkShown(read, reading, tell);
    const { course, pool, uses, pan } = read;
    const outside = uses.find(({ from, until }) => from < course.from || until > course.until);
    if (outside !== undefined)
      tell(`${outside.label} uses ${pool.name} while its pan is not its own.`, outside.from, outside.steps);
    if (!read.work.some(({ step, end }) => step === 'empty' && end === course.until))
      tell(
        `${pan?.name ?? course.pan} is given back at ${reading.clock.at(course.until)}, and nobody is planned to empty ${pool.name}.`,
        course.until,
      );
  }
  const known = new Set(pools.map(({ pool }) => pool.id));
  for (const { need, place } of reading.uses)
    if (need.use === 'pool' && !known.has(place.id))
      tell(`Water of ${place.id} is used at ${reading.clock.at(place.from)}, and it is never filled.`, place.from);
  return violations;
}
