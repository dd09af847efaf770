# What the teacher reads on every page. A language is a folder like this one; one file is enough.
# Sentences may be longer than those for students, and still are plain. What a plan says, what the
# checks find and how a result is worded are made elsewhere.

# Small words of sentences.
word-and = { $first } and { $last }

# The running head.
head-parts = Parts
head-plan = Plan
head-approve = Approve
head-pilot = Pilot
head-prepare = Prepare
head-by-pilot = See the lots
head-print = Print
head-rehearse = Rehearse
head-run = Run
head-paper = Paper
head-results = Results
head-shelf = Shelf
head-rehearsal = Rehearsal. Nothing here counts.
head-invented = Made-up class. Nothing here is real.

# Where papers are offered.
head-older-plan = “(plan { $version })” behind a name: made as version { $version } of the plan has it, before that was changed. It is a kind of its own and not averaged with the newer one.
head-no-printer = No printer here? Save the PDF and take it to a computer that has one, or copy what you need by hand: it all stands on this page.
