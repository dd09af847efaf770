# The results page.

results-title = Results: { $title }
results-lead = What the class found, from what is on record now. Only you see this page; open results to the class from the run page.
results-not-yet = Not yet
results-none = No bag has a height that counts. Answers stand here once groups have read.
results-found = What we found
results-not-worked = What did not work
results-nothing-out = Nothing was left out.
results-paper = Paper
results-made-now = { $count ->
    [one] The bag, the spread and the intervals, made now from 1 bag.
   *[other] Every bag, the spread and the intervals, made now from { $count } bags.
  }
results-report = Report
results-report-a4 = Report on A4
results-names = Names and notes: what is kept, and deleting it
