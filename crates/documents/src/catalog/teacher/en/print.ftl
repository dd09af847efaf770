# The print page.

print-title = Print: { $title }
print-lead = Everything on paper, made now from the newest plan. Paper is a full stand-in for the screens: the same codes in the same order.
print-how = How
print-how-note = Choose, then open what you need below.
print-paper = Paper
print-paper-letter = US Letter
print-paper-a4 = A4
print-language = Students read
print-size = Print for students
print-size-usual = usual size
print-size-large = large
print-period = Period
print-period-all = all
print-period-name = only { $period }
print-level = Inquiry level
print-level-own = as planned
print-level-confirmation = confirmation
print-level-structured = structured
print-level-guided = guided
print-level-open = open
print-sheet = Label sheet
print-sheet-usual = usual for the paper
print-sheet-30 = 30 of 1 × 2 5/8 in, letter
print-sheet-10 = 10 of 2 × 4 in, letter
print-sheet-21 = 21 of 63.5 × 38.1 mm, A4
print-start = First free label
print-start-says = On a sheet that is partly used, count along the rows. The test print shows the numbers.
print-start-wrong = Write a number from 1 to { $cells }: so many labels are on a sheet. Until then, labels begin at the first.
print-address = Address of the day
print-address-says = Stands on the join sheet and in the square codes of labels. Give one only if it will still hold on the day, such as a reserved address or a host of your district. Without one, a square code holds the plain bag code.
print-address-now = Right now it is { $address }.
print-address-wrong = That address was left out:
print-use = Use these
print-what = To print
print-what-note = At 100 %, not fitted to the page. Labels: the test print first.
print-not-yet = Not yet, for want of bags, readings or an address: { $parts }.
print-no-printer = No printer here? Save the files and take them to a computer that has one.

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
