/**
 * What raw and dry food weighs when it is cooked, from figures of the U.S. Department of Agriculture, Agricultural Research Service:
 * household weights of the USDA National Nutrient Database for Standard Reference, Release 26, and water contents of Release 28.
 * Public domain (works of the United States Government).
 *
 * `raw` g become `cooked` g. `of` says what was weighed: `edible` the part that is eaten, `bought` the whole with what is cut off.
 * `solids`: derived, not weighed: (100 − water when dry) ÷ (100 − water when cooked), which leaves out what is lost to the water.
 */
export const YIELDS = `
from | to | of | raw | cooked | source
pasta-dry | pasta-cooked | solids | 37.87 | 90.1 | solids balance of USDA SR28 water, NDB 20420 and 20421
pasta-wholewheat-dry | pasta-wholewheat-cooked | solids | 38.2 | 91.79 | solids balance of USDA SR28 water, NDB 20124 and 20125
egg-noodles-dry | egg-noodles-cooked | solids | 32.27 | 90.99 | solids balance of USDA SR28 water, NDB 20109 and 20110
rice-white-long-dry | rice-white-long-cooked | solids | 31.56 | 88.38 | solids balance of USDA SR28 water, NDB 20044 and 20045
rice-brown-long-dry | rice-brown-long-cooked | solids | 29.73 | 88.2 | solids balance of USDA SR28 water, NDB 20036 and 20037
bulgur-dry | bulgur-cooked | solids | 22.24 | 91.0 | solids balance of USDA SR28 water, NDB 20012 and 20013
quinoa-dry | quinoa-cooked | solids | 28.39 | 86.72 | solids balance of USDA SR28 water, NDB 20035 and 20137
barley-pearled-dry | barley-pearled-cooked | solids | 31.2 | 89.91 | solids balance of USDA SR28 water, NDB 20005 and 20006
lentils-dry | lentils-cooked | solids | 30.36 | 91.74 | solids balance of USDA SR28 water, NDB 16069 and 16070
chickpeas-dry | chickpeas-cooked | solids | 39.79 | 92.32 | solids balance of USDA SR28 water, NDB 16056 and 16057
kidney-beans-dry | kidney-beans-cooked | solids | 33.06 | 88.25 | solids balance of USDA SR28 water, NDB 16032 and 16033
black-beans-dry | black-beans-cooked | solids | 34.26 | 88.98 | solids balance of USDA SR28 water, NDB 16014 and 16015
white-beans-dry | white-beans-cooked | solids | 36.92 | 88.68 | solids balance of USDA SR28 water, NDB 16049 and 16050
couscous-dry | couscous-cooked | edible | 173 | 528 | USDA SR28, NDB 20028 and 20029: one cup of dry couscous and what it yields
chicken-thigh-skin-raw | chicken-thigh-skin-roasted | edible | 193 | 137 | USDA SR26 household weights, NDB 05091 and 05094: one thigh
chicken-drumstick-skin-raw | chicken-drumstick-skin-roasted | edible | 133 | 105 | USDA SR26 household weights, NDB 05066 and 05069: one drumstick
beef-mince-80-raw | beef-mince-80-browned | edible | 226.796 | 149 | USDA SR26 household weights, NDB 23575: yield of half a pound raw
beef-mince-90-raw | beef-mince-90-browned | edible | 226.796 | 154 | USDA SR26 household weights, NDB 23565: yield of half a pound raw
beef-mince-95-raw | beef-mince-95-browned | edible | 226.796 | 154 | USDA SR26 household weights, NDB 23560: yield of half a pound raw
turkey-mince-raw | turkey-mince-cooked | edible | 453.592 | 330 | USDA SR26 household weights, NDB 05306: yield of one pound raw
lamb-mince-raw | lamb-mince-cooked | edible | 453.592 | 313 | USDA SR26 household weights, NDB 17225: yield of one pound raw
salmon-farmed-raw | salmon-farmed-cooked | edible | 198 | 178 | USDA SR26 household weights, NDB 15236 and 15237: half a fillet
cod-raw | cod-cooked | edible | 231 | 180 | USDA SR26 household weights, NDB 15015 and 15016: one fillet
potato-raw | potato-baked | bought | 213 | 173 | USDA SR26 household weights, NDB 11352 and 11356: a medium potato, in its skin
potato-raw | potato-boiled | bought | 213 | 167 | USDA SR26 household weights, NDB 11352 and 11367: a medium potato, peeling lost
sweet-potato-raw | sweet-potato-baked | bought | 130 | 114 | USDA SR26 household weights, NDB 11507 and 11508: one of five inches
peas-frozen | peas-frozen-boiled | edible | 283.495 | 253 | USDA SR26 household weights, NDB 11313: yield of a package of ten ounces
`;
