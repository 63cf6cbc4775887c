/**
 * Hands units from those who give to those who take: a capacity or a level, seen as tokens.
 *
 * A store holds some tokens at first. Events give tokens to it or take them from it, each at a time that is a node's time plus
 * an offset. Every token taken is one that lay there at first or was given no later. If each taker keeps coming no earlier than
 * those who gave its tokens, then however the times move, no more is ever taken than was there: this is what makes the
 * precedences of a partial-order schedule enough for a capacity (chaining: Policella, Cesta, Oddi, Smith 2007, "From precedence
 * constraint posting to partial order schedules") and for a level (resource flows: Artigues, Michelon, Reusser 2003).
 */

export interface TokenEvent {
  /** Node of the plan's order; 0 is the origin, so that an event at a fixed minute is the origin plus an offset. */
  readonly node: number;
  readonly offset: number;
  /** When it happens in the solution, minutes: the node's time plus the offset. */
  readonly time: number;
  /** Tokens given (positive) or taken (negative). */
  readonly amount: number;
}

/** A taker that must come no earlier than a giver. */
export interface TokenFlow {
  readonly giver: TokenEvent;
  readonly taker: TokenEvent;
}

interface Lot {
  /** Null: there from the outset. */
  readonly giver: TokenEvent | null;
  left: number;
}

/**
 * Matches takers with givers, preferring what asks for no new precedence: a giver that comes before in any case, then what was
 * there at first, then the earliest given, which leaves the taker most room.
 *
 * @param initial tokens at first, ≥ 0
 * @param events in any order; at one time giving comes before taking
 * @param precedes true where the first node is known to come no later than the second whatever the times
 * @returns the flows that ask for a precedence which `precedes` does not know and which is not a matter of fixed minutes alone
 * @throws Error where more is taken than there is, for then the times are no solution
 */
export function matchTokens(
  initial: number,
  events: readonly TokenEvent[],
  precedes: (before: number, after: number) => boolean,
): readonly TokenFlow[] {
  const inOrder = [...events].sort(
    (a, b) => a.time - b.time || Number(b.amount > 0) - Number(a.amount > 0) || a.node - b.node || a.offset - b.offset,
  );
  const flows: TokenFlow[] = [];
  let lots: Lot[] = initial > 0 ? [{ giver: null, left: initial }] : [];
  for (const event of inOrder) {
    if (event.amount > 0) {
      lots.push({ giver: event, left: event.amount });
      continue;
    }
    // Lots stand in order of time, the first ones first, and are gone through once for each preference.
    let missing = -event.amount;
    for (let rank = 0; rank <= LAST && missing > 0; rank++)
      for (const lot of lots) {
        if (missing === 0) break;
        if (lot.left === 0 || rankOf(lot, event, precedes) !== rank) continue;
        const part = Math.min(missing, lot.left);
        lot.left -= part;
        missing -= part;
        if (rank === LAST && lot.giver !== null) flows.push({ giver: lot.giver, taker: event });
      }
    if (missing > 0) throw new Error(`${missing} tokens too few at minute ${event.time}`);
    lots = lots.filter((lot) => lot.left > 0);
  }
  return flows;
}

const LAST = 2;

function rankOf(
  { giver }: Lot,
  taker: TokenEvent,
  precedes: (before: number, after: number) => boolean,
): 0 | 1 | typeof LAST {
  if (giver === null) return 1;
  if (giver.node === taker.node) return giver.offset <= taker.offset ? 0 : LAST;
  return giver.offset === 0 && taker.offset === 0 && precedes(giver.node, taker.node) ? 0 : LAST;
}
