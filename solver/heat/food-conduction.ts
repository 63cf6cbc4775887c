/**
 * Heat leaving a solid food: transient conduction in a slab and in a sphere, by the series of its natural modes.
 *
 * Notation as in the books: Bi = h·L/k, Fo = α·t/L², θ = (T − T∞)/(T₀ − T∞), λₙ the roots of the shape's equation, Aₙ the weight of
 * mode n at the place looked at. L is the full thickness of a slab, the radius of a sphere. The one-term solution is the first term;
 * it is enough from Fo > 0.2 (of the half thickness), and the further terms are those that it leaves out before. Where Bi is below
 * 0.1 the food is nearly of one temperature, and lumping it gives the same.
 *
 * @source Çengel, Heat and Mass Transfer, chapter 4 (lumped analysis; one-term solutions); Carslaw and Jaeger, Conduction of Heat in
 *   Solids, for the series of a slab with another coefficient on either face
 */

/** A solid that cools: what its modes are, and how much each weighs at a place. */
export interface Modes {
  /** Roots of the shape's equation, rising, dimensionless. */
  readonly roots: readonly number[];
  /**
   * Weight of each mode in θ at a place.
   * @param place 0–1: across a slab from its lower to its upper face; from the centre of a sphere to its surface
   */
  readonly weights: (place: number) => readonly number[];
}

/** Terms that are kept: after as many, what is left out at Fo ≥ 0.001 is below a millionth. */
const TERMS = 40;
/** Halvings of an interval of length π: its width is then below 1e-15. */
const HALVINGS = 60;

/** The root between two points where a function changes its sign once. */
function rootBetween(from: number, to: number, f: (x: number) => number): number {
  let low = from;
  let high = to;
  const rising = f(high) > 0;
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (low + high) / 2;
    if (f(middle) > 0 === rising) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/**
 * Modes of a slab that loses heat at both faces.
 *
 * The temperature of a mode is cos λx + (Bi₁/λ)·sin λx, x from the lower face; its root solves
 * (λ² − Bi₁·Bi₂)·sin λ = λ·(Bi₁ + Bi₂)·cos λ.
 *
 * @param lowerBi h·L/k of the lower face with the full thickness L, ≥ 0 (0: no heat passes)
 * @param upperBi likewise of the upper face; not both 0
 * @param terms how many modes
 */
export function slabModes(lowerBi: number, upperBi: number, terms: number = TERMS): Modes {
  const equation = (x: number): number =>
    (x * x - lowerBi * upperBi) * Math.sin(x) - x * (lowerBi + upperBi) * Math.cos(x);
  // One root between each two multiples of π, the first between 0 and π, where the equation is below 0 just after 0.
  const roots = Array.from({ length: terms }, (_, n) =>
    rootBetween(n * Math.PI + 1e-9, (n + 1) * Math.PI - 1e-12, equation),
  );
  const strengths = roots.map((root) => {
    const a = lowerBi / root;
    // ∫ of the mode, and of its square, from 0 to 1.
    const mean = Math.sin(root) / root + (a * (1 - Math.cos(root))) / root;
    const square =
      (1 + a * a) / 2 + ((1 - a * a) * Math.sin(2 * root)) / (4 * root) + (a * (1 - Math.cos(2 * root))) / (2 * root);
    return mean / square;
  });
  return {
    roots,
    weights: (place) =>
      roots.map((root, n) => strengths[n]! * (Math.cos(root * place) + (lowerBi / root) * Math.sin(root * place))),
  };
}

/**
 * Modes of a sphere: 1 − λ·cot λ = Bi, A = 4(sin λ − λ·cos λ)/(2λ − sin 2λ) at the centre.
 * @param bi h·r/k with the radius r, > 0
 * @param terms how many modes
 */
export function sphereModes(bi: number, terms: number = TERMS): Modes {
  const equation = (x: number): number => (1 - bi) * Math.sin(x) - x * Math.cos(x);
  const roots = Array.from({ length: terms }, (_, n) =>
    rootBetween(n * Math.PI + 1e-9, (n + 1) * Math.PI - 1e-12, equation),
  );
  const strengths = roots.map((x) => (4 * (Math.sin(x) - x * Math.cos(x))) / (2 * x - Math.sin(2 * x)));
  return {
    roots,
    weights: (place) =>
      roots.map((x, n) => (place < 1e-9 ? strengths[n]! : (strengths[n]! * Math.sin(x * place)) / (x * place))),
  };
}

/**
 * θ at a place: what is left of the difference to the surroundings, 1 at first, 0 in the end.
 *
 * @param fo α·t/L², ≥ 0
 * @param terms how many to sum; 1 is the one-term solution
 */
export function thetaAt(modes: Modes, place: number, fo: number, terms: number = TERMS): number {
  if (fo <= 0) return 1;
  const weights = modes.weights(place);
  let sum = 0;
  for (let n = 0; n < Math.min(terms, modes.roots.length); n++)
    sum += weights[n]! * Math.exp(-(modes.roots[n]! ** 2) * fo);
  // Before heat from the faces is felt the sum of a finite number of terms wobbles about 1.
  return Math.min(1, Math.max(0, sum));
}

/**
 * The place in a slab that stays hottest, 0–1 from its lower face: where its first mode peaks.
 * @param lowerBi of the lower face; 0: nothing passes there, and it stays hottest itself
 */
export function hottestPlace(modes: Modes, lowerBi: number): number {
  const root = modes.roots[0]!;
  return Math.min(1, Math.atan2(lowerBi, root) / root);
}

/**
 * Fo at which θ at a place has fallen to a share.
 *
 * @param theta wanted, 0 < θ < 1
 * @returns α·t/L²; 0 for θ ≥ 1
 */
export function foAtTheta(modes: Modes, place: number, theta: number): number {
  if (theta >= 1) return 0;
  if (!(theta > 0)) throw new Error('food never reaches the temperature of its surroundings');
  const root = modes.roots[0]!;
  // Later than by the first term alone with a weight of 2, the most that there is.
  let high = Math.log(4 / theta) / root ** 2;
  let low = 0;
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (low + high) / 2;
    if (thetaAt(modes, place, middle) > theta) low = middle;
    else high = middle;
  }
  return high;
}

/** Share of the heat that has left a sphere: 1 − 3·Σ Aₙ·(sin λ − λ·cos λ)/λ³·exp(−λ²·Fo). */
export function heatGoneFromSphere(modes: Modes, fo: number, terms: number = TERMS): number {
  const weights = modes.weights(0);
  let left = 0;
  for (let n = 0; n < Math.min(terms, modes.roots.length); n++) {
    const x = modes.roots[n]!;
    left += weights[n]! * Math.exp(-x * x * fo) * 3 * ((Math.sin(x) - x * Math.cos(x)) / x ** 3);
  }
  return Math.min(1, Math.max(0, 1 - left));
}

/** Share of the heat that has left a slab. */
export function heatGoneFromSlab(modes: Modes, lowerBi: number, fo: number): number {
  const weights = modes.weights(0);
  let left = 0;
  modes.roots.forEach((root, n) => {
    const mean = Math.sin(root) / root + ((lowerBi / root) * (1 - Math.cos(root))) / root;
    left += weights[n]! * mean * Math.exp(-root * root * fo);
  });
  return Math.min(1, Math.max(0, 1 - left));
}

/**
 * θ of a food of one temperature throughout, by the lumped analysis: exp(−Bi·Fo·A·L/V).
 *
 * @param bi h·L/k
 * @param fo α·t/L²
 * @param faces surface × L ÷ volume: 1 for a slab that loses heat at one face with L its thickness, 3 for a sphere with L its radius
 * @source Çengel, Heat and Mass Transfer, chapter 4: right within 5 % for Bi (with L = volume ÷ surface) below 0.1
 */
export const lumpedTheta = (bi: number, fo: number, faces: number): number => Math.exp(-bi * fo * faces);
