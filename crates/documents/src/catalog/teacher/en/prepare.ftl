# The prepare page.

prepare-title = Prepare: { $title }
prepare-lead = What to buy, mix and lay out, worked out from the bag list. Print it, shop, set the trays; on the day, run.
prepare-not-yet = Not yet
prepare-cannot = This plan cannot be prepared yet.
prepare-to-plan = Back to the plan
prepare-faults = The plan has faults.
prepare-mend = Mend them before you buy anything.
prepare-paper = Paper
prepare-made-now = Made now, from the newest plan.
prepare-as-sealed = Period { $period }: { $count ->
    [one] 1 bag is sealed as an older plan had it. Trays and water show it as it was sealed; the newest plan differs.
   *[other] { $count } bags are sealed as an older plan had them. Trays and water show them as they were sealed; the newest plan differs.
  }
prepare-sheet = Prep sheet
prepare-forecast = Forecast, for you only
prepare-sheet-a4 = Prep sheet on A4
prepare-buy = Buy
prepare-stocks = Make before school
prepare-water = Water
prepare-trays = Trays
prepare-in-all = In all
prepare-cautions = Cautions
prepare-what = What
prepare-needs = The day needs
prepare-stock = In stock
prepare-cost = Cost
prepare-enough = enough in stock
prepare-cost-all = In all: { $cost }.
prepare-no-price = In all: no price known.
prepare-dust = You make these, never students: enzyme dust.
prepare-serves = For { $whom }.
prepare-period = Period
prepare-mix-at = Mix at
prepare-hot = Hot
prepare-cold = Cold
prepare-in-jug = In the jug then
prepare-in-bag = In the bag
prepare-tray-count = { $count ->
    [one] 1 tray
   *[other] { $count } trays
  }
prepare-every-tray = On every tray:
prepare-group = Group { $group }
prepare-also = Also: { $things }.
prepare-rules-first = For what is in this plan. Your school’s and state’s rules come first.
