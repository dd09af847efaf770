# What can be printed: each part in a few words, as it stands in the help of the command too.

print-packet = Teacher's packet: the whole day in one file
print-substitute = Substitute pack: two pages, fewer hazards
print-calendar = Calendar of everything to do, for a calendar program
print-summary = Summary for families and the principal, one page
print-slides = Discussion slides, 16 by 9
print-prep = Prep sheet: shopping, solutions, water, trays
print-forecast = Forecast, for the teacher only
print-results = Results report, from the class's readings
print-labels = Labels for the bags
print-card-labels = Labels for the cards on the bags
print-test-print = Test print: do the labels lie where they should?
print-join = Join sheet: the address of the day, for the wall
