# The pilot page: what to do, the sheet, what was learned, the lots.

pilot-title = Pilot: { $title }
pilot-lead = 40 minutes of one adult before the first lesson. It tells how far your yeast, bags and meter differ from what is usual. Next: print the sheet, do any part of it, and type what you read.
pilot-as-usual = Forecasts go by what is usual: no lot is in use.
pilot-sealed = { $count ->
    [one] 1 bag was sealed under other lots. Its forecast stays the one it was sealed under.
   *[other] { $count } bags were sealed under other lots. Their forecasts stay the ones they were sealed under.
  }
pilot-unreadable = What is kept of your lots was written by a newer program, and this one cannot read it. Forecasts go by what is usual. Open it with the newer program.
pilot-none = There is no pilot for this plan yet.

pilot-to-do = What to do
pilot-any-part = Any part may be left out; each helps by itself.
pilot-sheet = Sheet to fill in (PDF, letter)
pilot-sheet-a4 = The same on A4
pilot-blank = Empty file for a spreadsheet
pilot-lay-out = Lay out
pilot-letter = Bag
pilot-goes-in = Goes in
pilot-tells = Tells
pilot-steps = Minute by minute
pilot-step-minute = Minute
pilot-step-what = What to do
pilot-cautions = Cautions

pilot-read = What was read
pilot-units = Write units as you like: 0.8 cm, 1/4 tsp, 98 °F. A bare number has the unit of its column. Leave empty what was not done.
pilot-heads = Written once
pilot-date = Day
pilot-room = Room, as in 21 °C
pilot-yeast-lot = Yeast, as in jar of March
pilot-bag-lot = Box of bags
pilot-enzyme-lot = Enzyme bottle
pilot-meter-name = Meter
pilot-lot-says = A new name is a new lot, which starts from what is usual. Left empty, the lot in use goes on. These names are yours; write no name of a person.
pilot-save = Save this part
pilot-save-named = Save this part: { $part }
pilot-save-all = Save the whole sheet
pilot-is-kept = Saved.
pilot-not-kept = Not saved yet.
pilot-away = Start another pilot
pilot-away-says = Another pilot begins with an empty sheet. What this one taught stays.
pilot-at = { $label }:
pilot-minute = Minute
pilot-temperature = Temperature (°C)
pilot-air = Air so far (mL)
pilot-height = Height (mm)
pilot-strength = Ethanol (%)
pilot-display = Display (%)
pilot-warm = Liquid (°C)
pilot-spoon-head = Spoon
pilot-mass = Mass (g)
pilot-spoon = Mass of teaspoon { $number }
pilot-read-at = { $what } at { $at } { $value }
pilot-one-more = { $what }, one more
pilot-more = one more
pilot-bags = Bags with yeast
pilot-bags-how = Made as the table above says, in the tray. Read the height of each card over the tray’s floor, its zero reading at minute 0. If a reading came late, write the minute at which it was made.
pilot-bag = Bag { $bag }
pilot-heights = Heights (mm)
pilot-minute-of = Minute, { $minute }
pilot-height-of = Height of bag { $bag }, minute { $minute }
pilot-went = What really went in, if you measured it
pilot-thing = In the bag
pilot-went-yeast = Yeast
pilot-went-food = Sugar or food
pilot-went-water = Water (mL)
pilot-went-temperature = Water (°C)
pilot-went-tray = Tray (°C)
pilot-went-of = { $thing }, bag { $bag }

pilot-saved = Saved. { $learned }
pilot-same = This was saved already; nothing was counted twice.
pilot-nothing = Nothing is typed there yet.
pilot-faulty = Not saved. What to mend stands beside the fields.
pilot-overtaken = Not done: the lots or the sheet were changed in another window. What you typed stands here; look at it once more and press again.
pilot-cleared = Cleared, with what it had taught.
pilot-put-away = The sheet is empty for another pilot. What the last one taught stays.
pilot-lots-changed = Done. Forecasts go by the lots as they stand below.
pilot-lot-out = Taken out. If it was tried on this sheet, the sheet was put away with it. “Undo” brings both back.
pilot-gone-back = Lots and sheet are as they were then.

pilot-file = From a file
pilot-file-says = A file of readings, typed in a spreadsheet under the headings of the empty file. You see what it would teach before anything is kept.
pilot-file-read = { $file } was read; look at it next.
pilot-choose-file = Choose a file
pilot-paste = Or paste the rows
pilot-look = See what it teaches
pilot-file-wrong = { $count ->
    [one] 1 mistake, and nothing was learned:
   *[other] { $count } mistakes, and nothing was learned:
  }
pilot-file-would = What it would teach; nothing is kept yet
pilot-keep = Keep it

pilot-learned = What was learned
pilot-before = before
pilot-now = now
pilot-changes = Before and now; 8 in 10 lie within
pilot-treatments = Rise of the plan’s bags at the last reading
pilot-outgrown = The plan has changed since, and this sheet does not fit its pilot any more. What was learned is kept and in use.
pilot-unmoved = { $count ->
    [one] 1 thing these readings could not tell
   *[other] { $count } things these readings could not tell
  }
pilot-working = The rest is being worked out; it takes a few seconds.
pilot-again = Look again

pilot-lots = Lots
pilot-lots-says = Forecasts go by the lots in use, one of each sort. Bags that are sealed already keep the forecast they were sealed under.
pilot-in-use = in use
pilot-use = Use this one
pilot-use-named = Use { $lot } ({ $sort })
pilot-leave = Go by what is usual
pilot-leave-named = Go by what is usual in place of { $lot } ({ $sort })
pilot-out = Take out
pilot-out-named = Take out { $lot } ({ $sort })
pilot-past = As it was before
pilot-undo = Undo
pilot-older = { $count ->
    [one] 1 older state
   *[other] { $count } older states
  }
pilot-back = Go back to this
pilot-back-named = { $what }: lots and sheet as in version { $version } of the plan
pilot-on-sheet = On the sheet: { $parts }.
