# What can be printed: each part in a few words, as it stands in the help of the command too.

print-prep = Prep sheet: shopping, solutions, water, trays
print-forecast = Forecast, for the teacher only
print-results = Results report, from the class's readings
print-labels = Labels for the bags
print-card-labels = Labels for the cards on the bags
print-test-print = Test print: do the labels lie where they should?
print-join = Join sheet: the address of the day, for the wall
print-bench-cards = Bench cards: what each group asks and does
print-planning = Planning sheets: what a group wants to change, before it does
print-data-sheets = Data sheets: boxes for every height, with planned times
print-tally = Tally sheet for the wall: every bag of a class
print-graph-paper = Graph paper, scaled to this plan
print-gauge = Height gauges to cut out and fold
