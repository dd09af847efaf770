# Below the lists of the run page: roles, meter, jugs, what is open, who is in, the end; and what is said of what was done.

tools-label = More
tools-roles = Roles and absent groups
tools-roles-short = { $count ->
    [one] Roles and absent groups: 1 group is short
   *[other] Roles and absent groups: { $count } groups are short
  }
tools-roles-tap = Tap how many are at the bench. Roles are dealt anew; nobody is named.
tools-students-of = Students of group { $group }
tools-lent = What it writes meanwhile does not count.
tools-planned = By the plan, about { $count }.
tools-lend = Numbers for group { $group }, if it is absent or its bags failed
tools-lend-none-yet = Class data: none yet. No other group of this period has read such a bag.
tools-lend-class = Give it the class’s data
tools-lend-simulated = Give it a simulated run
tools-own-numbers = Take it back
lent-class = Class data.
lent-simulated = Simulated run: not measured.
roles-0 = Nobody is here. Hand their bags to a neighbor, or give the group other numbers to work with.
roles-1 = One: joins a neighbor group. Read both sets of bags in turn.
roles-2 = Two: one reads and keeps time, one writes and fetches.
roles-3 = Three: one reads, one writes and keeps time, one fetches.
roles-4 = Four: one reads, one keeps time, one writes, one fetches.
roles-5 = Five or more: one reads, one keeps time, one writes, one fetches, the others check the ruler.

meter-line = Meter line
meter-line-waiting = Meter line: { $count } waiting
meter-warm = Switch the meter on and let it warm up until it is ready.
meter-blank = Push clean air through a fresh tube until it shows 0.00.
meter-now = Now bag { $bag }: push its gas through the tube. Nobody blows into it.
meter-none = No bag waits. A bag comes here after its last reading, before it is vented.
meter-after = After it: { $bags }. The order is mixed, so that a drift of the meter favors no food.
meter-shown = Shown: { $values }. For comparing bags only; it is no amount of alcohol.
meter-bag = Bag
meter-percent = shown
meter-blank-before = clean air before it showed
meter-air = Clean air so far
meter-air-turn = turn { $turn }: { $percent }
meter-air-right = in truth
meter-note = Note it

jug-head = Jugs
jug-none = No jug was measured yet.
jug-number = Jug
jug-note = Note the jug
run-jug-says = Jug { $jug }: { $celsius } °C at { $at }

face-head = Open to the class
face-is-open = open
face-is-closed = closed
face-open = Open
face-close = Close
face-curves-wall = This period’s curves, on the wall
face-curves-groups = This period’s curves, to its groups
face-day-wall = All periods’ curves, on the wall
face-forecast-wall = What was foretold, behind curves open on the wall
face-forecast-groups = What was foretold, behind curves open to groups
face-results-wall = Results, on the wall
face-results-groups = Results, to the groups of this period
face-period-curves = this period’s curves
face-day-curves = all periods’ curves
face-results = the results
face-forecast = the forecast
face-background = the background
face-marks = the marks

hours-head = Last reading and end
hours-last = Last reading at minute
hours-change = Change it
hours-open-again = Open it again
hours-not-started = The clock was not started.

# Between two classes.
change-head = Changeover
change-next-begins = Period { $period } begins at { $bell }.
change-was-last = This was the last class of the day.
change-needs = Period { $period } needs
change-go = Go to period { $period }
change-bags = Bags of this class are open in the tub by the sink.
change-trays = Trays are swapped, whole trays and not single things.
change-wipe = One wet cloth a bench: benches are wiped and dry, the floor too.
change-jug = The jug is emptied and rinsed.
change-paper = Late paper sheets lie in this period’s folder.
change-next = The wall and the codes show period { $period }.
change-last = Devices are collected, and a backup lies on a stick.
ready-trays = { $trays ->
    [one] 1 tray
   *[other] { $trays } trays
  } with { $bags ->
    [one] 1 empty bag
   *[other] { $bags } empty bags
  } in all, labels on, goggles and rulers beside them
ready-jugs = { $count ->
    [one] Jug: { $jugs }
   *[other] Jugs: { $jugs }
  }
ready-jug = { $makes } at { $celsius } °C, mixed at { $at }
ready-stock = { $name }, good until { $until }; shake it
ready-codes = Group codes on the trays, the wall page on the projector
ready-meter = The meter switched on, with a fresh tube; nobody blows into it

# What going on after a stop would change.
replan-none = No bag has its zero reading yet. Nothing is lost so far.
replan-all = If you go on now, every group still reaches { $minute } minutes.
replan-some-none = If you go on now, some groups get no reading before clearing. Count what is written.
replan-nobody = The last reading was planned at { $planned } minutes. If you go on now, no group reaches it: { $minute } minutes is the last that all reach.
replan-not-all = The last reading was planned at { $planned } minutes. If you go on now, group { $groups } cannot reach it: { $minute } minutes is the last that all reach.

# What was done last.
done-refused = Written down, but it does not count: { $reason }.
done-noted = Noted.
done-here = Group { $group }: { $count } here.
done-class-data = Group { $group } works with class data from now on.
done-simulated = Group { $group } works with a simulated run from now on. It was not measured.
done-own-numbers = Group { $group } works with its own numbers again.
done-opened = Opened: { $what }.
done-closed = Closed: { $what }.
done-began = The clock runs.
done-not-begun = The clock has not started.
done-stopped = All clocks stand still.
done-went-on = The clocks go on.
done-ended = The period is over.
done-last = The last reading is at { $minute } minutes.
done-hot = { $is } burns skin within seconds and kills yeast. If it was a slip, such as °C for °F, write it again.
done-far = The plan says { $plan }, and this is { $is }. If it was a slip, such as °C for °F, write it again.
done-jug = Jug { $jug }: { $celsius } °C noted.
done-zero = { $bag }: zero reading { $mm } mm. Its clock runs.
done-sealed = { $bag }: zero reading. Its clock runs.
done-reading = { $bag }: { $mm } mm at { $minute } minutes written.
done-between = { $bag }: { $mm } mm written.
done-right = { $bag }: { $mm } mm is right as it is.
done-corrected = { $bag }: { $mm } mm in place of { $was }.
done-height = { $bag }: { $mm } mm.
done-meter = { $bag }: meter { $percent } noted, for comparing bags only.
done-air = Clean air, turn { $turn }: { $percent } noted.
done-odd = { $bag }: { $odd } noted.
done-odd-back = { $bag }: an odd thing taken back.
done-made = { $bag }: what went in is written down.
done-set-right = { $bag } is set right.
done-set-aside = { $bag } is set aside by “{ $rule }”.
done-taken-back = { $bag } counts again.
done-vented = { $bag } is vented.
done-lost = { $bag } is lost.
done-bag-noted = { $bag }: noted.

# Why something was not done.
act-unknown = Nothing was done: the page sent “{ $said }”, which it does not offer; load it again.
act-number = “{ $said }” is not { $wanted }; nothing was written.
act-no-bag = “{ $said }” is no bag of period { $period }; write group and letter, such as 5A.
act-other-period = { $said } is a bag of period { $other }, and this is period { $period }; nothing was written.
act-minute = a minute such as 20
act-celsius = a temperature in °C
act-jug = the number of a jug
act-students = a number of students
act-percent = what the meter shows, such as 0.12
act-turn = the number of a turn
act-group = the number of a group
act-height = a height in mm from 0 to 300
act-warmth = a temperature of water with its unit, such as 41 °C or 106 °F
act-amount = an amount with its unit, such as 2.5 g or 1/4 tsp
