# The plan page: the form's frame, the forecast beside it, versions.

plan-title = Plan: { $title }
plan-lead = Decide here what changes and what stays the same. The forecast follows what you type. Save when it shows what you want; then prepare.
plan-sealed = { $count ->
    [one] 1 bag is sealed. It keeps the plan that it was sealed under.
   *[other] { $count } bags are sealed. They keep the plan that they were sealed under.
  }
plan-save-short = Save
plan-save = Save this plan
plan-as-form = Edit as a form
plan-as-text = Edit as text
plan-see-forecast = See the forecast
plan-faults = { $count ->
    [0] No faults.
    [one] 1 fault
   *[other] { $count } faults
  }
plan-foresee = What you will see before the bell
plan-band = Line: most likely. Band: 8 of 10 bags. Only you see this page.
plan-working = The forecast is being worked out.
plan-waits = The forecast waits until the faults are mended.
plan-beyond = Beyond what is known
plan-in-words = In words
plan-chart = Forecast of card rise
plan-fault = Fault:
plan-warning = May disappoint:
plan-note = Worth knowing:
plan-caution = Caution:
plan-line = (line { $line })
plan-text = The plan as text
plan-text-all = Everything, with your notes
plan-out = Take out

plan-swap = Swap a food
plan-swap-says = For the whole class, in one go: recipes, forecast, shopping, labels and cards. No reason is kept. Codes on the bags stay.
plan-swap-from = In place of
plan-swap-to = take
plan-swap-go = Swap it
plan-swap-faults = Mend the faults first, then swap the food.
plan-swapped = Swapped everywhere, not saved yet. Look at it, then save.
plan-reshaped = Done, not saved yet. Save when it is right.

plan-bags = Bags
plan-bags-says = Saving keeps the list in step with what you changed. Codes that were given out are never given again.
plan-no-bags = No bag list yet. It is written when you save.
plan-bag-count = { $bags } bags over { $periods ->
    [one] 1 period
   *[other] { $periods } periods
  }, { $bench } of them on your own bench.

plan-versions = Versions
plan-versions-says = Every version you save is kept. Going back makes a new one.
plan-version = Version { $number }
plan-version-now = as it is now
plan-version-pilot = pilot, same text
plan-back-to = Go back to version { $number }
plan-back = Go back to it
plan-download = Download this plan as a file
plan-new = Your plan is written and kept. Change what you like.
plan-next = Next: prepare
plan-keep = { $count ->
    [one] { $count } sealed bag is made otherwise. It stays as it was sealed, and its readings stay; all later bags follow the new plan.
   *[other] { $count } sealed bags are made otherwise. They stay as they were sealed, and their readings stay; all later bags follow the new plan.
}
plan-gone-back = Version { $old } holds again, kept as version { $version }.
plan-saved = Saved as version { $version }. No bag came onto the list, and none left it.
plan-saved-bags = Saved as version { $version }. { $new ->
    [one] 1 bag is
   *[other] { $new } bags are
  } new on the list, { $gone } left it.
plan-same = Nothing has changed since the newest version.
plan-not-saved = Not saved: mend the faults first. What you typed is still here.
plan-overtaken = Version { $version } was saved meanwhile, in another window. Saving again puts this over it.

plan-cautions = { $count ->
    [one] 1 caution for this plan
   *[other] { $count } cautions for this plan
  }
plan-answered = { $count } answered
plan-answer-lead = Write what you did about a caution; it is kept in the plan. Write no names: the plan may be handed on.
plan-answer = What you did about { $code }
plan-answer-save = Save the answers

# What a forecast comes to.
verdict-shows = Shows
verdict-shows-says = { $names } { $count ->
    [one] stands
   *[other] stand
  } clear of { $beside } by minute { $minute }.
verdict-apart = Told apart
verdict-apart-says = Each also differs from the next by { $mm } mm or more, so that a class can put them in order.
verdict-alike = Look alike
verdict-alike-says = { $names } may look alike: less than { $mm } mm lies between one and the next.
verdict-hides = May not show
verdict-hides-says = { $names } { $count ->
    [one] differs
   *[other] differ
  } from { $beside } by less than { $mm } mm, so a ruler may not tell.
verdict-small = Bag too small
verdict-over-from = A { $bag } bag of { $name } may be { $percent } % full, and over the limit of 80 % from minute { $minute }. Take a bigger bag or less food.
verdict-over = A { $bag } bag of { $name } may be { $percent } % full at the last reading. The limit is 80 %.
verdict-holds = Bag holds
verdict-holds-says = The fullest bag ({ $name }, top of its band) fills { $percent } % of a { $bag } bag. The limit is 80 %.
