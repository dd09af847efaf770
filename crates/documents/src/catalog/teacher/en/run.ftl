# The run page: clock, whole-class call, what needs the teacher, the lists.

run-title = Period { $period }: run
run-head = Period { $period }
run-lead = Start the clock at the bell; then work down what needs you. At the end the changeover list comes, and after it the results.
run-ruler = The period as a ruler: { $start } to the bell at { $bell }.
run-ruler-now = The period as a ruler: { $start } to the bell at { $bell }. It is { $now }.
run-bell = bell
run-to-bell = to the bell
phase-set-up = set up
phase-read = read every { $minutes } minutes
phase-vent = vent
phase-clean = clean
run-not-done = Not done.
run-take-back = Take it back
run-ready = Ready for the bell at { $bell }?
run-begin = Start the clock
run-standing = All clocks stand still
run-standing-for = All clocks stand still, for { $time }
run-yeast-goes-on = The yeast goes on: results use the true minutes.
run-go-on = Go on
run-go-on-last = Go on, last reading for all at { $minute } min
run-keys-on = Keys: on
run-keys-off = Keys: off
run-keys = { $write } write a height { $needs } needs you { $now } read now { $next } next { $stop } stop the clocks. A key moves there; Enter does it.
run-write-height = Write a height
run-bag = Bag
run-write = Write
run-stop = Stop the clocks
run-end = End the period
run-silent = The program does not answer. Clocks go on here; write on paper.
run-back = Back to period { $period }

# How the period stands.
sum-bags = { $groups ->
    [one] 1 group
   *[other] { $groups } groups
  }, { $bags ->
    [one] 1 bag
   *[other] { $bags } bags
  }.
sum-bags-how = { $groups ->
    [one] 1 group
   *[other] { $groups } groups
  }, { $bags ->
    [one] 1 bag
   *[other] { $bags } bags
  }: { $parts }.
sum-due = { $count } due now
sum-late = { $count } late
sum-unstarted = { $count } without a zero reading
sum-waiting = { $count } waiting
sum-done = { $count } done
sum-lent = { $count } with lent numbers

# The one sentence to the whole class.
call-label = Whole class
call-note-jug = Note a jug
call-see-why = See why
call-why = What it may be
call-head = The whole class is low
call-low = { $low } of { $of } bags stand under their forecast at { $minute } min.
call-low-controls = { $low } of { $of } bags stand under their forecast at { $minute } min, controls too.
call-no-jug = No jug was measured; the plan has { $planned } °C.
call-jug = Jug { $jug } read { $celsius } °C at { $at }; the plan has { $planned } °C.
call-do = Think of yeast and water first: feel the bags now.
call-cold = Water too cold: bags feel cool. Lay them in trays of warm water, all of them alike, and note the jug.
call-hot = Water too hot (over about 50 °C): an early puff, then nothing. The yeast is dead; start one group again with a measured jug.
call-old = Old yeast: no foam in a cup of warm sugar water after ten minutes. Open a fresh packet for the next period.
call-forecast = The forecast has not met your yeast and bags. A class that is low and alike still compares well.

# What needs the teacher.
need-head = Needs you
need-none = Nothing. Walk the room.
need-copied = { $count ->
    [one] 1 height is the same as one of { $bag }.
   *[other] { $count } heights are the same as those of { $bag }.
  } Ask both groups gently.
need-far-off = At { $minute } min it had risen { $mm } mm; { $low } to { $high } mm were expected. Look at the bag and its label.
need-transposed = It says { $wrote } mm. That fits if two digits changed places: { $meant } mm.
need-misread = It says { $mm } mm; its other heights and the bags beside it say otherwise. Look at the ruler.
need-tilted = At { $minute } min it is some millimeters off. Does the card lean? Read both ends.
need-leaks-from = After minute { $minute } it rises less than it should. Look for foam at the zip.
need-lifted = From minute { $minute } on the card stands higher than it should. Look for foam under it.
need-wrong-start = Its clock may have begun late or early. Ask when the zero was read.
need-no-yeast = It stays flat while its sisters rise. Ask whether yeast went in.
need-hot-water = It began to rise and stopped. Ask how hot its water was.
need-unshaken = It rises less than its sisters. Ask whether the enzyme was shaken.
need-heaped = It rises more than its sisters. Ask whether a spoon was heaped.
need-swapped = It does what { $bag } should do, and the other way round. Look at both labels.
need-fives = All its heights end in 0 or 5. Show the group how to read single millimeters.
need-likely = { $percent } % likely.
need-sister = { $bag } beside it rose { $mm } mm.
need-write = Write { $mm } mm
need-choose = { $mm } mm, { $who } at { $at }
need-ask-again = Misread: ask again
need-leaks = It leaks: mark it
need-mark = Mark: { $odd }
need-set-aside = Set aside: { $rule }
need-leave = Leave it
need-ask-own = Look at { $letters } on your own bench, at the true time.
need-ask = Ask group { $group } for { $letters }, at the true time.
need-nothing-in = Nothing is in.
need-in = { $letters } { $count ->
    [one] is
   *[other] are
  } in.
need-not-read = Not read: leave it blank
need-silent = The device of group { $group } keeps what they type. If it stays dark, hand them a paper sheet.
need-not-heard = Not heard since { $time }

# What may be wrong with a height, in a word and a sentence.
doubt-unit = Unit?
doubt-misread = Misread?
doubt-leak = Leak?
doubt-two = Two heights
doubt-copied = Same as another
doubt-far-off = Far off
doubt-unit-says = It says { $mm } mm. That fits if it was read in { $unit }.
doubt-centimeters = centimeters
doubt-point-lost = millimeters with the point lost
doubt-inches = inches
doubt-eighths = eighths of an inch
doubt-high-zero = Its zero says { $mm } mm. A bag just sealed lies nearly flat; one of this size is full at { $full } mm.
doubt-too-high = It says { $mm } mm. A bag of this size is full at { $full } mm.
doubt-jumped = The card rose { $mm } mm from minute { $from } to { $to }. Look at the ruler.
doubt-fell = The card fell by { $mm } mm. Look for foam at the zip.
doubt-rivals-zero = Two heights stand for the zero reading. Choose one; both stay on record.
doubt-rivals = Two heights stand for minute { $minute }. Choose one; both stay on record.

# Who wrote something.
who-you = you
who-group = group { $group }
who-group-of = group { $group } of period { $period }
who-aide = the aide
who-paper = paper
who-program = the program

# Who reads now, and who comes next.
state-due = Read now
state-late = Late
state-late-since = Late { $time }
list-reading-at = reading at { $minute } minutes
list-standing = All clocks stand still.
list-over = Nothing more is read.
list-nobody = Nobody at the moment.
list-due-caption = Bags to be read now
list-for = for { $time }
list-write-for = Write a height for { $bag }
list-write-for-last = Write a height for { $bag }, last { $mm } mm
list-write = write
list-groups = Groups
list-all-bags = All bags
list-next = Next
list-groups-how = who makes which bag
list-all-how = last height, curve on its forecast band
list-next-how = time to go, last height, curve on its forecast band
list-no-bags = This period has no bags yet. Give them out on the plan page.
list-your-bench = Your bench
list-group = Group { $group }
list-now = now
list-zero = zero
list-zero-now = zero now
list-waits = waits
list-lent = lent
list-done = done
list-look = Look
list-set-aside = Set aside
list-vented = vented
list-lost = Lost
list-zero-in = zero in
spark-none = no rise read yet
spark-rose = rose { $mm } mm in { $minute } min
spark-expected = rose { $mm } mm in { $minute } min, { $low } to { $high } mm expected
