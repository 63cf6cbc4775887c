/** What `afterheat --help` says. */
export const HELP = `Afterheat plans one cooking session in one kitchen.

Usage: afterheat VERB … [options]

  afterheat plan SESSION       plan a session and print the running order of each person
  afterheat check PLAN         hold a plan to the ten rules
  afterheat why PLAN           tell what decides how long a plan takes, and what could start later
  afterheat improve SESSION    tell what would help: minutes gained by one more of each thing, or five minutes off a step
  afterheat sure PLAN          tell the chance of finishing by a time when work takes longer or less, and where the risk lies
  afterheat replan PLAN        plan the rest of a running session anew from what cooks tell, changing as little as helps
  afterheat compare SESSION    plan a session in two or more kitchens, side by side
  afterheat model SESSION      print the scheduling problem behind a session, free of food, as JSON
  afterheat chart PLAN         draw a plan as lanes (SVG)
  afterheat labels PLAN        print the labels of its boxes: what, for whom, use by, allergens held and met
  afterheat account PLAN       print its energy, water, money and carbon, who bears it, and what sharing saved
  afterheat nutrition SESSION  print nutrients and energy of a portion of each dish and of each eater's box
  afterheat coolings SESSION   print how long food takes to cool, and what shallower layers would gain
  afterheat schema KIND        print the JSON Schema of a kitchen, component, session, plan or safety-rules document

STEP is the id of a step, such as shaken-potatoes/roast, or its name, such as "roast the potatoes".

SESSION and PLAN are a file or the id of a document; kitchens and components are looked for in the folder of the session's
file, in the data folder, and among the demo documents, in this order.

Options:
  --kitchen FILE   kitchen to cook in, a file or an id (the session's first); compare takes several
  --crew ID        crew of the session that cooks (its first)
  --authority ID   safety rules to plan by: strictest, united-kingdom, united-states, or a file or id of your own (the session's)
  --intent NAME    soonest, freshest, thriftiest or calmest (the session's own)
  --effort N       most work units to spend; more takes longer
  --seed N         seed of all chance; the same seed and effort give the same plan
  --now TIME       replan: how long the session has been running, such as PT40M
  --late STEP=PT10M     replan: what is now being done of the step still takes so many minutes from now
  --done STEP[=PT35M]   replan: the step is over, now or since that time from the start
  --started STEP=PT35M  replan: when the step began
  --waiting STEP        replan: it was to have begun, and has not
  --skip STEP           replan: it is left out
  --penalty N      replan: minutes of finish that a step with another person, place or order weighs (2)
  --by TIME        sure: ask the chance of finishing by then, such as PT90M; may be given again
  --samples N      sure: how many times the plan is played through (2000)
  --json           plan, compare, improve, check, why, sure, replan, labels, account, nutrition, coolings: print JSON, times in minutes from the start
  --out FILE       plan, replan: write the plan document; chart: the SVG; model: the problem; labels: a page to print (HTML)
  --dark           chart: light lines on dark paper
  --why            chart: with what decides how long it takes, underlined
  --data DIR       data folder (AFTERHEAT_DATA, or the usual place of this system)
  --help           this page

Exit code: 0 good; 1 no plan, or a plan that breaks a rule; 2 bad input.

Examples:
  afterheat plan weeknight-roast
  afterheat plan sunday.session.json --kitchen flat.kitchen.json --out sunday.plan.json
  afterheat plan harbour-sunday --crew two --intent calmest --json
  afterheat check sunday.plan.json
  afterheat why sunday.plan.json
  afterheat improve harbour-sunday --crew two
  afterheat sure sunday.plan.json --by PT100M
  afterheat replan sunday.plan.json --now PT40M --late shaken-potatoes/roast=PT25M --out sunday.plan.json
  afterheat compare harbour-sunday --kitchen harbour-one-oven --kitchen harbour-two-ovens
  afterheat model weeknight-roast > problem.json
  afterheat chart sunday.plan.json --out sunday.svg
`;
