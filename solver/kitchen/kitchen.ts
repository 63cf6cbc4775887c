/** The kitchen document: the fixed equipment, its measured tables, and its tariffs. */
import * as v from 'valibot';
import { Celsius, Grams, Id, Litres, Millilitres, Name, Note, Places, Watts, numberBetween } from './values.ts';

/** A reading of a measured table: minutes since the start, and the temperature then. Sorted by minutes. */
export const Reading = v.strictObject({ minutes: numberBetween(0, 1440, 'minutes'), celsius: Celsius });

export const OvenFunction = v.picklist(['conventional', 'fan', 'grill'], 'one of conventional, fan, grill');
export type OvenFunction = v.InferOutput<typeof OvenFunction>;

export const OvenKind = v.picklist(['electric', 'gas', 'counter'], 'one of electric, gas, counter');
export type OvenKind = v.InferOutput<typeof OvenKind>;

export const Oven = v.strictObject({
  id: Id,
  name: Name,
  volumeL: Litres,
  powerW: Watts,
  /** Default: electric. `counter`: a small electric oven that stands on the counter. */
  kind: v.optional(OvenKind),
  /** Mean draw while a temperature is held, W; absent: as the oven's heat is reckoned. */
  holdingW: v.optional(Watts),
  functions: v.pipe(v.array(OvenFunction), v.nonEmpty('at least one function')),
  dial: v.strictObject({ leastC: Celsius, mostC: Celsius, stepC: numberBetween(1, 50, '°C') }),
  /** From the top down. Each rack has room for 100 % of a rack. */
  racks: v.pipe(v.array(v.strictObject({ id: Id, name: Name })), v.nonEmpty('at least one rack')),
  /** How much lower the fan is set than conventional heat, K. Default: 20. */
  fanOffsetK: v.optional(numberBetween(0, 60, 'K')),
  /** Readings of this oven's thermometer, to which its heat is fitted; absent: a typical oven of its volume and kind. */
  readings: v.optional(
    v.strictObject({
      /** From cold at full power to a temperature. */
      toHeat: v.optional(v.array(Reading)),
      /** Some minutes after switching off at `fromC`, door shut. */
      afterOff: v.optional(v.array(v.strictObject({ fromC: Celsius, ...Reading.entries }))),
    }),
  ),
  /** The whole course instead: temperature against minutes since switching on from cold at full power; rising. */
  heating: v.optional(v.pipe(v.array(Reading), v.minLength(2, 'at least two readings'))),
  /** Temperature against minutes since switching off at the hottest reading; falling. */
  cooling: v.optional(v.pipe(v.array(Reading), v.minLength(2, 'at least two readings'))),
});
export type Oven = v.InferOutput<typeof Oven>;

export const Burner = v.strictObject({
  id: Id,
  name: Name,
  /** Pans from `leastPanCm` to `mostPanCm` across stand on it. */
  leastPanCm: numberBetween(5, 80, 'cm'),
  mostPanCm: numberBetween(5, 80, 'cm'),
  powerW: Watts,
  /** Share of its power that gets into the pan; absent: as published for the hob's kind of heat. */
  efficiency: v.optional(numberBetween(0.05, 1, '(a share of 1)')),
  /** Minutes to bring a litre of cold water to the boil, as measured; absent: reckoned from power, pan and losses. */
  boilMinutesPerLitre: v.optional(
    v.strictObject({
      lidded: numberBetween(0.2, 60, 'min/L'),
      open: numberBetween(0.2, 60, 'min/L'),
    }),
  ),
});
export type Burner = v.InferOutput<typeof Burner>;

export const Metal = v.picklist(
  ['steel', 'aluminium', 'cast-iron', 'iron', 'copper', 'glass'],
  'one of steel, aluminium, cast-iron, iron, copper, glass',
);
export type Metal = v.InferOutput<typeof Metal>;

export const Pan = v.strictObject({
  id: Id,
  name: Name,
  volumeMl: Millilitres,
  acrossCm: numberBetween(5, 80, 'cm'),
  lid: v.boolean(),
  /** What it is made of; absent: steel. */
  metal: v.optional(Metal),
  /** Mass with its lid, empty; absent: typical of its size. */
  massG: v.optional(Grams),
  /** Room of the basket or net that fits it, mL; absent: it has none. */
  insertMl: v.optional(Millilitres),
  /** Steamer tiers that fit on top. */
  tiers: v.optional(Places),
  /** Minutes that lidded water off the heat stays hot enough to soak in, against its volume, as measured; absent: reckoned. */
  staysHot: v.optional(v.array(v.strictObject({ ml: Millilitres, minutes: numberBetween(0, 600, 'minutes') }))),
});
export type Pan = v.InferOutput<typeof Pan>;

const Thing = { id: Id, name: Name };
export const Tray = v.strictObject({ ...Thing });
export const Board = v.strictObject({ ...Thing });
export const Bowl = v.strictObject({ ...Thing, volumeMl: Millilitres });
export const Tool = v.strictObject({ ...Thing, kind: Id });

/** A one-function appliance: microwave, air fryer, slow cooker… */
export const Appliance = v.strictObject({ ...Thing, does: Id, powerW: Watts, places: Places });
export const Kettle = v.strictObject({
  ...Thing,
  mostMl: Millilitres,
  powerW: Watts,
  /** Minutes to bring a litre of cold water to the boil, as measured; absent: reckoned from its power. */
  minutesPerLitre: v.optional(numberBetween(0.2, 60, 'min/L')),
});
export type Kettle = v.InferOutput<typeof Kettle>;

/** Minutes of hands and sink that a wash takes. */
export const Washing = v.strictObject({
  board: numberBetween(0.5, 30, 'minutes'),
  pan: numberBetween(0.5, 30, 'minutes'),
  tray: numberBetween(0.5, 30, 'minutes'),
  bowl: numberBetween(0.5, 30, 'minutes'),
  tool: numberBetween(0.5, 30, 'minutes'),
  hands: numberBetween(0.3, 5, 'minutes'),
});

export const PowerLimit = v.strictObject({
  id: Id,
  name: Name,
  limitW: Watts,
  /** Ids of ovens, burners, kettle and appliances on it; absent: everything electric in the kitchen. */
  members: v.optional(v.array(Id)),
});

export const Kitchen = v.strictObject({
  kind: v.literal('kitchen'),
  version: v.literal(1),
  id: Id,
  name: Name,
  note: v.optional(Note),
  /** Temperature of the room, °C. */
  roomC: Celsius,
  /** Height above the sea, m: water boils cooler up there; absent: 0. */
  altitudeM: v.optional(numberBetween(-500, 5000, 'm')),
  /** Of cold tap water, °C; absent: 15. */
  tapC: v.optional(numberBetween(1, 35, '°C')),
  ovens: v.array(Oven),
  appliances: v.array(Appliance),
  hob: v.strictObject({
    heat: v.picklist(['gas', 'ceramic', 'induction'], 'one of gas, ceramic, induction'),
    burners: v.array(Burner),
  }),
  kettle: v.optional(Kettle),
  pans: v.array(Pan),
  trays: v.array(Tray),
  boards: v.array(Board),
  bowls: v.array(Bowl),
  tools: v.array(Tool),
  sink: v.strictObject({ places: Places }),
  /** Room to stand things: shelves where food rests covered, racks where it cools, a rack where washed things dry. */
  resting: v.strictObject({ places: Places }),
  cooling: v.strictObject({ places: Places }),
  drying: v.strictObject({ places: Places }),
  fridgeL: Litres,
  freezerL: Litres,
  washing: Washing,
  power: v.array(PowerLimit),
  tariff: v.strictObject({
    currency: v.pipe(v.string(), v.regex(/^[A-Z]{3}$/, 'an ISO 4217 code such as "EUR"')),
    electricityPerKWh: numberBetween(0, 10, 'per kWh'),
    gasPerKWh: numberBetween(0, 10, 'per kWh'),
    waterPerM3: numberBetween(0, 100, 'per m³'),
    /** Of electricity, and of gas. */
    carbonGPerKWh: v.optional(numberBetween(0, 3000, 'g/kWh')),
    gasCarbonGPerKWh: v.optional(numberBetween(0, 3000, 'g/kWh')),
  }),
});
export type Kitchen = v.InferOutput<typeof Kitchen>;

/** Whether a pan is of a burner's size. */
export const panFits = (burner: Burner, pan: Pan): boolean =>
  pan.acrossCm >= burner.leastPanCm && pan.acrossCm <= burner.mostPanCm;
