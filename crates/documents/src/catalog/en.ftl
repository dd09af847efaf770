# What students, families and aides read. Short words, one thought a sentence, 15 words at most.
# A language is a file like this one and a row in the table of languages.

language-name = English
language-choose = Language

# States: each word stands beside its own shape.
state-due = Read now
state-late = Late { $time }
state-saved = Saved
state-kept = Kept on this device
state-locked = Locked at { $time }

# Something odd at the bench.
odd-leak = Leak
odd-spill = Spill
odd-foam = Foam
odd-late = Late
odd-bumped = Bumped
odd-not-read = Not read

# The page where a group joins.
join-title = Join your group
join-lead = You need two codes. One is for this class, one is for your group.
join-period = Class code
join-period-hint = It is on the wall.
join-group = Group code
join-group-hint = It is on your tray. The code on a bag label works too.
join-bag = You hold bag { $bag }.
join-bag-wrong = That is not my bag
join-go = Join
join-fault = These codes do not fit, or they do not work now. Look again and write both once more.
join-wait = Too many tries. Wait { $seconds } seconds, then try again.
join-brings = This device brings { $count } readings. Join, and they are sent.
join-page = Wall, aide or walk-round
join-page-code = Page code
join-page-go = Open the page

# The bench page: its head.
bench-title = Group { $group }, period { $period }
bench-title-named = { $label }, group { $group }, period { $period }
bench-invented = Made-up class. Nothing here is real.
bench-rehearsal = Rehearsal. Nothing here counts.
bench-all-saved = All saved
bench-kept-count = { $count } kept on this device
bench-no-link = No link to the teacher's computer. Go on reading. Nothing is lost.
bench-no-words = The words of that language are not here yet. Try again when there is a link.
bench-stay = Keep this page open until all is saved.
bench-out = This device is no longer in the group. Join again to send what it keeps.
bench-out-go = Join again
bench-no-script = This page needs scripts. Turn them on, or write on paper.
bench-no-store = This browser cannot keep readings. Write them on paper too.
bench-no-bags = Your group has no bags today.
bench-stand-in = Your group works with class data today.

# Its tabs and clocks.
bench-bags = Your bags
bench-now = now
bench-then = then
bench-in = in { $time }
bench-zero-next = zero first
bench-zero-go = Read the zero height
bench-done = done
bench-opened = open
bench-lost = lost
bench-still = waits
bench-reading-of = the { $minute }-minute reading
bench-reading-zero = the zero reading
bench-reading-between = a reading in between
bench-next-in = next in
bench-wait = The next reading starts in
bench-wait-minute = at { $minute } minutes
bench-wait-bag = bag { $bag }
bench-between = Read a bag in between
bench-stopped = All clocks stand still
bench-stopped-lead = Wait for your teacher. No reading is late.
bench-not-begun = Your teacher starts the clock.
bench-over = The period is over.

# Writing a height.
bench-ask = How high is the card on bag { $bag }?
bench-how = Ruler on the bench. Eye at the card. Hands off the bag.
bench-height = Height in millimeters
bench-tens = tens
bench-ones = ones
bench-two-taps = Two taps and it is written. You can change it.
bench-type = 50 or more, or a half
bench-type-label = Height in mm, such as 104 or 12.5
bench-type-go = Write it down
bench-type-fault = Write a number from 0 to 250.
bench-keys = Back to the keys
bench-written = Bag { $bag }: { $mm } mm.
bench-change = Change it
bench-change-ask = What is right for bag { $bag }, { $reading }?
bench-change-lead = It says { $mm } mm. The old number stays in the record.
bench-change-stop = Leave it
bench-readings = What you wrote
bench-changed = was { $mm } mm

# When a height looks odd. Only the bag's own readings, its size and the ruler are asked.
guard-please = Please check.
guard-before = At { $minute } minutes the card was at { $mm } mm.
guard-before-zero = At the start the card was at { $mm } mm.
guard-centimeter = Is this { $mm } mm or { $cm } cm?
guard-inch = Is this { $mm } mm or did you read inches?
guard-fell = Now it is lower. Is the zip tight?
guard-jumped = That is a big step.
guard-too-high = No bag of this size gets so high.
guard-again = Read it again
guard-keep = { $mm } mm
guard-write-centimeter = { $cm } cm, write { $mm }
guard-write-inch = { $inch } in, write { $mm }
guard-leak = { $mm } mm, and it leaks

# Odd things.
bench-odd = Something odd?
bench-odd-lead = Tap what you see on bag { $bag }.
bench-odd-noted = { $odd }: bag { $bag }, { $time }

# The own curve.
bench-curve = Your curve
bench-curve-title = Card height of your bags
bench-curve-empty = Your first reading starts the curve.
bench-curve-bench = bench
bench-curve-bag = Bag { $bag }
bench-curve-list = Bag { $bag }: { $list }.
bench-curve-point = { $mm } mm at { $minute } min
bench-curve-rose = Bag { $bag } rose { $mm } mm in { $minute } minutes.
bench-curve-fell = Bag { $bag } fell { $mm } mm in { $minute } minutes.
bench-curve-flat = Bag { $bag } did not rise in { $minute } minutes.
bench-curve-ruler = The small bars are 1 mm up and down. A ruler cannot be read better than that.

# The guess.
bench-guess = Your guess
bench-guess-lead = How many mm will each card rise, from the zero height to the last reading?
bench-guess-bag = Bag { $bag }, in mm
bench-guess-why = Why do you think so? Write no names.
bench-guess-save = Save the guess
bench-guess-fault = Write a number from 0 to 250 for each bag.
bench-guess-locks = After your first zero height, you cannot change your guess.
bench-guess-says = Bag { $bag } about { $mm } mm.
bench-guess-skip = You have no guess yet. Write one below, or tap once more to go on without.
bench-guess-none = No guess was written.

# What to do.
bench-steps = What to do
bench-plan = Your plan
step-goggles = Put your goggles on.
step-labels = Find your bags. Read each label.
step-each = Put this in each bag:
step-dry = Put in: { $things }.
step-water = Pour in { $amount } of water at { $degrees }.
step-close = Press the air out and close the zip.
step-rub = Rub the bag softly until nothing in it is dry.
step-bench = Lay it flat on the bench. Put the card on top.
step-towel = Lay it flat between the towels. Put the card on top.
step-tray = Lay it in the warm tray. Put the card on top.
step-zero = Read the zero height at once.
thing-yeast = yeast
thing-nothing = nothing more
thing-of = { $amount } { $thing }

# After the last reading.
bench-after = After the last reading
bench-after-open = Open the bags over the tub.
bench-after-goggles = Keep your goggles on until every bag is open and the bench is clean.
bench-after-tap = Tap when a bag is open.
bench-after-bag = Bag { $bag } is open
bench-after-done = All bags are open. Wash your hands.

# Two heights for one reading.
bench-two = Two heights for bag { $bag }
bench-two-lead = Both are kept. Your teacher picks one.
bench-two-line = { $reading }: { $mm } mm, { $who }, { $time }
who-device = from this device
who-group = from your group
who-teacher = from your teacher
who-paper = from paper

# The device: what it keeps, where it sends, and how it forgets.
bench-device = This device
bench-list-show = Show unsent as a list
bench-list-hide = Hide the list
bench-list-lead = Copy this on paper if you must.
bench-list-empty = Nothing waits to be sent.
bench-list-bag = Bag
bench-list-minute = Minute
bench-list-mm = mm
bench-list-time = Time
bench-list-what = What
bench-refused = The teacher's computer did not take { $count } of your entries. Tell your teacher.
bench-others = { $count } entries of another group wait here. They are sent when it joins again.
bench-pass = Next group
bench-pass-lead = Your group leaves this device. Then the next group joins.
bench-pass-unsent = { $count } entries are not sent yet. They stay here for your group.
bench-pass-fault = There is no link now. Wait for it, then hand the device on.
bench-pass-sure = Yes, next group
bench-move = New address
bench-move-lead = Has your teacher named a new address? Write it here.
bench-move-label = Address, such as 192.168.1.20:8080
bench-move-go = Go there
bench-move-fault = That is not an address. Copy it from the wall.
bench-move-keeps = What is not sent goes with you.
bench-carry = This page was given { $count } entries from an old address.
bench-carry-lead = Did you bring them?
bench-carry-take = Yes, send them
bench-carry-leave = No, leave them
bench-clear = Clear this device
bench-clear-lead = Do this at the end of the period. The next class starts fresh.
bench-clear-unsent = Not sent yet: { $count }. Copy the list first.
bench-clear-sure = Yes, clear it

# The wall page.
wall-title = Period { $period }, to the bell
wall-period = Period { $period }
wall-before = Period { $period } starts at
wall-read-now = Read now: groups
wall-read-one = Read now: group
wall-next-group = Group
wall-next-in = in { $time }
wall-next-zero = zero reading in { $time }
wall-nobody = Nobody reads now
wall-stopped = All clocks stand still
wall-stopped-lead = Leave the bags. Do what your teacher says.
wall-past-bell = The bell has rung. Open the bags over the tub.
wall-ended = This class is over.
wall-curves = How the cards rise
wall-curves-day = How the cards rise, all classes
wall-curves-lead = Thin: one bag. Thick: the mean. Opened by your teacher.
wall-join = Join your group
wall-join-address = Open this address:
wall-join-code = Class code:
wall-join-group = Your group code is on your tray.
wall-how = How to read
wall-how-1 = Wait for your group number.
wall-how-2 = Read all your bags, one by one.
wall-how-3 = Write each height in mm at once.
wall-rule-hands = Hands off the bags
wall-rule-ruler = Ruler on the bench
wall-rule-eye = Eye at the card, both ends
wall-stand-in = Works with class data: { $groups }
wall-ruler = The period as a ruler: { $start } to the bell at { $bell }. It is { $now }.
wall-bell = bell
phase-set-up = set up
phase-read = read every { $minutes } minutes
phase-vent = vent
phase-clean = clean
link-silent = No answer from the teacher's computer. The clocks go on here.

# The aide's page.
aide-title = Helper lists
aide-lead = Choose a station.
aide-stays = Ticks stay on this device.
aide-done = { $done } of { $all } done
aide-trays = Trays
aide-trays-caution = Goggles for everybody. No eating in this room.
aide-tray = Period { $period }, group { $group }: { $bags } bags with labels
aide-water = Water
aide-water-caution = Hot tap water can burn. An adult pours it.
aide-water-hot = This water is very hot. Only the teacher pours it.
aide-jug = Period { $period }: { $hot } hot and { $cold } cold water. It must read { $degrees } °C.
aide-jug-teacher = Period { $period }: the teacher mixes { $makes } at { $degrees } °C.
aide-stock = Enzyme
aide-stock-caution = Enzyme dust is bad for lungs. Read the label. Goggles on.
aide-stock-make = Put in { $takes }. Fill with water to { $makes }. Stir.
aide-stock-label = Write on it: { $name }, good until { $until }.
aide-stock-shake = Shake it before each class.
aide-vent = Open bags
aide-vent-goggles = Goggles on.
aide-vent-open = Open each bag over the tub, away from faces.
aide-vent-pour = Pour it down the sink. Run the water.
aide-vent-window = Open a window.
aide-vent-count = Count the bags. None goes home.
aide-clean = Clean up
aide-clean-cloth = Wipe each bench with a wet cloth.
aide-clean-floor = Dry the floor.
aide-clean-rulers = Wash the rulers and count them.
aide-clean-trays = Put the trays back by number.
aide-clean-hands = Everybody washes hands with soap.

# The page on which a group plans its own bags.
together-title = Plan your bags
together-lead = Choose one thing to change. Keep all else the same. Then hand it in.
together-question = The class asks: { $question }
together-cupboard = In the cupboard
together-asks = Your question
together-asks-lead = What do you want to find out?
together-change = What will you change?
together-change-lead = One thing only.
together-change-none = Choose one thing
together-food = the food
together-food-amount = how much food
together-extra = something else, like salt
together-water-temperature = how warm the water is
together-water = how much water
together-yeast-amount = how much yeast
together-enzyme = the enzyme
together-levels = What goes into your bags?
together-levels-lead = Write one kind of bag on each line. For amounts write the unit.
together-level = Kind { $number }
together-beside = What will you compare them with?
together-beside-lead = One of your kinds, or a bag of your teacher.
together-same = What stays the same?
together-same-lead = All bags of the class have this:
together-same-bag = bag
together-keeps = What else do all your bags have?
together-keeps-lead = Like: white sugar + 0.5 g
together-bags = How many bags of each kind?
together-bags-lead = One bag can be luck.
together-expects = What do you expect?
together-because = Why? Write no names.
together-look = Look it over
together-hand-in = Hand it in
together-think = Think about this
together-think-blank = Write first what you change and what goes into your bags.
together-think-none = Good. You can hand it in.
together-handed-in = It is handed in. Your teacher will look at it.
together-approved = Your plan is approved. You will make these bags.
together-returned = Your teacher asks: { $question }
together-returned-lead = Change your plan if you want to, and hand it in again.
together-ask-unsaid = Can another group make your bags from what you wrote?
together-ask-cupboard = Is all of it in the cupboard today?
together-ask-two-things = How many things are not the same in your bags?
together-ask-change = What is not the same in your bags?
together-ask-alike = Are two of your bags made in the same way?
together-ask-compare = What will you compare your bags with?
together-ask-luck = How will you know it was not luck?
together-ask-gas = What in your bags can make gas?
together-ask-hot = What can water so hot do to skin and to yeast?
together-ask-make = How will you measure that?
