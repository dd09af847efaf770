# The results page.

results-title = Results: { $title }
results-lead = What the class found, from what is on record now. Only you see this page; open results to the class from the run page.
results-not-yet = Not yet
results-none = No bag has a height that counts. Answers stand here once groups have read.
results-found = What we found
results-not-run = Not run yet: { $treatments }. No bag of them was read so far.
results-not-worked = What did not work
results-nothing-out = Nothing was left out.
results-meter = Breath meter
results-meter-bag = Bag
results-meter-treatment = Treatment
results-meter-shown = Shown, %
results-meter-zero = Less its zero, %
results-meter-warm = Liquid at
results-meter-ethanol = Ethanol, g/L
results-meter-remark = Remark
results-meter-careful = Careful:
results-meter-bags = { $count ->
    [one] The one bag
   *[other] All { $count } bags
  }, as shown and corrected
results-meter-not-used = Not used: { $says }.
results-day = What the day teaches
results-day-note = Of the yeast, its waking, the enzymes, the cooling and the cards. A thin line is what was believed before, a thick one what is believed after this day.
results-day-working = This is being worked out. Open the page again in a minute; the report has it then, too.
results-day-lost = This could not be worked out: { $why }.
results-day-look = Bags to look at
results-beyond = Beyond what is known
results-beyond-says = Heights and what follows from them are as read. Gas, ethanol and forecasts of these bags are a guess.
results-water = The water
results-water-measured = { $count ->
    [one] The water was measured when it was poured in 1 bag: { $from }.
   *[other] The water was measured when it was poured in { $count } bags: { $from } to { $to }.
  }
results-water-only = Forecasts and answers rest on the planned warmth.
results-water-far = { $bag }: { $is }, planned { $plan }.
results-paper = Paper
results-made-now = { $count ->
    [one] The bag, the spread and the intervals, made now from 1 bag.
   *[other] Every bag, the spread and the intervals, made now from { $count } bags.
  }
results-report = Report
results-report-a4 = Report on A4
results-share = Data for others
results-share-note = For colleagues, for a class of next year, for the world.
results-share-says = Codes and numbers only. Title, school, place, dates, wording, notes and everything that people wrote stay behind; periods and groups are numbers.
results-share-license = License
results-share-grade = Say in which grade the class is
results-share-zip = Data package (zip)
results-share-csv = One plain table (CSV)
results-names = Names and notes: what is kept, and deleting it
results-claims = What groups claim
results-marks = Marks
results-talk = Talk it over
results-bags = Every bag
results-again = Another round
results-curves = How the cards rose
curves-lines = Thin: one bag. Thick: the average. Darker tint: how far bags lie from it.
curves-band = The pale band with a dotted edge is where 8 of 10 bags were foretold to rise.
curves-first-day = It was foretold for the room of the first day.
curves-working = The band that was foretold is still being worked out. Open the page again in a moment.
curves-higher = { $treatment }: the average rose higher than foretold from minute { $from } on.
curves-lower = { $treatment }: the average rose less than foretold from minute { $from } on.
curves-higher-once = { $treatment }: the average rose higher than foretold from minute { $from } to minute { $until }.
curves-lower-once = { $treatment }: the average rose less than foretold from minute { $from } to minute { $until }.
curves-kept = { $treatments }: the average stayed within what was foretold.
curves-left-note = Outside the band, the yeast, the water or the food was not as the forecast took it to be. It is no fault of the class.
curves-table = Averages and bands in numbers
curves-minute = Minute
curves-mean = Average rise, mm
curves-foretold = Foretold, mm
curves-between = { $low } to { $high }
curves-csv = Save averages and bands (CSV)
bags-title = Every bag: { $title }
bags-lead = Each bag as a dot, as a curve and as a row. Open a bag to see its record, and to set it right.
bags-all = All periods
bags-period = Period { $period }
bags-rise = Rise, mm
bags-gas = Gas, mL
bags-ethanol = Ethanol, mg
bags-gas-note = Worked out from the height by the card’s curve and the bag model; the interval holds 95 times in 100, as far as they are right.
bags-ethanol-note = An estimate from the gas. It tells nothing of a person, and no bag is tasted.
bags-none = No bag has such a value yet.
bags-dots = As dots
bags-curves = As curves
bags-rows = As a table
bags-picture = Save the dots as a picture (SVG)
bags-data = Save the data (CSV)
bags-bag = Bag
bags-group = Group
bags-kind = Kind
bags-value = Value, and between
bags-held-back = Held back by
bags-known = To know
bags-between = { $value } ({ $low } to { $high })
