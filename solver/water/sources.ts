/** Where the figures of water, pans and hobs come from. */
import type { Source } from '../source.ts';

export const WATER_TABLE: Source = {
  standing: 'secondary',
  cite: 'Specific heat and latent heat of water at 1 atm, physics data table in agreement with IAPWS steam tables',
};
export const WATER_DENSITY: Source = {
  standing: 'published',
  cite: 'Choi and Okos 1986, as tabulated in ASHRAE Handbook Refrigeration 2006, ch. 9, Table 2',
};
export const STANDARD_ATMOSPHERE: Source = {
  standing: 'derived',
  cite: 'Pressure of the standard atmosphere and the Antoine equation of water; agrees with the NOAA table of boiling points',
};
export const PAN_METALS: Source = {
  standing: 'published',
  cite: "Mechanical Engineer's Data Handbook, 3.4.4; mild steel: Çengel, Heat and Mass Transfer, property tables",
};
export const PAN_MASS: Source = {
  standing: 'common-practice',
  cite: 'common practice: about 10 kg of metal per m² of bottom, wall and lid',
};
export const HOB_EFFICIENCY: Source = {
  standing: 'secondary',
  cite: 'US Department of Energy water-boil tests: induction 84 %, electric 74 %, gas 40 %; Sweeney et al., Induction Cooking Technology Design and Assessment, has the same of electric and gas',
  region: 'US',
};
export const KETTLE_EFFICIENCY: Source = {
  standing: 'secondary',
  cite: 'Press test of electric kettles: 0.10 to 0.11 kWh a litre from 20 to 100 °C, which is 84 to 93 %; the lower end is used',
};
export const NATURAL_CONVECTION: Source = {
  standing: 'from-memory',
  cite: 'Correlations of natural convection on plates: Nu = 0.54 Ra^¼ and 0.15 Ra^⅓ facing up, 0.59 Ra^¼ and 0.10 Ra^⅓ upright (from memory, not verified)',
};
export const MASS_TRANSFER: Source = {
  standing: 'from-memory',
  cite: 'Chilton and Colburn analogy (from memory, not verified); its ratio of convection to evaporation agrees with Bowen, Phys. Rev. 27 (1926) 779',
};
export const HEAT_BALANCE: Source = {
  standing: 'derived',
  cite: 'Heat balance: what comes in is stored or lost',
};
export const SOAK_PRACTICE: Source = {
  standing: 'common-practice',
  cite: 'common practice: water to soak grain in is still at 85 °C',
};
export const SIMMER_PRACTICE: Source = {
  standing: 'common-practice',
  cite: 'common practice: a simmer is about 5 K below the boil',
};
export const HOB_LIMIT: Source = {
  standing: 'published',
  cite: 'Commission Regulation (EU) No 66/2014, Annex I, electric hobs',
  region: 'EU',
};
