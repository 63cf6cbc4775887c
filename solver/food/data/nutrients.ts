/**
 * Foods and their nutrients per 100 g edible portion: U.S. Department of Agriculture, Agricultural Research Service, USDA National
 * Nutrient Database for Standard Reference, Release 28 (SR28), abbreviated file. Public domain (a work of the United States
 * Government). `ndb` is USDA's number of the food, `description` USDA's own short description.
 *
 * A dash stands where SR28 has no value, which is not nought. Carbohydrate is "by difference" and includes fibre, so that water,
 * protein, fat, carbohydrate and ash make 100 g. `kcal` is USDA's printed energy, by its own factors. Sodium is in mg, refuse in
 * percent of the food as bought, all else in g. Refuse is given for vegetables, fruit and egg only: of meat, USDA's counts more than the bone.
 */
export const NUTRIENTS = `
key | food | state | ndb | description | kcal | water | protein | fat | saturates | carbohydrate | sugars | fibre | sodium | refuse
chicken-thigh-skin-raw | Chicken thigh, meat and skin | raw | 05091 | CHICKEN,BROILERS OR FRYERS,THIGH,MEAT&SKN,RAW | 221 | 66.47 | 16.52 | 16.61 | 4.524 | 0.25 | 0 | 0 | 81 | -
chicken-thigh-skin-roasted | Chicken thigh, meat and skin | roasted | 05094 | CHICKEN,BROILERS OR FRYERS,THIGH,MEAT&SKN,CKD,RSTD | 232 | 61.96 | 23.26 | 14.71 | 4.111 | 0 | 0 | 0 | 102 | -
chicken-thigh-meat-raw | Chicken thigh, meat only | raw | 05096 | CHICKEN,BROILERS OR FRYERS,DK MEAT,THIGH,MEAT ONLY,RAW | 121 | 76.22 | 19.66 | 4.12 | 1.097 | 0 | 0 | 0 | 95 | -
chicken-thigh-meat-roasted | Chicken thigh, meat only | roasted | 05098 | CHICKEN,BROILERS OR FRYERS,THIGH,MEAT ONLY,CKD,RSTD | 179 | 67 | 24.76 | 8.15 | 2.311 | 0 | 0 | 0 | 106 | -
chicken-drumstick-skin-raw | Chicken drumstick, meat and skin | raw | 05066 | CHICKEN,BROILERS OR FRYERS,DRUMSTK,MEAT&SKN,RAW | 161 | 72.46 | 18.08 | 9.2 | 2.459 | 0.11 | 0 | 0 | 106 | -
chicken-drumstick-skin-roasted | Chicken drumstick, meat and skin | roasted | 05069 | CHICKEN,BROILERS OR FRYERS,DRUMSTK,MEAT&SKN,CKD,RSTD | 191 | 66.39 | 23.35 | 10.15 | 2.74 | 0 | 0 | 0 | 123 | -
chicken-breast-meat-raw | Chicken breast, skinless meat only | raw | 05062 | CHICKEN,BROILER OR FRYERS,BRST,SKINLESS,BNLESS,MEAT ONLY,RAW | 120 | 73.9 | 22.5 | 2.62 | 0.563 | 0 | 0 | 0 | 45 | -
chicken-breast-meat-roasted | Chicken breast, meat only | roasted | 05064 | CHICKEN,BROILERS OR FRYERS,BREAST,MEAT ONLY,CKD,RSTD | 165 | 65.26 | 31.02 | 3.57 | 1.01 | 0 | 0 | 0 | 74 | -
turkey-mince-raw | Turkey, ground | raw | 05305 | GROUND TURKEY,RAW | 148 | 72.36 | 19.66 | 7.66 | 2.024 | 0 | 0 | 0 | 58 | -
turkey-mince-cooked | Turkey, ground | cooked | 05306 | GROUND TURKEY,CKD | 203 | 62.07 | 27.37 | 10.4 | 2.669 | 0 | 0 | 0 | 78 | -
beef-mince-80-raw | Beef mince 20% fat | raw | 23572 | BEEF,GROUND,80% LN MEAT / 20% FAT,RAW | 254 | 61.87 | 17.17 | 20 | 7.581 | 0 | 0 | 0 | 66 | -
beef-mince-80-browned | Beef mince 20% fat, crumbles | pan-browned | 23575 | BEEF,GROUND,80% LN MEAT / 20% FAT,CRUMBLES,CKD,PAN-BROWNED | 272 | 54.54 | 27 | 17.36 | 6.546 | 0 | 0 | 0 | 91 | -
beef-mince-90-raw | Beef mince 10% fat | raw | 23562 | BEEF,GROUND,90% LN MEAT / 10% FAT,RAW | 176 | 69.45 | 20 | 10 | 3.927 | 0 | 0 | 0 | 66 | -
beef-mince-90-browned | Beef mince 10% fat, crumbles | pan-browned | 23565 | BEEF,GROUND,90% LN MEAT / 10% FAT,CRUMBLES,CKD,PAN-BROWNED | 230 | 58.58 | 28.45 | 12.04 | 4.712 | 0 | 0 | 0 | 87 | -
beef-mince-95-raw | Beef mince 5% fat | raw | 23557 | BEEF,GROUND,95% LN MEAT / 5% FAT,RAW | 137 | 73.24 | 21.41 | 5 | 2.182 | 0 | 0 | 0 | 66 | -
beef-mince-95-browned | Beef mince 5% fat, crumbles | pan-browned | 23560 | BEEF,GROUND,95% LN MEAT / 5% FAT,CRUMBLES,CKD,PAN-BROWNED | 193 | 62.58 | 29.17 | 7.58 | 3.298 | 0 | 0 | 0 | 85 | -
pork-mince-raw | Pork, ground | raw | 10219 | PORK,FRESH,GROUND,RAW | 263 | 61.06 | 16.88 | 21.19 | 7.87 | 0 | - | 0 | 56 | -
pork-mince-cooked | Pork, ground | cooked | 10220 | PORK,FRESH,GROUND,COOKED | 297 | 52.75 | 25.69 | 20.77 | 7.72 | 0 | 0 | 0 | 73 | -
pork-shoulder-raw | Pork shoulder, whole, lean and fat | raw | 10070 | PORK,FRSH,SHLDR,WHL,LN&FAT,RAW | 236 | 64.02 | 17.18 | 17.99 | 6.24 | 0 | 0 | 0 | 65 | -
pork-shoulder-roasted | Pork shoulder, whole, lean and fat | roasted | 10071 | PORK,FRSH,SHLDR,WHL,LN&FAT,CKD,RSTD | 292 | 54.8 | 23.28 | 21.39 | 7.86 | 0 | 0 | 0 | 68 | -
lamb-mince-raw | Lamb, ground | raw | 17224 | LAMB,GROUND,RAW | 282 | 59.47 | 16.56 | 23.41 | 10.19 | 0 | 0 | 0 | 59 | -
lamb-mince-cooked | Lamb, ground | broiled | 17225 | LAMB,GROUND,CKD,BRLD | 283 | 55.09 | 24.75 | 19.65 | 8.12 | 0 | 0 | 0 | 81 | -
salmon-farmed-raw | Salmon, Atlantic, farmed | raw | 15236 | SALMON,ATLANTIC,FARMED,RAW | 208 | 64.89 | 20.42 | 13.42 | 3.05 | 0 | 0 | 0 | 59 | -
salmon-farmed-cooked | Salmon, Atlantic, farmed | cooked dry heat | 15237 | SALMON,ATLANTIC,FARMED,CKD,DRY HEAT | 206 | 64.75 | 22.1 | 12.35 | 2.397 | 0 | 0 | 0 | 61 | -
cod-raw | Cod, Atlantic | raw | 15015 | COD,ATLANTIC,RAW | 82 | 81.22 | 17.81 | 0.67 | 0.131 | 0 | 0 | 0 | 54 | -
cod-cooked | Cod, Atlantic | cooked dry heat | 15016 | COD,ATLANTIC,CKD,DRY HEAT | 105 | 75.92 | 22.83 | 0.86 | 0.168 | 0 | 0 | 0 | 78 | -
tuna-canned-water | Tuna, light, canned in water | drained | 15121 | FISH,TUNA,LT,CND IN H2O,DRND SOL | 86 | 78.14 | 19.44 | 0.96 | 0.211 | 0 | 0 | 0 | 247 | -
egg-raw | Egg, whole | raw | 01123 | EGG,WHL,RAW,FRSH | 143 | 76.15 | 12.56 | 9.51 | 3.126 | 0.72 | 0.37 | 0 | 142 | 12
egg-hard-boiled | Egg, whole | hard-boiled | 01129 | EGG,WHL,CKD,HARD-BOILED | 155 | 74.62 | 12.58 | 10.61 | 3.267 | 1.12 | 1.12 | 0 | 124 | -
tofu-firm-casulfate | Tofu, firm (calcium sulfate) | raw | 16426 | TOFU,RAW,FIRM,PREP W/CA SULFATE | 144 | 69.83 | 17.27 | 8.72 | 1.261 | 2.78 | - | 2.3 | 14 | -
tofu-firm-nigari | Tofu, firm (nigari) | raw | 16126 | TOFU,FIRM,PREP W/CA SULFATE&MAGNESIUM CHLORIDE (NIGARI) | 78 | 82.93 | 9.04 | 4.17 | 0.793 | 2.85 | 0.6 | 0.9 | 12 | -
lentils-dry | Lentils, brown or green | dry | 16069 | LENTILS,RAW | 352 | 8.26 | 24.63 | 1.06 | 0.154 | 63.35 | 2.03 | 10.7 | 6 | -
lentils-cooked | Lentils, brown or green | boiled | 16070 | LENTILS,MATURE SEEDS,CKD,BLD,WO/SALT | 116 | 69.64 | 9.02 | 0.38 | 0.053 | 20.13 | 1.8 | 7.9 | 2 | -
lentils-red-dry | Lentils, red or pink | dry | 16144 | LENTILS,PINK OR RED,RAW | 358 | 7.82 | 23.91 | 2.17 | 0.379 | 63.1 | - | 10.8 | 7 | -
chickpeas-dry | Chickpeas | dry | 16056 | CHICKPEAS (GARBANZO BNS,BENGAL GM),MATURE SEEDS,RAW | 378 | 7.68 | 20.47 | 6.04 | 0.603 | 62.95 | 10.7 | 12.2 | 24 | -
chickpeas-cooked | Chickpeas | boiled | 16057 | CHICKPEAS ,MATURE SEEDS,CKD,BLD,WO/SALT | 164 | 60.21 | 8.86 | 2.59 | 0.269 | 27.42 | 4.8 | 7.6 | 7 | -
chickpeas-canned-drained | Chickpeas, canned | drained | 16358 | CHICKPEAS,MAT SEEDS,CND,DRND SOL | 139 | 66.72 | 7.05 | 2.77 | 0.214 | 22.53 | 4.01 | 6.4 | 246 | -
kidney-beans-dry | Kidney beans, red | dry | 16032 | BEANS,KIDNEY,RED,MATURE SEEDS,RAW | 337 | 11.75 | 22.53 | 1.06 | 0.154 | 61.29 | 2.1 | 15.2 | 12 | -
kidney-beans-cooked | Kidney beans, red | boiled | 16033 | BEANS,KIDNEY,RED,MATURE SEEDS,CKD,BLD,WO/SALT | 127 | 66.94 | 8.67 | 0.5 | 0.072 | 22.8 | 0.32 | 7.4 | 2 | -
black-beans-dry | Black beans | dry | 16014 | BEANS,BLACK,MATURE SEEDS,RAW | 341 | 11.02 | 21.6 | 1.42 | 0.366 | 62.36 | 2.12 | 15.5 | 5 | -
black-beans-cooked | Black beans | boiled | 16015 | BEANS,BLACK,MATURE SEEDS,CKD,BLD,WO/SALT | 132 | 65.74 | 8.86 | 0.54 | 0.139 | 23.71 | 0.32 | 8.7 | 1 | -
white-beans-dry | White beans | dry | 16049 | BEANS,WHITE,MATURE SEEDS,RAW | 333 | 11.32 | 23.36 | 0.85 | 0.219 | 60.27 | 2.11 | 15.2 | 16 | -
white-beans-cooked | White beans | boiled | 16050 | BEANS,WHITE,MATURE SEEDS,CKD,BLD,WO/SALT | 139 | 63.08 | 9.73 | 0.35 | 0.091 | 25.09 | 0.34 | 6.3 | 6 | -
rice-white-long-dry | Rice, white long-grain | dry | 20044 | RICE,WHITE,LONG-GRAIN,REG,RAW,ENR | 365 | 11.62 | 7.13 | 0.66 | 0.18 | 79.95 | 0.12 | 1.3 | 5 | -
rice-white-long-cooked | Rice, white long-grain | cooked | 20045 | RICE,WHITE,LONG-GRAIN,REG,ENR,CKD | 130 | 68.44 | 2.69 | 0.28 | 0.077 | 28.17 | 0.05 | 0.4 | 1 | -
rice-brown-long-dry | Rice, brown long-grain | dry | 20036 | RICE,BROWN,LONG-GRAIN,RAW | 367 | 11.8 | 7.54 | 3.2 | 0.591 | 76.25 | 0.66 | 3.6 | 5 | -
rice-brown-long-cooked | Rice, brown long-grain | cooked | 20037 | RICE,BROWN,LONG-GRAIN,CKD | 123 | 70.27 | 2.74 | 0.97 | 0.26 | 25.58 | 0.24 | 1.6 | 4 | -
pasta-dry | Pasta, durum, dry | dry | 20420 | PASTA,DRY,UNENR | 371 | 9.9 | 13.04 | 1.51 | 0.277 | 74.67 | 2.67 | 3.2 | 6 | -
pasta-cooked | Pasta, durum | cooked, no salt | 20421 | PASTA,CKD,UNENR,WO/ ADDED SALT | 158 | 62.13 | 5.8 | 0.93 | 0.176 | 30.86 | 0.56 | 1.8 | 1 | -
pasta-wholewheat-dry | Pasta, whole-wheat | dry | 20124 | PASTA,WHOLE-WHEAT,DRY | 352 | 8.21 | 13.87 | 2.93 | 0.428 | 73.37 | 2.74 | 9.2 | 6 | -
pasta-wholewheat-cooked | Pasta, whole-wheat | cooked | 20125 | PASTA,WHOLE-WHEAT,CKD | 149 | 61.8 | 5.99 | 1.71 | 0.243 | 30.07 | 0.75 | 3.9 | 4 | -
egg-noodles-dry | Egg noodles | dry | 20109 | NOODLES,EGG,DRY,ENRICHED | 384 | 9.01 | 14.16 | 4.44 | 1.18 | 71.27 | 1.88 | 3.3 | 21 | -
egg-noodles-cooked | Egg noodles | cooked | 20110 | NOODLES,EGG,ENR,CKD | 138 | 67.73 | 4.54 | 2.07 | 0.419 | 25.16 | 0.4 | 1.2 | 5 | -
couscous-dry | Couscous | dry | 20028 | COUSCOUS,DRY | 376 | 8.56 | 12.76 | 0.64 | 0.117 | 77.43 | - | 5 | 10 | -
couscous-cooked | Couscous | cooked | 20029 | COUSCOUS,COOKED | 112 | 72.57 | 3.79 | 0.16 | 0.029 | 23.22 | 0.1 | 1.4 | 5 | -
bulgur-dry | Bulgur | dry | 20012 | BULGUR,DRY | 342 | 9 | 12.29 | 1.33 | 0.232 | 75.87 | 0.41 | 12.5 | 17 | -
bulgur-cooked | Bulgur | cooked | 20013 | BULGUR,COOKED | 83 | 77.76 | 3.08 | 0.24 | 0.042 | 18.58 | 0.1 | 4.5 | 5 | -
quinoa-dry | Quinoa | dry | 20035 | QUINOA,UNCKD | 368 | 13.28 | 14.12 | 6.07 | 0.706 | 64.16 | - | 7 | 5 | -
quinoa-cooked | Quinoa | cooked | 20137 | QUINOA,CKD | 120 | 71.61 | 4.4 | 1.92 | 0.231 | 21.3 | 0.87 | 2.8 | 7 | -
barley-pearled-dry | Barley, pearled | dry | 20005 | BARLEY,PEARLED,RAW | 352 | 10.09 | 9.91 | 1.16 | 0.244 | 77.72 | 0.8 | 15.6 | 9 | -
barley-pearled-cooked | Barley, pearled | cooked | 20006 | BARLEY,PEARLED,COOKED | 123 | 68.8 | 2.26 | 0.44 | 0.093 | 28.22 | 0.28 | 3.8 | 3 | -
oats-rolled-dry | Oats, rolled | dry | 08120 | CEREALS,OATS,REG & QUICK,NOT FORT,DRY | 379 | 10.84 | 13.15 | 6.52 | 1.11 | 67.7 | 0.99 | 10.1 | 6 | -
flour-white | Wheat flour, white all-purpose | dry | 20081 | WHEAT FLR,WHITE,ALL-PURPOSE,ENR,BLEACHED | 364 | 11.92 | 10.33 | 0.98 | 0.155 | 76.31 | 0.27 | 2.7 | 2 | -
bread-white | Bread, white | as sold | 18069 | BREAD,WHITE,COMMLY PREP (INCL SOFT BREAD CRUMBS) | 266 | 36.42 | 8.85 | 3.33 | 0.698 | 49.42 | 5.67 | 2.7 | 490 | -
bread-wholewheat | Bread, whole-wheat | as sold | 18075 | BREAD,WHOLE-WHEAT,COMM. PREPARED | 252 | 39.01 | 12.45 | 3.5 | 0.722 | 42.71 | 4.34 | 6 | 455 | -
pita-white | Pita bread, white | as sold | 18041 | BREAD,PITA,WHITE,ENRICHED | 275 | 32.1 | 9.1 | 1.2 | 0.166 | 55.7 | 1.3 | 2.2 | 536 | -
tortilla-flour | Tortilla, wheat flour | as sold | 18364 | TORTILLAS,RTB OR -FRY,FLR,REFR | 306 | 31.98 | 8.2 | 7.99 | 2.924 | 49.38 | 3.71 | 3.5 | 736 | -
tortilla-corn | Tortilla, corn | as sold | 18363 | TORTILLAS,RTB OR -FRY,CORN | 218 | 45.89 | 5.7 | 2.85 | 0.453 | 44.64 | 0.88 | 6.3 | 45 | -
potato-raw | Potato, flesh and skin | raw | 11352 | POTATOES,FLESH & SKN,RAW | 77 | 79.25 | 2.05 | 0.09 | 0.025 | 17.49 | 0.82 | 2.1 | 6 | 25
potato-boiled | Potato, flesh, boiled without skin | boiled | 11367 | POTATOES,BLD,CKD WO/ SKN,FLESH,WO/ SALT | 86 | 77.46 | 1.71 | 0.1 | 0.026 | 20.01 | 0.89 | 1.8 | 5 | 0
potato-baked | Potato, flesh and skin | baked | 11674 | POTATOES,BKD,FLESH & SKN,WO/ SALT | 93 | 74.89 | 2.5 | 0.13 | 0.034 | 21.15 | 1.18 | 2.2 | 10 | 0
sweet-potato-raw | Sweet potato | raw | 11507 | SWEET POTATO,RAW,UNPREP | 86 | 77.28 | 1.57 | 0.05 | 0.018 | 20.12 | 4.18 | 3 | 55 | 28
sweet-potato-baked | Sweet potato, flesh | baked in skin | 11508 | SWEET POTATO,CKD,BKD IN SKN,FLESH,WO/ SALT | 90 | 75.78 | 2.01 | 0.15 | 0.052 | 20.71 | 6.48 | 3.3 | 36 | 22
squash-butternut-raw | Butternut squash | raw | 11485 | SQUASH,WNTR,BUTTERNUT,RAW | 45 | 86.41 | 1 | 0.1 | 0.021 | 11.69 | 2.2 | 2 | 4 | 16
squash-butternut-baked | Butternut squash | baked | 11486 | SQUASH,WNTR,BUTTERNUT,CKD,BKD,WO/SALT | 40 | 87.8 | 0.9 | 0.09 | 0.019 | 10.49 | 1.97 | 3.2 | 4 | 0
aubergine-raw | Aubergine | raw | 11209 | EGGPLANT,RAW | 25 | 92.3 | 0.98 | 0.18 | 0.034 | 5.88 | 3.53 | 3 | 2 | 19
aubergine-boiled | Aubergine | boiled, drained | 11210 | EGGPLANT,CKD,BLD,DRND,WO/SALT | 35 | 89.67 | 0.83 | 0.23 | 0.044 | 8.73 | 3.2 | 2.5 | 1 | 0
courgette-raw | Courgette, with skin | raw | 11477 | SQUASH,SMMR,ZUCCHINI,INCL SKN,RAW | 17 | 94.79 | 1.21 | 0.32 | 0.084 | 3.11 | 2.5 | 1 | 8 | 5
courgette-boiled | Courgette, with skin | boiled, drained | 11478 | SQUASH,SMMR,ZUCCHINI,INCL SKN,CKD,BLD,DRND,WO/SALT | 15 | 95.22 | 1.14 | 0.36 | 0.072 | 2.69 | 1.71 | 1 | 3 | 0
pepper-red-raw | Sweet pepper, red | raw | 11821 | PEPPERS,SWT,RED,RAW | 31 | 92.21 | 0.99 | 0.3 | 0.027 | 6.03 | 4.2 | 2.1 | 4 | 18
pepper-red-boiled | Sweet pepper, red | boiled, drained | 11823 | PEPPERS,SWT,RED,CKD,BLD,DRND,WO/SALT | 28 | 91.87 | 0.92 | 0.2 | 0.029 | 6.7 | 4.39 | 1.2 | 2 | 0
pepper-green-raw | Sweet pepper, green | raw | 11333 | PEPPERS,SWT,GRN,RAW | 20 | 93.89 | 0.86 | 0.17 | 0.058 | 4.64 | 2.4 | 1.7 | 3 | 18
onion-raw | Onion | raw | 11282 | ONIONS,RAW | 40 | 89.11 | 1.1 | 0.1 | 0.042 | 9.34 | 4.24 | 1.7 | 4 | 10
onion-boiled | Onion | boiled, drained | 11283 | ONIONS,CKD,BLD,DRND,WO/SALT | 44 | 87.86 | 1.36 | 0.19 | 0.031 | 10.15 | 4.73 | 1.4 | 3 | 0
leek-raw | Leek | raw | 11246 | LEEKS,(BULB&LOWER LEAF-PORTION),RAW | 61 | 83 | 1.5 | 0.3 | 0.04 | 14.15 | 3.9 | 1.8 | 20 | 56
garlic-raw | Garlic | raw | 11215 | GARLIC,RAW | 149 | 58.58 | 6.36 | 0.5 | 0.089 | 33.06 | 1 | 2.1 | 17 | 13
ginger-raw | Ginger root | raw | 11216 | GINGER ROOT,RAW | 80 | 78.89 | 1.82 | 0.75 | 0.203 | 17.77 | 1.7 | 2 | 13 | 7
carrot-raw | Carrot | raw | 11124 | CARROTS,RAW | 41 | 88.29 | 0.93 | 0.24 | 0.037 | 9.58 | 4.74 | 2.8 | 69 | 11
carrot-boiled | Carrot | boiled, drained | 11125 | CARROTS,CKD,BLD,DRND,WO/SALT | 35 | 90.17 | 0.76 | 0.18 | 0.03 | 8.22 | 3.45 | 3 | 58 | 0
celery-raw | Celery | raw | 11143 | CELERY,RAW | 16 | 95.43 | 0.69 | 0.17 | 0.042 | 2.97 | 1.34 | 1.6 | 80 | 11
beetroot-raw | Beetroot | raw | 11080 | BEETS,RAW | 43 | 87.58 | 1.61 | 0.17 | 0.027 | 9.56 | 6.76 | 2.8 | 78 | 33
beetroot-boiled | Beetroot | boiled, drained | 11081 | BEETS,CKD,BLD,DRND | 44 | 87.06 | 1.68 | 0.18 | 0.028 | 9.96 | 7.96 | 2 | 77 | 0
broccoli-raw | Broccoli | raw | 11090 | BROCCOLI,RAW | 34 | 89.3 | 2.82 | 0.37 | 0.039 | 6.64 | 1.7 | 2.6 | 33 | 39
broccoli-boiled | Broccoli | boiled, drained | 11091 | BROCCOLI,CKD,BLD,DRND,WO/SALT | 35 | 89.25 | 2.38 | 0.41 | 0.079 | 7.18 | 1.39 | 3.3 | 41 | 0
cauliflower-raw | Cauliflower | raw | 11135 | CAULIFLOWER,RAW | 25 | 92.07 | 1.92 | 0.28 | 0.13 | 4.97 | 1.91 | 2 | 30 | 61
cauliflower-boiled | Cauliflower | boiled, drained | 11136 | CAULIFLOWER,CKD,BLD,DRND,WO/SALT | 23 | 93 | 1.84 | 0.45 | 0.07 | 4.11 | 2.08 | 2.3 | 15 | 0
cabbage-raw | Cabbage | raw | 11109 | CABBAGE,RAW | 25 | 92.18 | 1.28 | 0.1 | 0.034 | 5.8 | 3.2 | 2.5 | 18 | 20
cabbage-boiled | Cabbage | boiled, drained | 11110 | CABBAGE,CKD,BLD,DRND,WO/SALT | 23 | 92.57 | 1.27 | 0.06 | 0 | 5.51 | 2.79 | 1.9 | 8 | 0
red-cabbage-raw | Red cabbage | raw | 11112 | CABBAGE,RED,RAW | 31 | 90.39 | 1.43 | 0.16 | 0.021 | 7.37 | 3.83 | 2.1 | 27 | 20
spinach-raw | Spinach | raw | 11457 | SPINACH,RAW | 23 | 91.4 | 2.86 | 0.39 | 0.063 | 3.63 | 0.42 | 2.2 | 79 | 28
spinach-boiled | Spinach | boiled, drained | 11458 | SPINACH,CKD,BLD,DRND,WO/ SALT | 23 | 91.21 | 2.97 | 0.26 | 0.043 | 3.75 | 0.43 | 2.4 | 70 | 0
kale-raw | Kale | raw | 11233 | KALE,RAW | 49 | 84.04 | 4.28 | 0.93 | 0.091 | 8.75 | 2.26 | 3.6 | 38 | 28
kale-boiled | Kale | boiled, drained | 11234 | KALE,CKD,BLD,DRND,WO/SALT | 28 | 91.2 | 1.9 | 0.4 | 0.052 | 5.63 | 1.25 | 2 | 23 | 0
green-beans-raw | Green beans | raw | 11052 | BEANS,SNAP,GREEN,RAW | 31 | 90.32 | 1.83 | 0.22 | 0.05 | 6.97 | 3.26 | 2.7 | 6 | 12
green-beans-boiled | Green beans | boiled, drained | 11053 | BEANS,SNAP,GRN,CKD,BLD,DRND,WO/SALT | 35 | 89.22 | 1.89 | 0.28 | 0.064 | 7.88 | 3.63 | 3.2 | 1 | 0
peas-frozen | Peas, green, frozen | frozen | 11312 | PEAS,GRN,FRZ,UNPREP | 77 | 79.98 | 5.22 | 0.4 | 0.066 | 13.62 | 5 | 4.5 | 108 | 0
peas-frozen-boiled | Peas, green, frozen | boiled, drained | 11313 | PEAS,GRN,FRZ,CKD,BLD,DRND,WO/SALT | 78 | 79.52 | 5.15 | 0.27 | 0.049 | 14.26 | 4.4 | 4.5 | 72 | 0
sweetcorn-raw | Sweetcorn | raw | 11167 | CORN,SWT,YEL,RAW | 86 | 76.05 | 3.27 | 1.35 | 0.325 | 18.7 | 6.26 | 2 | 15 | 64
mushroom-raw | Mushroom, white | raw | 11260 | MUSHROOMS,WHITE,RAW | 22 | 92.45 | 3.09 | 0.34 | 0.05 | 3.26 | 1.98 | 1 | 5 | 3
mushroom-boiled | Mushroom, white | boiled, drained | 11261 | MUSHROOMS,WHITE,CKD,BLD,DRND,WO/ SALT | 28 | 91.08 | 2.17 | 0.47 | 0.061 | 5.29 | 2.34 | 2.2 | 2 | 0
tomato-raw | Tomato, red ripe | raw | 11529 | TOMATOES,RED,RIPE,RAW,YEAR RND AVERAGE | 18 | 94.52 | 0.88 | 0.2 | 0.028 | 3.89 | 2.63 | 1.2 | 5 | 9
tomato-canned | Tomatoes, canned in juice | canned | 11531 | TOMATOES,RED,RIPE,CND,PACKED IN TOMATO JUC | 16 | 94.75 | 0.79 | 0.25 | 0.034 | 3.47 | 2.55 | 1.9 | 115 | 0
tomato-canned-nosalt | Tomatoes, canned in juice, no salt added | canned | 11885 | TOMATOES,RED,RIPE,CND,PACKED IN TOMATO JUC,NO SALT ADDED | 16 | 94.75 | 0.79 | 0.25 | 0.034 | 3.47 | 2.55 | 1.9 | 10 | 0
tomato-paste | Tomato paste, no salt added | canned | 11546 | TOMATO PRODUCTS,CND,PASTE,WO/ SALT ADDED | 82 | 73.5 | 4.32 | 0.47 | 0.1 | 18.91 | 12.18 | 4.1 | 59 | 0
cucumber-raw | Cucumber, with peel | raw | 11205 | CUCUMBER,WITH PEEL,RAW | 15 | 95.23 | 0.65 | 0.11 | 0.037 | 3.63 | 1.67 | 0.5 | 2 | 3
radish-raw | Radish | raw | 11429 | RADISHES,RAW | 16 | 95.27 | 0.68 | 0.1 | 0.032 | 3.4 | 1.86 | 1.6 | 39 | 10
lettuce-cos-raw | Lettuce, cos or romaine | raw | 11251 | LETTUCE,COS OR ROMAINE,RAW | 17 | 94.61 | 1.23 | 0.3 | 0.039 | 3.29 | 1.19 | 2.1 | 8 | 6
parsley-raw | Parsley | raw | 11297 | PARSLEY,FRSH | 36 | 87.71 | 2.97 | 0.79 | 0.132 | 6.33 | 0.85 | 3.3 | 56 | 5
lemon-juice | Lemon juice | raw | 09152 | LEMON JUICE,RAW | 22 | 92.31 | 0.35 | 0.24 | 0.04 | 6.9 | 2.52 | 0.3 | 1 | 0
yogurt-plain-whole | Yogurt, plain, whole milk | as sold | 01116 | YOGURT,PLN,WHL MILK,8 GRAMS PROT PER 8 OZ | 61 | 87.9 | 3.47 | 3.25 | 2.096 | 4.66 | 4.66 | 0 | 46 | -
yogurt-greek-whole | Yogurt, Greek, plain, whole milk | as sold | 01293 | YOGURT,GREEK,PLN,WHL MILK | 97 | 81.3 | 9 | 5 | 2.395 | 3.98 | 4 | 0 | 35 | -
yogurt-greek-nonfat | Yogurt, Greek, plain, nonfat | as sold | 01256 | YOGURT,GREEK,PLN,NONFAT | 59 | 85.1 | 10.19 | 0.39 | 0.117 | 3.6 | 3.24 | 0 | 36 | -
milk-whole | Milk, whole 3.25% fat | as sold | 01077 | MILK,WHL,3.25% MILKFAT,W/ ADDED VITAMIN D | 61 | 88.13 | 3.15 | 3.25 | 1.865 | 4.8 | 5.05 | 0 | 43 | -
butter-salted | Butter, salted | as sold | 01001 | BUTTER,WITH SALT | 717 | 15.87 | 0.85 | 81.11 | 51.368 | 0.06 | 0.06 | 0 | 643 | -
cheese-feta | Feta cheese | as sold | 01019 | CHEESE,FETA | 264 | 55.22 | 14.21 | 21.28 | 14.946 | 4.09 | 4.09 | 0 | 917 | -
cheese-cheddar | Cheddar cheese | as sold | 01009 | CHEESE,CHEDDAR | 404 | 37.02 | 22.87 | 33.31 | 18.867 | 3.09 | 0.48 | 0 | 653 | -
cheese-mozzarella | Mozzarella, whole milk | as sold | 01026 | CHEESE,MOZZARELLA,WHL MILK | 300 | 50.01 | 22.17 | 22.35 | 13.152 | 2.19 | 1.03 | 0 | 627 | -
cheese-parmesan | Parmesan, hard | as sold | 01033 | CHEESE,PARMESAN,HARD | 392 | 29.16 | 35.75 | 25.83 | 16.41 | 3.22 | 0.8 | 0 | 1376 | -
oil-olive | Olive oil | as sold | 04053 | OIL,OLIVE,SALAD OR COOKING | 884 | 0 | 0 | 100 | 13.808 | 0 | 0 | 0 | 2 | -
oil-rapeseed | Rapeseed (canola) oil | as sold | 04582 | OIL,CANOLA | 884 | 0 | 0 | 100 | 7.365 | 0 | 0 | 0 | 0 | -
oil-sunflower | Sunflower oil, linoleic | as sold | 04506 | OIL,SUNFLOWER,LINOLEIC,(APPROX. 65%) | 884 | 0 | 0 | 100 | 10.3 | 0 | 0 | 0 | 0 | -
tahini | Tahini, roasted kernels | as sold | 12166 | SESAME BUTTER,TAHINI,FROM RSTD&TSTD KRNLS (MOST COMMON TYPE) | 595 | 3.05 | 17 | 53.76 | 7.529 | 21.19 | 0.49 | 9.3 | 115 | -
hummus-commercial | Hummus, commercial | as sold | 16158 | HUMMUS,COMMERCIAL | 166 | 66.59 | 7.9 | 9.6 | 1.437 | 14.29 | - | 6 | 379 | -
peanut-butter | Peanut butter, smooth, salted | as sold | 16098 | PEANUT BUTTER,SMOOTH STYLE,W/ SALT | 598 | 1.23 | 22.21 | 51.36 | 10.325 | 22.31 | 10.49 | 5 | 426 | -
almonds | Almonds | raw | 12061 | ALMONDS | 579 | 4.41 | 21.15 | 49.93 | 3.802 | 21.55 | 4.35 | 12.5 | 1 | -
walnuts | Walnuts, English | raw | 12155 | WALNUTS,ENGLISH | 654 | 4.07 | 15.23 | 65.21 | 6.126 | 13.71 | 2.61 | 6.7 | 2 | -
cashews | Cashew nuts | raw | 12087 | NUTS,CASHEW NUTS,RAW | 553 | 5.2 | 18.22 | 43.85 | 7.783 | 30.19 | 5.91 | 3.3 | 12 | -
sunflower-seeds | Sunflower seed kernels | dried | 12036 | SUNFLOWER SD KRNLS,DRIED | 584 | 4.73 | 20.78 | 51.46 | 4.455 | 20 | 2.62 | 8.6 | 9 | -
pumpkin-seeds | Pumpkin seed kernels | dried | 12014 | PUMPKIN&SQUASH SD KRNLS,DRIED | 559 | 5.23 | 30.23 | 49.05 | 8.659 | 10.71 | 1.4 | 6 | 7 | -
sesame-seeds | Sesame seeds | dried | 12023 | SESAME SEEDS,WHOLE,DRIED | 573 | 4.69 | 17.73 | 49.67 | 6.957 | 23.45 | 0.3 | 11.8 | 11 | -
coconut-milk-canned | Coconut milk, canned | canned | 12118 | COCONUT MILK,CND (LIQ EXPRESSED FROM GRATED MEAT&H2O) | 197 | 72.88 | 2.02 | 21.33 | 18.915 | 2.81 | - | - | 13 | -
soy-sauce | Soy sauce (shoyu) | as sold | 16123 | SOY SAU MADE FROM SOY&WHEAT (SHOYU) | 53 | 71.15 | 8.14 | 0.57 | 0.073 | 4.93 | 0.4 | 0.8 | 5493 | -
mustard-yellow | Mustard, prepared | as sold | 02046 | MUSTARD,PREPARED,YELLOW | 60 | 83.72 | 3.74 | 3.34 | 0.214 | 5.83 | 0.92 | 4 | 1104 | -
pickles-dill | Pickled cucumber, dill | as sold | 11937 | PICKLES,CUCUMBER,DILL OR KOSHER DILL | 12 | 94.34 | 0.5 | 0.3 | 0.079 | 2.41 | 1.07 | 1 | 809 | 0
sugar-white | Sugar, granulated | as sold | 19335 | SUGARS,GRANULATED | 387 | 0.02 | 0 | 0 | 0 | 99.98 | 99.8 | 0 | 1 | -
honey | Honey | as sold | 19296 | HONEY | 304 | 17.1 | 0.3 | 0 | 0 | 82.4 | 82.12 | 0.2 | 4 | -
salt-table | Salt, table | as sold | 02047 | SALT,TABLE | 0 | 0.2 | 0 | 0 | 0 | 0 | 0 | 0 | 38758 | -
`;
