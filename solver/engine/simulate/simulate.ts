/**
 * What becomes of a plan when lengths vary: its order is kept, and each sample is a longest path.
 *
 * Choices and orders stay as planned. What the plan lets begin as soon as what it waits for is over begins so here too, early or
 * late; what it lets wait on purpose begins at its planned time, or when what it waits for is over if that is later. So with every
 * length as planned the times are the planned ones. Longest gaps and deadlines hold nothing back: they are limits that a sample
 * keeps or breaks.
 *
 * Papers: Malcolm, Roseboom, Clark, Fazar 1959 (networks with uncertain lengths); Van Slyke 1963, "Monte Carlo methods and the PERT
 * problem" (the criticality index).
 */
import type { OrderArc } from '../explain/plan-order.ts';
import { Random } from '../random.ts';
import { TICKS, twoPiece } from './two-piece.ts';

/** An arc whose `least` varies. */
export interface Varied {
  /** Position among the arcs. */
  readonly arc: number;
  /** Arcs of limits that move with it: what takes longer by nature may also last longer. */
  readonly moves: readonly number[];
  /** Most that it can be less or more than planned, ticks. */
  readonly early: number;
  readonly late: number;
  /** Whose risk it is. */
  readonly owner: number;
}

export interface SimulateAsked {
  /** Of the plan's order. */
  readonly arcs: readonly OrderArc[];
  /** Planned minutes by node; −1 for absent tasks. */
  readonly times: Int32Array;
  readonly varied: readonly Varied[];
  readonly owners: number;
  /** Nodes whose latest is the finish. */
  readonly finish: readonly number[];
  /** Arcs that are limits, to be counted where they break. */
  readonly limits: readonly number[];
  /** What was before this minute is as it was. */
  readonly from: number;
  readonly samples: number;
  readonly seed: number;
  readonly shouldStop?: () => boolean;
}

export interface Simulated {
  /** Finishes in ticks, least first; fewer than asked where it was stopped. */
  readonly finishes: Int32Array;
  /** By owner: the share of samples in which a length of its own lies on the longest chain. */
  readonly critical: Float64Array;
  /** By owner: minutes over plan that its lengths bring into the longest chain, mean over all samples. */
  readonly delay: Float64Array;
  /** By limit: the share of samples that break it. */
  readonly broken: Float64Array;
  /** Share of the samples that break any limit. */
  readonly anyBroken: number;
  readonly stopped: boolean;
}

/** Samples between looks at the asker. */
const POLL = 64;

/** Runs the samples. */
export function simulate(asked: SimulateAsked): Simulated {
  const { times, varied, owners, finish, limits, samples, from } = asked;
  const random = new Random(asked.seed);
  const isLimit = new Set(limits);
  const nodes = times.length;
  // Arcs that hold something back, in the order of the planned times, so that one or two passes are enough.
  const forward = asked.arcs
    .map((arc, index) => ({ ...arc, index }))
    .filter((arc) => arc.to !== 0 && arc.least >= 0 && !isLimit.has(arc.index) && times[arc.to]! >= from)
    .sort((a, b) => times[a.from]! - times[b.from]! || times[a.to]! - times[b.to]! || a.from - b.from || a.to - b.to);
  const count = forward.length;
  const source = Int32Array.from(forward, (arc) => arc.from);
  const target = Int32Array.from(forward, (arc) => arc.to);
  const planned = Int32Array.from(forward, (arc) => arc.least * TICKS);
  const place = new Map(forward.map((arc, position) => [arc.index, position]));
  const least = planned.slice();
  const release = releases(forward, times, from);
  const drawn = varied
    .map((each) => ({ ...each, position: place.get(each.arc) ?? -1 }))
    .filter((each) => each.position >= 0);
  const ownerOf = new Int32Array(count).fill(-1);
  for (const { position, owner } of drawn) ownerOf[position] = owner;
  const limitArcs = limits.map((index) => asked.arcs[index]!);
  const shift = new Int32Array(asked.arcs.length);

  const finishes = new Int32Array(samples);
  const critical = new Float64Array(owners);
  const delay = new Float64Array(owners);
  const broken = new Float64Array(limits.length);
  const now = new Int32Array(nodes);
  const raisedBy = new Int32Array(nodes);
  const seen = new Int32Array(owners).fill(-1);
  let anyBroken = 0;
  let done = 0;
  for (; done < samples; done++) {
    if (done % POLL === 0 && asked.shouldStop?.() === true) break;
    for (const each of drawn) {
      const more = Math.max(-planned[each.position]!, twoPiece(random, each.early, each.late));
      least[each.position] = planned[each.position]! + more;
      for (const arc of each.moves) shift[arc] = more;
    }
    now.set(release);
    raisedBy.fill(-1);
    for (let changed = true; changed;) {
      changed = false;
      for (let arc = 0; arc < count; arc++) {
        const reached = now[source[arc]!]! + least[arc]!;
        const to = target[arc]!;
        if (reached <= now[to]!) continue;
        now[to] = reached;
        raisedBy[to] = arc;
        changed = true;
      }
    }
    let last = finish[0] ?? 0;
    for (const node of finish) if (now[node]! > now[last]!) last = node;
    finishes[done] = now[last]!;
    follow(last);
    let any = false;
    limitArcs.forEach((arc, index) => {
      if (now[arc.to]! - now[arc.from]! >= arc.least * TICKS - shift[limits[index]!]!) return;
      broken[index]!++;
      any = true;
    });
    if (any) anyBroken++;
  }
  const total = Math.max(1, done);
  return {
    finishes: finishes.slice(0, done).sort(),
    critical: critical.map((each) => each / total),
    delay: delay.map((each) => each / total / TICKS),
    broken: broken.map((each) => each / total),
    anyBroken: anyBroken / total,
    stopped: done < samples,
  };

  /** Books the lengths along the longest chain, last to first. */
  function follow(end: number): void {
    let steps = 0;
    for (let node = end; node > 0 && steps++ <= nodes;) {
      const arc = raisedBy[node]!;
      if (arc < 0) return;
      const owner = ownerOf[arc]!;
      if (owner >= 0) {
        if (seen[owner] !== done) {
          seen[owner] = done;
          critical[owner]!++;
        }
        delay[owner]! += least[arc]! - planned[arc]!;
      }
      node = source[arc]!;
    }
  }
}

/**
 * Earliest ticks by node: the planned time of what is past and of what the plan lets wait on purpose; 0 of what follows at once on
 * something earlier, or on something of the same minute that does.
 */
function releases(
  forward: readonly { readonly from: number; readonly to: number; readonly least: number }[],
  times: Int32Array,
  from: number,
): Int32Array {
  const follows = new Uint8Array(times.length);
  const tight = forward.filter((arc) => arc.from !== arc.to && times[arc.from]! + arc.least === times[arc.to]!);
  for (let changed = true; changed;) {
    changed = false;
    for (const arc of tight) {
      if (follows[arc.to] === 1 || (arc.from !== 0 && arc.least === 0 && follows[arc.from] === 0)) continue;
      follows[arc.to] = 1;
      changed = true;
    }
  }
  return times.map((time, node) => (time < 0 ? 0 : time < from || follows[node] === 0 ? time * TICKS : 0));
}
