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
join-brings = Readings on this device: { $count }. Join, and they are sent.
join-page = Wall, aide or walk-round
join-page-code = Page code
join-page-go = Open the page

# The bench page: its head.
bench-title = Group { $group }, period { $period }
bench-title-named = { $label }, group { $group }, period { $period }
bench-invented = Made-up class. Nothing here is real.
bench-rehearsal = Rehearsal. Nothing here counts.
bench-all-saved = All saved
bench-come = { $count } not sent yet
bench-kept-count = { $count } kept on this device
bench-no-link = No link to the teacher's computer. Go on reading. Nothing is lost.
bench-no-words = The words of that language are not here yet. Try again when there is a link.
bench-stay = Keep this page open until all is saved.
bench-out = This device is no longer in the group. Join again to send what it keeps.
bench-out-go = Join again
bench-no-script = This page needs scripts. Turn them on, or write on paper.
bench-no-store = This browser cannot keep readings. Write them on paper too.
bench-no-bags = Your group has no bags today.
bench-older-plan = “(plan { $version })” behind a name: made as plan { $version } said, before the plan was changed.
bench-plan-own = Plan your own bags

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
guard-high-zero = A bag just closed lies nearly flat. Does the ruler stand on the bench?
guard-again = Read it again
guard-keep = { $mm } mm
guard-write-centimeter = { $cm } cm, write { $mm }
guard-write-inch = { $inch } in, write { $mm }
guard-leak = { $mm } mm, and it leaks

# Odd things.
bench-odd = Something odd?
bench-odd-lead = Tap what you see on bag { $bag }. Is it another bag? Tap that bag first.
bench-odd-noted = { $odd }: bag { $bag }, { $time }
bench-odd-back = Take it back

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
bench-pour = How warm was the water for { $bags } when you poured it?
bench-pour-far = Your plan says { $degrees }. Look again, or tap once more to write yours.
bench-pour-hot = Water over 60 °C (140 °F) burns skin and kills yeast. Is it °C or °F? Look again, or tap once more to write it.
bench-pour-fault = Write what the thermometer says. Then tap °C or °F.
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
bench-refused = Not taken by the teacher's computer: { $count }. Tell your teacher.
bench-others = Kept here for another group: { $count }. Sent when that group joins again.
bench-pass = Next group
bench-pass-lead = Your group leaves this device. Then the next group joins.
bench-pass-unsent = Not sent yet: { $count }. It stays here for your group.
bench-pass-fault = There is no link now. Wait for it, then hand the device on.
bench-pass-sure = Yes, next group
bench-move = New address
bench-move-lead = Is there a new address? It stands on the wall. Write it here.
bench-move-label = Address, such as 192.168.1.20:8080
bench-move-go = Go there
bench-move-fault = That is not an address. Copy it from the wall.
bench-move-keeps = What is not sent goes with you.
bench-carry = Brought to this page from an old address: { $count }.
bench-carry-lead = Did you bring that?
bench-carry-take = Yes, send it
bench-carry-leave = No, leave it
bench-clear = Clear this device
bench-clear-lead = Do this at the end of the period. The next class starts fresh.
bench-clear-unsent = Not sent yet: { $count }. Copy the list first.
bench-clear-fault = There is no link now. Nothing was cleared. Wait for the link. Is there none any more today? Copy the list and tap again.
bench-clear-sure = Yes, clear it

# What the teacher gives or opens to a group.
lent-class = Class data
lent-class-lead = Other groups read these bags. They are made like yours.
lent-simulated = Simulated run: not measured
lent-simulated-lead = A computer drew these numbers. No bag was read.
lent-never = They do not count in the class results.
lent-next = Look at these numbers. Write on paper what you see and why you think it is so.
lent-empty = No number is here yet.
lent-table = Height of each card above the bench, in mm:
lent-bag = Bag { $number }
class-empty = Nobody has read such a bag yet.
class-bag = { $treatment }: 1 bag, { $high } mm above its start at { $minute } min.
class-same = { $treatment }: { $bags } bags, { $high } mm above the start at { $minute } min.
class-range = { $treatment }: { $bags } bags, { $low } to { $high } mm above the start at { $minute } min.
found-head = What the class found
found-lead = It rests on the bags of all groups. Your teacher opened it.
found-nothing = There is nothing to compare here.
found-not-run = Not run yet: { $treatments }.
found-clear-more = Clear
found-clear-more-says = { $treatment } rose more than { $reference }.
found-clear-less = Clear
found-clear-less-says = { $treatment } rose less than { $reference }.
found-leans-more = Leaning
found-leans-more-says = { $treatment } may rise more than { $reference }.
found-leans-less = Leaning
found-leans-less-says = { $treatment } may rise less than { $reference }.
found-unclear = Can’t tell
found-unclear-says = { $treatment } beside { $reference }.
found-no-rise = No rise to read
found-no-rise-says = { $treatment } beside { $reference }.
found-not-comparable = Not comparable
found-not-comparable-says = { $treatment } beside { $reference }.
found-hangs = Without the bags set aside, it is not the same.

# The wall page.
wall-lead = For the whole class: the time to the bell, who reads now and who is next.
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
wall-curves-lead = Thin: one bag. Thick: the mean. Tint: how far bags lie from it. Opened by your teacher.
wall-join = Join your group
wall-join-address = Open this address:
wall-join-code = Class code:
wall-join-group = Your group code is on your tray.
wall-place = Join or go on here:
wall-place-square = The address, for cameras
wall-how = How to read
wall-how-1 = Wait for your group number.
wall-how-2 = Read all your bags, one by one.
wall-how-3 = Write each height in mm at once.
wall-rule-hands = Hands off the bags
wall-rule-ruler = Ruler on the bench
wall-rule-eye = Eye at the card, both ends
wall-lent-class = Class data: group { $groups }
wall-lent-simulated = Simulated run, not measured: group { $groups }
wall-ruler = The period as a ruler: { $start } to the bell at { $bell }. It is { $now }.
wall-bell = bell
phase-set-up = set up
phase-read = read every { $minutes } minutes
phase-vent = vent
phase-clean = clean
link-silent = No answer from the teacher's computer. The clocks go on here.

# The aide's page.
aide-title = Helper lists
aide-lead = One list for each station. Tick what is done, then go on to the next.
aide-stays = Ticks stay on this device.
aide-done = { $done } of { $all } done
aide-trays = Trays
aide-trays-caution = Goggles for everybody. No eating in this room.
aide-tray = Period { $period }, group { $group }. Bags with labels: { $bags }
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
together-bench = To your bags
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
together-ask-cupboard = Is all of it in the cupboard today? How much of it goes in? Nothing else may go into a bag.
together-ask-two-things = How many things are not the same in your bags?
together-ask-change = What is not the same in your bags?
together-ask-alike = Are two of your bags made in the same way?
together-ask-compare = What will you compare your bags with?
together-ask-luck = How will you know it was not luck?
together-ask-gas = What in your bags can make gas?
together-ask-hot = What can water so hot do to skin and to yeast?
together-ask-make = How will you measure that? Does it fit in the bag?

# On paper: the foot of every page, labels, the sheet with the address of the day.
page-sheet = Sheet
page-of = of
page-continued = continued
page-invented = Made-up class: no reading here is real
page-rehearsal = Rehearsal: no reading here is real
page-not-printed = [?] stands for letters or pictures that these pages cannot print.
label-margin = Print at 100 %. Do the test print first.
label-square = Square code of bag { $bag }
label-card = Card of this bag
label-card-once = Card: read at minute { $last }
label-card-read = Card: read every { $every } min to minute { $last }
join-sheet-open = Open this address
join-sheet-camera = Or use a camera
join-sheet-square = Square code of { $address }
join-sheet-class = Type the class code. It is on the wall.
join-sheet-group = Type your group code. It is on your tray. A bag code works too.
join-sheet-again = Lost the page? Open it here again.

# What goes wrong, whoever meets it.
trouble-first = To the first page
trouble-nowhere = There is no such page
trouble-nowhere-says = Nothing lies at this address. Check it, or begin at the first page.
trouble-not-yours = This page is not for you.
trouble-wrong = That cannot be used
trouble-failed = That did not work
trouble-failed-says = What was saved before is safe. Try again. If it stays so, the log says why: barm.log, beside the record.
trouble-full = The disk is full
trouble-full-says = The teacher's computer has no space left, so this was not kept there. What was saved before is safe. Devices keep what is typed and send it later.
trouble-unread = That cannot be read
trouble-unread-says = Something that was sent is missing or does not fit. Open the page again.
trouble-too-much = That is a lot at once
trouble-too-much-says = This device sends more than a group types. Wait a minute, then send it again. Nothing that was saved is lost.
trouble-method = This address does not answer to that.
trouble-far = This page answers only on the computer that runs the program.
trouble-foreign = This was not sent from a page of this program. Open the page again.
trouble-stale = This form is too old. Load the page again and send it once more.
trouble-large = That is more than this address takes.
trouble-name = This program does not answer to that name. Use the address that it showed at its start. Another name is given at the start with --name.

# Names of what is in the cupboard, each as a plan and a list call it.
larder-sugar-white = white sugar
larder-sugar-brown-packed = brown sugar, packed
larder-sugar-brown-loose = brown sugar, loose
larder-sugar-powdered = powdered sugar
larder-fructose-powder = fructose powder
larder-dextrose-monohydrate = dextrose
larder-maltodextrin = maltodextrin
larder-honey = honey
larder-corn-syrup-light = light corn syrup
larder-corn-syrup-dark = dark corn syrup
larder-hfcs = high-fructose corn syrup
larder-malt-syrup = malt syrup
larder-maple-syrup = maple syrup
larder-molasses = molasses
larder-agave-syrup = agave syrup
larder-corn-starch = corn starch
larder-cornmeal-degermed = cornmeal, degermed
larder-cornmeal-whole = cornmeal, whole-grain
larder-corn-flour-whole = corn flour, whole-grain
larder-wheat-flour-white = white wheat flour
larder-wheat-flour-whole = whole wheat flour
larder-oat-flour = oat flour
larder-rolled-oats = rolled oats
larder-cooked-oats = cooked oats
larder-barley-malt-flour = barley malt flour
larder-rice-flour = rice flour
larder-tapioca-pearl = tapioca pearls
larder-potato-flakes = potato flakes
larder-potato-flour = potato flour
larder-milk-powder-nonfat = nonfat dry milk
larder-milk-powder-instant = instant nonfat dry milk
larder-milk-skim = skim milk
larder-apple-juice = apple juice
larder-grape-juice = grape juice
larder-applesauce = applesauce
larder-banana = mashed banana
larder-raisins = raisins
larder-sweet-potato-raw = raw sweet potato
larder-sweet-potato-boiled = boiled sweet potato
larder-sweet-potato-baked = baked sweet potato
larder-sucralose-packet = sucralose packet
larder-aspartame-packet = aspartame packet
larder-saccharin-packet = saccharin packet
larder-granulated-substitute-brown = brown sugar substitute, granulated
larder-stevia-powder = stevia powder
larder-erythritol = erythritol
larder-salt = table salt
larder-baking-soda = baking soda
larder-vinegar = white vinegar
larder-yeast-ady = active dry yeast
larder-yeast-instant = instant yeast
larder-yeast-compressed = compressed yeast
larder-lactase-drops = lactase drops
larder-lactase-tablet = lactase tablet
larder-glucoamylase-powder = glucoamylase powder
larder-glucoamylase-liquid = glucoamylase liquid
larder-amylase-powder = amylase powder (fungal)
larder-bacterial-amylase = bacterial amylase powder
larder-invertase-liquid = invertase liquid
larder-stock-lactase-drops = lactase drops solution
larder-stock-lactase-tablet = lactase solution
larder-stock-glucoamylase-powder = glucoamylase solution
larder-stock-glucoamylase-liquid = glucoamylase liquid solution
larder-stock-amylase-powder = amylase solution
larder-stock-bacterial-amylase = bacterial amylase solution
larder-stock-invertase-liquid = invertase liquid solution
larder-yeast = yeast
larder-bags = bags
larder-cards = cards
larder-labels = labels
larder-cups = cups
larder-spoons = spoons
larder-bag-snack = snack
larder-bag-sandwich = sandwich
larder-bag-quart = quart
larder-bag-gallon = gallon
larder-word-no-food = no food
larder-word-no-yeast = no yeast
larder-word-no-enzyme = no enzyme
larder-word-no-salt = no salt
larder-word-water-of = water of
larder-word-white-flour = white flour
larder-word-glucoamylase = glucoamylase
larder-word-lactase = lactase
larder-word-amylase = amylase
larder-word-invertase = invertase

# Paper that students hold: what stands on every sheet.
hand-page = page { $page }
hand-teacher-bench = Teacher's bench, period { $period }

# The bench card.
card-name = Bench card
card-question = Your question
card-question-own = What do you want to find out? Write it as a question.
card-known = This is known
card-known-lead = Check it with your own bags.
card-known-food = Yeast makes gas from food that it can use.
card-known-food-amount = More food can make more gas, up to a point.
card-known-enzyme = An enzyme cuts food into small bits. Then yeast can use it.
card-known-enzyme-amount = More enzyme cuts food faster, up to a point.
card-known-yeast = Each kind of yeast wakes up at its own pace.
card-known-yeast-amount = More yeast makes gas faster.
card-known-water = More water makes the mix thinner. Then yeast works at another pace.
card-known-water-temperature = Warm water makes yeast work faster. Hot water kills it.
card-known-extra = Salt and sour things can slow yeast down.
card-known-bag = The same gas lifts the card less in a big bag.
card-known-card = A heavy card presses the bag flat.
card-known-lies = A warm bag makes gas faster than a cool one.
card-change = We change
card-keep = We keep the same
card-keep-lead = All bags of the class have this:
card-same-water = { $amount } of water at { $degrees }
card-same-bag = one bag: { $bag }
card-own-bags = Write what goes into each bag.
card-own-steps = Write how you will make them. One step on each line.
card-bag = bag
card-with = { $amount } ({ $other })
card-none = –
card-guess = Write your guess on the data sheet.
card-every = Read each bag every { $minutes } minutes, { $count } times.
card-read = Read each bag at { $minutes } minutes.
card-missed = Missed one? Leave it blank.
card-wash = Wash your hands with soap.

# What can hurt, in a child's words. The code is that of the caution it comes from.
care = Take care
care-s02 = Enzyme drops can sting. Wipe up each spill with a wet cloth.
care-s03 = Hot water burns. Only your teacher pours it.
care-s04 = Keep your hands out of the warm tray.
care-s07 = Bag { $bag } can burst. Open it over the tub { $minute } minutes after its zero reading.
care-s08 = Leave the zip of a kept bag open a bit.
care-s09 = Nothing here goes in your mouth.
care-s10 = Some food here can hold { $allergens }. Is it bad for you? Tell your teacher. The whole class will swap it.
care-s13 = Cover cuts. Keep your hands off your face.
care-s16 = Nobody blows into the meter. Push gas out of the bag.
care-s18 = Broken glass? Do not touch it. Tell your teacher.
care-s19 = Wipe up wet floors at once.
care-s23 = Do gloves make your skin itch? Take them off and tell your teacher.
care-s25 = Bad smell? Tell your teacher and step outside.
care-s26 = Keep bags away from your face.
care-s27 = Is yeast bad for you? Tell your teacher before you start.
care-s29 = Do not squirt with a syringe.
care-s30 = Hot mash sticks and burns. Only your teacher cooks it.
care-s31 = No bag goes home.
care-s32 = Do not sniff at a bag.
allergen-milk = milk
allergen-egg = egg
allergen-fish = fish
allergen-shellfish = shellfish
allergen-tree-nuts = tree nuts
allergen-peanut = peanut
allergen-wheat = wheat
allergen-soy = soy
allergen-sesame = sesame

# Units of a kitchen, as plans write them.
unit-tsp = tsp
unit-tbsp = tbsp
unit-cup = cup
unit-cups = cups
unit-drop = drop
unit-drops = drops
unit-tablet = tablet
unit-tablets = tablets
unit-packet = packet
unit-packets = packets
unit-piece = piece
unit-pieces = pieces

# The data sheet.
data-name = Data sheet
data-zero-at = zero at
data-zero = zero
data-how = Write each height in whole mm.
data-late = Was the zero late? Cross out its time and write the true one.
data-curve = Draw each height as a point. Join the points of each bag.

# The planning sheet, beside the words of the planning page.
planning-name = Planning sheet

# The tally sheet on the wall.
tally-name = Tally sheet
tally-kind = kind of bag
tally-rise = how far each card rose
tally-how = Take the last height. Take away the zero height. Write it in the box of your bag.
tally-dot = Then draw a dot for it above the line.

# Squared paper.
graph-name = Graph paper
graph-group = Group
graph-period = Period
graph-shows = What it shows
graph-marks = What is in each bag?

# The height gauge.
gauge-name = Height gauge
gauge-cut = Cut along the thick line. It is the bench.
gauge-fold = Fold each strip along the broken line, like a book.
gauge-stand = Stand it beside the card. The thick line is down.
gauge-read = Read where the bottom of the card meets the edge.
gauge-check = Lay a ruler on both lines first. Each is 100 mm long. Is one not? Print again at 100 %.
# The slides of the talk after the day.
slides-period = Period { $period }
slides-dots = Rise at minute
slides-dots-after = , mm. One mark is one bag.
slides-curves = Each thin line is one bag. The thick line is the mean. The tint shows how far bags lie from it.
slides-talk = Talk about it
slides-nothing = No readings yet.
slides-prompt-see = What do you see first? Say only what the dots show.
slides-prompt-spread = How far apart are bags of one kind? How far apart are the kinds?
slides-prompt-aside = One bag was set aside. Which rule says so? Is that fair?
slides-prompt-control = What does the bag without food tell us?
slides-prompt-claim = What can we claim? Which numbers back it up?
slides-prompt-next = What one thing would you change next? What stays the same?

# The page for families and the principal.
summary-name = What our classes found out
summary-did = What we did
summary-found = What we found
summary-know = How sure we are
summary-safe = Our safety rules
summary-learned = What it is for
summary-home = Ask at home
summary-did-says = Our plan was { $bags } small bags of yeast, warm water and food, made in { $periods }. { $read } Yeast makes gas from food. The gas lifts a card on the bag. Students read its height with a ruler and drew what they saw.
summary-periods-one = one class period
summary-periods = { $count } class periods
summary-read-none = No bag was read yet.
summary-read-all = All of them were read.
summary-read-some = We have heights of { $count } of them.
summary-clear = Clear
summary-leaning = Likely
summary-open = Still open
summary-more = { $treatment }: the card rose { $mm } mm more than with { $reference }.
summary-less = { $treatment }: the card rose { $mm } mm less than with { $reference }.
summary-rest = For { $count } other pairs we do not know yet if they differ. With a ruler we cannot see less than { $mm } mm.
summary-rest-one = For one other pair we do not know yet if they differ. With a ruler we cannot see less than { $mm } mm.
summary-rest-all = Do the bags differ? We do not know yet. With a ruler we cannot see less than { $mm } mm.
summary-rest-none = We have no heights to compare yet.
summary-further = Also
summary-further-says = We saw more differences of this kind: { $count }.
summary-no-food = a bag without food
summary-picture = Rise in mm. Each mark is one bag. The upright line is their mean, the bar how far they lie from it. No mark stands for a person.
summary-know-says = Bags made the same way do not rise the same. So each kind was made more than once. We call a difference clear only when it is larger than chance makes. This yeast, these foods and this room were tried, no others.
summary-safe-lead = This is what our plan asks for:
summary-safe-goggles = Goggles on, hands washed, benches wiped.
summary-safe-taste = Nobody tastes or eats anything, and nobody blows into anything.
summary-safe-enzyme = Only the teacher works with powders. Students get liquids.
summary-safe-water = Water is warm, not hot. Food that could harm somebody is swapped for the whole class.
summary-safe-poured = All bags are opened and emptied the same day. None goes home.
summary-home-says = What did you change, and what did you keep the same? Which bag surprised you? How would you find out more?

# Dates as people write them
date-words = { $month } { $day }, { $year }
date-span = { $first } to { $last }
month-1 = January
month-2 = February
month-3 = March
month-4 = April
month-5 = May
month-6 = June
month-7 = July
month-8 = August
month-9 = September
month-10 = October
month-11 = November
month-12 = December

# Words that charts draw
chart-minutes = min
chart-millimeters = mm
chart-last-reading = last reading
chart-bell = bell
chart-to = to
chart-mad = MAD
chart-same-as = same as
chart-gap = gap
chart-mads = MADs
chart-nothing = no readings
chart-kinds = kinds
