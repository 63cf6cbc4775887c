/**
 * Weights of household measures: U.S. Department of Agriculture, Agricultural Research Service, USDA National Nutrient Database for
 * Standard Reference, household weights of Release 28 and, where that has none, Release 26. Public domain (a work of the United
 * States Government). Bulk weights: of chopped food with the air between. `g` is the weight of a measure of `ml`
 * (1 US cup = 236.588 mL); `form` is how the food lies in it.
 */
export const DENSITIES = `
food | form | g | ml | release
rice-white-long-dry | as measured | 185 | 236.588 | 28
rice-white-long-cooked | as measured | 158 | 236.588 | 28
rice-brown-long-dry | as measured | 185 | 236.588 | 28
rice-brown-long-cooked | as measured | 202 | 236.588 | 28
pasta-dry | spaghetti | 91 | 236.588 | 28
pasta-cooked | spaghetti not packed | 124 | 236.588 | 28
pasta-cooked | spaghetti packed | 151 | 236.588 | 28
egg-noodles-cooked | as measured | 160 | 236.588 | 28
couscous-dry | as measured | 173 | 236.588 | 28
couscous-cooked | cooked | 157 | 236.588 | 28
bulgur-dry | as measured | 140 | 236.588 | 28
bulgur-cooked | as measured | 182 | 236.588 | 28
quinoa-dry | as measured | 170 | 236.588 | 28
quinoa-cooked | as measured | 185 | 236.588 | 28
barley-pearled-dry | as measured | 200 | 236.588 | 28
barley-pearled-cooked | as measured | 157 | 236.588 | 28
oats-rolled-dry | as measured | 81 | 236.588 | 28
oats-rolled-dry | as measured | 27 | 78.7838 | 28
flour-white | as measured | 125 | 236.588 | 28
lentils-dry | as measured | 192 | 236.588 | 28
lentils-cooked | as measured | 198 | 236.588 | 28
lentils-red-dry | as measured | 192 | 236.588 | 28
chickpeas-dry | as measured | 200 | 236.588 | 28
chickpeas-cooked | as measured | 164 | 236.588 | 28
kidney-beans-dry | as measured | 184 | 236.588 | 28
kidney-beans-cooked | as measured | 177 | 236.588 | 28
black-beans-dry | as measured | 194 | 236.588 | 28
black-beans-cooked | as measured | 172 | 236.588 | 28
white-beans-dry | as measured | 202 | 236.588 | 28
white-beans-cooked | as measured | 179 | 236.588 | 28
potato-raw | diced | 75 | 118.294 | 28
potato-boiled | as measured | 78 | 118.294 | 28
sweet-potato-raw | cubes | 133 | 236.588 | 28
sweet-potato-baked | as measured | 200 | 236.588 | 28
squash-butternut-raw | cubes | 140 | 236.588 | 28
squash-butternut-baked | cubes | 205 | 236.588 | 28
aubergine-raw | cubes | 82 | 236.588 | 28
aubergine-boiled | (1" cubes) | 99 | 236.588 | 28
courgette-raw | chopped | 124 | 236.588 | 28
courgette-raw | sliced | 113 | 236.588 | 28
courgette-boiled | sliced | 180 | 236.588 | 28
courgette-boiled | mashed | 120 | 118.294 | 28
pepper-red-raw | chopped | 149 | 236.588 | 28
pepper-red-raw | sliced | 92 | 236.588 | 28
pepper-red-boiled | strips | 135 | 236.588 | 28
onion-raw | chopped | 160 | 236.588 | 28
onion-raw | sliced | 115 | 236.588 | 28
onion-boiled | as measured | 210 | 236.588 | 28
leek-raw | as measured | 89 | 236.588 | 28
garlic-raw | as measured | 136 | 236.588 | 28
carrot-raw | chopped | 128 | 236.588 | 28
carrot-raw | grated | 110 | 236.588 | 28
carrot-boiled | slices | 78 | 118.294 | 28
celery-raw | chopped | 101 | 236.588 | 28
beetroot-raw | as measured | 136 | 236.588 | 28
broccoli-raw | chopped | 91 | 236.588 | 28
broccoli-boiled | chopped | 78 | 118.294 | 28
cauliflower-raw | chopped (1/2" pieces) | 107 | 236.588 | 28
cauliflower-boiled | (1" pieces) | 62 | 118.294 | 28
cabbage-raw | chopped | 89 | 236.588 | 28
cabbage-raw | shredded | 70 | 236.588 | 28
cabbage-boiled | shredded | 75 | 118.294 | 28
spinach-raw | as measured | 30 | 236.588 | 28
spinach-boiled | as measured | 180 | 236.588 | 28
kale-boiled | chopped | 130 | 236.588 | 28
green-beans-raw | 1/2" pieces | 100 | 236.588 | 28
green-beans-boiled | as measured | 125 | 236.588 | 28
peas-frozen | as measured | 134 | 236.588 | 28
peas-frozen-boiled | as measured | 80 | 118.294 | 28
sweetcorn-raw | as measured | 145 | 236.588 | 28
mushroom-raw | pieces or slices | 70 | 236.588 | 28
mushroom-raw | whole | 96 | 236.588 | 28
mushroom-boiled | pieces | 156 | 236.588 | 28
tomato-raw | cherry tomatoes | 149 | 236.588 | 28
tomato-raw | chopped or sliced | 180 | 236.588 | 28
tomato-canned | as measured | 240 | 236.588 | 28
tomato-paste | as measured | 66 | 59.147 | 28
tomato-paste | as measured | 262 | 236.588 | 28
cucumber-raw | slices | 52 | 118.294 | 28
radish-raw | slices | 116 | 236.588 | 28
lettuce-cos-raw | shredded | 47 | 236.588 | 28
parsley-raw | chopped | 60 | 236.588 | 28
lemon-juice | as measured | 244 | 236.588 | 28
milk-whole | as measured | 244 | 236.588 | 28
cheese-feta | crumbled | 150 | 236.588 | 28
cheese-cheddar | diced | 132 | 236.588 | 28
cheese-cheddar | melted | 244 | 236.588 | 28
cheese-mozzarella | shredded | 112 | 236.588 | 28
oil-olive | as measured | 216 | 236.588 | 28
oil-rapeseed | as measured | 218 | 236.588 | 28
oil-sunflower | as measured | 218 | 236.588 | 28
hummus-commercial | as measured | 246 | 236.588 | 28
peanut-butter | as measured | 258 | 236.588 | 28
almonds | whole | 143 | 236.588 | 28
almonds | sliced | 92 | 236.588 | 28
walnuts | chopped | 117 | 236.588 | 28
walnuts | ground | 80 | 236.588 | 28
sunflower-seeds | as measured | 140 | 236.588 | 28
pumpkin-seeds | as measured | 129 | 236.588 | 28
sesame-seeds | as measured | 144 | 236.588 | 28
coconut-milk-canned | as measured | 226 | 236.588 | 28
mustard-yellow | as measured | 249 | 236.588 | 28
honey | as measured | 339 | 236.588 | 28
egg-hard-boiled | chopped | 136 | 236.588 | 28
tofu-firm-casulfate | as measured | 126 | 118.294 | 28
chicken-breast-meat-roasted | chopped or diced | 140 | 236.588 | 28
pork-shoulder-roasted | diced | 135 | 236.588 | 28
yogurt-plain-whole | as measured | 245 | 236.588 | 26
butter-salted | as measured | 227 | 236.588 | 26
egg-raw | as measured | 243 | 236.588 | 26
sugar-white | as measured | 200 | 236.588 | 26
salt-table | as measured | 292 | 236.588 | 26
salt-table | as measured | 6 | 4.929 | 26
soy-sauce | as measured | 255 | 236.588 | 26
cheese-cheddar | shredded | 113 | 236.588 | 26
tuna-canned-water | solid or chunks | 154 | 236.588 | 26
tahini | as measured | 15 | 14.787 | 26
honey | as measured | 21 | 14.787 | 26
almonds | ground | 95 | 236.588 | 26
walnuts | as measured | 120 | 236.588 | 26
bread-white | crumbs | 45 | 236.588 | 26
oil-olive | as measured | 4.5 | 4.929 | 26
pickles-dill | chopped or diced | 143 | 236.588 | 26
`;
