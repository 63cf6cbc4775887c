/**
 * Answers that hang on documents alone, worked out once and remembered as long as the documents are: a plan is translated and checked
 * again with every replan, and its documents stay the same. What is asked of must not change, nor what was answered.
 */

/** @returns the function, that answers for each object once */
export function onceFor<A extends object, T>(answer: (of: A) => T): (of: A) => T {
  const known = new WeakMap<A, { readonly value: T }>();
  return (of) => {
    let kept = known.get(of);
    if (kept === undefined) known.set(of, (kept = { value: answer(of) }));
    return kept.value;
  };
}

/** @returns the function, that answers for each two objects once */
export function onceForBoth<A extends object, B extends object, T>(answer: (a: A, b: B) => T): (a: A, b: B) => T {
  const of = onceFor((a: A) => onceFor((b: B) => answer(a, b)));
  return (a, b) => of(a)(b);
}

/** @returns the function, that answers for each object, with everything else that the answer hangs on as a text or number, once */
export function onceOn<A extends object, K extends string | number, T>(
  answer: (of: A, on: K) => T,
): (of: A, on: K) => T {
  const answers = onceFor((_: A) => new Map<K, { readonly value: T }>());
  return (of, on) => {
    const known = answers(of);
    let kept = known.get(on);
    if (kept === undefined) known.set(on, (kept = { value: answer(of, on) }));
    return kept.value;
  };
}
