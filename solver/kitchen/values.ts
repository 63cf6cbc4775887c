/** Building blocks of every document: ids, durations, amounts, and the closed lists the kitchen uses. */
import * as v from 'valibot';

/** A name for machines: lower-case words joined by hyphens. */
export const Id = v.pipe(
  v.string(),
  v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'lower-case letters, digits and single hyphens, such as "large-tray"'),
);

export const Name = v.pipe(
  v.string(),
  v.nonEmpty('a name that is not empty'),
  v.maxLength(120, 'at most 120 characters'),
);
export const Note = v.pipe(v.string(), v.maxLength(4000, 'at most 4,000 characters'));

const DURATION = /^P(?:(\d+)W|(?:(\d+)D)?(?:T(?=\d)(?:(\d+)H)?(?:(\d+)M)?(?:(\d+)S)?)?)$/;

/** A length of time as ISO 8601-1:2019 writes it, whole weeks or days to seconds: `PT45M`, `PT2M30S`, `P3D`. */
export const Duration = v.pipe(
  v.string(),
  v.check(
    (text) => text.length > 1 && text !== 'P' && DURATION.test(text),
    'an ISO 8601 duration such as "PT45M" or "PT2M30S"',
  ),
);

/**
 * Minutes of an ISO 8601 duration, exact (seconds give fractions).
 * @param text a duration that the schema accepted
 */
export function durationMinutes(text: string): number {
  const parts = DURATION.exec(text);
  if (parts === null) throw new Error(`not an ISO 8601 duration: ${text}`);
  const [weeks, days, hours, minutes, seconds] = parts.slice(1).map((part) => Number(part ?? 0));
  return weeks! * 10080 + days! * 1440 + hours! * 60 + minutes! + seconds! / 60;
}

/** Writes whole minutes as an ISO 8601 duration: 95 becomes `PT95M`. */
export function minutesDuration(minutes: number): string {
  return `PT${minutes}M`;
}

const number = (least: number, most: number, unit: string) =>
  v.pipe(
    v.number(),
    v.minValue(least, `a number from ${least} to ${most} ${unit}`),
    v.maxValue(most, `a number from ${least} to ${most} ${unit}`),
  );
const whole = (least: number, most: number, unit: string) =>
  v.pipe(number(least, most, unit), v.integer(`a whole number of ${unit}`));

export const Celsius = number(-40, 600, '°C');
export const Watts = number(0, 50_000, 'W');
export const Grams = number(0, 1_000_000, 'g');
export const Millilitres = number(0, 1_000_000, 'mL');
export const Litres = number(0, 10_000, 'L');
export const Count = whole(0, 10_000, 'pieces');
export const Portions = whole(1, 2_000, 'portions');
export const Percent = whole(1, 100, '%');
export const Places = whole(0, 500, 'places');
export { number as numberBetween, whole as wholeBetween };

/** The fourteen groups of Regulation (EU) 1169/2011, Annex II. */
export const ALLERGENS = [
  'gluten',
  'crustaceans',
  'eggs',
  'fish',
  'peanuts',
  'soybeans',
  'milk',
  'nuts',
  'celery',
  'mustard',
  'sesame',
  'sulphites',
  'lupin',
  'molluscs',
] as const;
export const Allergen = v.picklist(ALLERGENS, `one of ${ALLERGENS.join(', ')}`);
export type Allergen = v.InferOutput<typeof Allergen>;

/** The cereals containing gluten that Annex II names; spelt and khorasan are wheat. */
export const GLUTEN_CEREALS = ['wheat', 'rye', 'barley', 'oats'] as const;
export const GlutenCereal = v.picklist(GLUTEN_CEREALS, `one of ${GLUTEN_CEREALS.join(', ')}`);
export type GlutenCereal = v.InferOutput<typeof GlutenCereal>;

/** What an eater can say to avoid: a group of the Annex, one cereal of its first, or an allergen by its name in United States law. */
export const AVOIDABLE = [...ALLERGENS, ...GLUTEN_CEREALS, 'tree-nuts', 'crustacean-shellfish'] as const;
export const Avoidable = v.picklist(AVOIDABLE, `one of ${AVOIDABLE.join(', ')}`);
export type Avoidable = v.InferOutput<typeof Avoidable>;

/** What soil tells apart of allergens: the groups, and within gluten the cereals. */
export type AllergenMark = Allergen | GlutenCereal;

/** Raw foods that must not reach what is eaten without cooking. */
export const RAW_KINDS = ['meat', 'poultry', 'fish', 'egg'] as const;
export const RawKind = v.picklist(RAW_KINDS, `one of ${RAW_KINDS.join(', ')}`);
export type RawKind = v.InferOutput<typeof RawKind>;

/** A mark of soil: an allergen or a gluten cereal, a raw food, or the leavings of a component in a vessel (`used:lentils`). */
export type Soil = AllergenMark | `raw-${RawKind}` | `used:${string}`;

/** Clock time of a day, `HH:MM`. */
export const ClockTime = v.pipe(v.string(), v.regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a clock time such as "20:30"'));

/** A wall-clock start in a named time zone. */
export const ZonedStart = v.strictObject({
  local: v.pipe(
    v.string(),
    v.regex(/^\d{4}-\d\d-\d\dT([01]\d|2[0-3]):[0-5]\d$/, 'a local date and time such as "2026-03-08T10:00"'),
  ),
  zone: v.pipe(v.string(), v.nonEmpty('a time zone of the IANA database such as "Europe/Lisbon"')),
});
export type ZonedStart = v.InferOutput<typeof ZonedStart>;
