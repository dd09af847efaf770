# Taking a colleague's data package onto the shelf.

take-title = Take a colleague’s data
take-lead = Look at a data package that a colleague gave you, then keep it as an investigation of its own, beside yours. What you have stays as it is.
take-package = The package
take-says = A data package is one zip with codes and numbers: what was in which bag and how high its card stood. A results page gives one away under “Data for others”. Nothing of it is kept before you say so.
take-pick = The zip, at most 8 MB
take-look = Look at it
take-no-file = Pick a zip of at most 8 MB first.
take-in-it = What is in it
take-made-up = It says that no class made these bags. Every page of it will say so, too.
take-bags = { $bags } bags with { $heights } heights.
take-periods = { $count ->
    [one] 1 period.
   *[other] { $count } periods.
  }
take-aside = { $count ->
    [one] 1 bag was set aside.
   *[other] { $count } bags were set aside.
  }
take-pushes = { $count ->
    [one] 1 push at the breath meter.
   *[other] { $count } pushes at the breath meter.
  }
take-license = Whoever gave it away allows its use under { $name } ({ $id }). What you pass on of it keeps that license.
take-no-license = It names no license that is known here. Ask whoever gave it to you before you pass anything of it on.
take-grade = A class of grade { $grade }.
take-no-dates = It tells no title, school, name, date or time of day.
take-treatment = Treatment
take-beside = Beside
take-left = What is not taken over
take-left-treatment = { $count ->
    [one] { $treatment } (1 bag) { $why }.
   *[other] { $treatment } ({ $count } bags) { $why }.
  }
take-left-zero = { $count ->
    [one] 1 height of a bag without a zero reading: no rise can be told from it.
   *[other] { $count } heights of bags without a zero reading: no rise can be told from them.
  }
take-left-thinned = { $count ->
    [one] 1 push of thinned gas at the breath meter.
   *[other] { $count } pushes of thinned gas at the breath meter.
  }
take-left-warmth = { $count ->
    [one] How warm the liquid was at 1 push of the breath meter.
   *[other] How warm the liquid was at { $count } pushes of the breath meter.
  }
take-left-never = What no package has: names of treatments, questions in words, notes, students.
take-keep-head = Keep it
take-name = What you call it
take-day = The day it is kept under
take-keep-says = Take any day that is over, best the one on which the class was, if you know it. Periods begin at 8 and have three students a group, since nobody said otherwise.
take-keep = Put it on the shelf
take-kept = It is on the shelf.
take-results = What that class found
take-no-plan = What it holds makes no plan that this program can read:
take-no-day = Choose a day that is over.
take-no-title = Give it a name, so that you find it again.
