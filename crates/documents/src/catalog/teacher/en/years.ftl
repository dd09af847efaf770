# Classes and years beside each other.

years-title = Classes and years together
years-lead = The same question, class by class: bags that were made alike are compared at one minute, and how much classes truly differ is told. Next: decide which question next year’s class should settle.
years-none = Fewer than two investigations on the shelf have readings, so there is nothing to put together yet.
years-apart = No two of these compared bags that were made alike.
years-classes = What is compared
years-bags = { $bags } bags, { $heights } heights
years-minute = mm at minute { $minute }
years-beside = { $treatment }, beside { $reference }
years-once = Asked by one class only
years-lots = How active each lot was
years-lots-note = Yeast and enzymes, by pilots and by class days, each day told by itself. A bar holds 95 of 100.
years-lots-usual = Times the usual activity
years-lots-none = No lot has been measured yet. A pilot gives a jar a name and measures it.
years-lots-working = { $count ->
    [one] 1 class day is still being worked out. Open the page again in a minute.
   *[other] { $count } class days are still being worked out. Open the page again in a minute.
  }
years-lots-table = Every day in numbers
years-lot = Lot
years-lot-date = Date
years-lot-by = Measured by
years-lot-pilot = a pilot
years-lot-class = a class day
years-lot-between = { $value } ({ $low } to { $high })
years-lot-once = { $lot }: measured on { $date } only. Measure it again before a lesson: what stands open loses strength.
years-lot-same = { $lot }: no change is told from { $since } to { $until }. All of it may be left, or as little as { $low } %.
years-lot-lost = { $lot }: it has lost about { $share ->
    [tenth] a tenth
    [fifth] a fifth
    [quarter] a quarter
    [third] a third
    [half] half
    [two-thirds] two thirds
    [three-quarters] three quarters
   *[nearly-all] nearly all
  } since { $since } ({ $low } to { $high } %). Buy new, or take { $times } times as much.
years-lot-gained = { $lot }: it was { $times } times as active as on { $since }. A lot does not grow stronger by standing: look at how it was weighed, and at the water.
years-not-read = { $name } cannot be put beside others: { $why }
years-all-of = Two investigations of one class count as two. Rehearsals are left out, and invented ones where others are real.
