# What is kept in words and for how long, and backups.

kept-title = Names and notes: { $title }
kept-lead = What people typed in their own words lies apart from the heights, so that it can be deleted for good. The science stays whole. Next: delete it now, or see the day on which it goes by itself.
kept-head = Kept now
kept-none = Nothing. No name and no sentence of anybody is on record.
kept-needed = None of this is needed for a result.
kept-reasons = { $count ->
    [one] 1 reason for a guess
   *[other] { $count } reasons for guesses
  }
kept-claims = { $count ->
    [one] 1 claim that a group handed in, or an older state of one
   *[other] { $count } claims that groups handed in, older states among them
  }
kept-reviews = { $count ->
    [one] 1 note on another group’s claim
   *[other] { $count } notes on other groups’ claims
  }
kept-marks = { $count ->
    [one] 1 sheet of marks with your remarks, or an older state or copy of one
   *[other] { $count } sheets of marks with your remarks, older states and copies among them
  }
kept-proposals = { $count ->
    [one] 1 proposal that a group handed in
   *[other] { $count } proposals that groups handed in
  }
kept-answers = { $count ->
    [one] 1 answer to a proposal
   *[other] { $count } answers to proposals
  }
kept-others = { $count ->
    [one] 1 other note
   *[other] { $count } other notes
  }
kept-plan = Not among them: the plan, which is yours: its title, the names of groups, your questions and what you did about cautions. Every version that you saved is kept, here and in backups, and deleting words does not reach it. Write no names of students there. A name that stands there all the same goes only with the whole data folder and its backups.
kept-delete-head = Delete now
kept-delete-says = Deletes all of it and overwrites it on disk, here and in every backup that can be reached. Nobody can bring it back.
kept-delete-check = I want this to be gone for good
kept-delete-go = Delete all words
kept-delete-unsure = Nothing was deleted. Tick the line above the button, then press it again.
kept-day-head = Goes by itself
kept-day-on = On { $day } the program deletes all of it by itself, when it starts or while it runs.
kept-day-none = No day is set, because the plan has no school day.
kept-day-rule = That is 30 days after the last school day, { $last }.
kept-day-chosen = You chose that day. Without a choice it is 30 days after the last school day.
kept-day-label = Another day
kept-day-go = Set the day
kept-day-back = Back to 30 days
kept-day-wrong = That is no day; write it like 2027-04-08. Nothing was changed.
kept-day-set = The day is set.
kept-done-head = Proof
kept-done = { $words ->
    [0] On { $at }: nothing was there to delete.
    [one] On { $at }: 1 text was deleted.
   *[other] On { $at }: { $words } texts were deleted.
  }
kept-done-itself = The day had come.
kept-done-left = { $left ->
    [0] Counted again afterwards: none is left.
   *[other] Counted again afterwards: { $left } are left.
  }
kept-done-backups = { $count ->
    [0] No backup held any of it.
    [one] It is gone from 1 backup too:
   *[other] It is gone from { $count } backups too:
  }
kept-done-unreached = Not reached: these copies may still hold it. Bring them back and delete again, or destroy them.
kept-unreached = { $path }, made on { $made }: { $why }
kept-elsewhere = Copies that you made yourself, folders written by “barm export” and sheets of paper are beyond the program. A disk that keeps old blocks may hold traces, and so may the log and the copies of a PostgreSQL server: ask whoever keeps it.
kept-backups-head = Backups it would clean
kept-backups-none = The program has made none.

backups-title = Backups
backups-lead = A backup is one file with everything that is on record. It gets its name only after it was read through. Copy it to another disk; then go on from the shelf.
backups-head = Backups
backups-last = The last one was made on { $made } and read through on { $checked }.
backups-none = There is none yet. One disk is no disk: make one now.
backups-make-head = Make one
backups-make = Make a backup now
backups-made = { $entries ->
    [one] Made and read through, with 1 entry: { $path }
   *[other] Made and read through, with { $entries } entries: { $path }
  }
backups-checked = { $entries ->
    [one] Read through again, whole, with 1 entry: { $path }
   *[other] Read through again, whole, with { $entries } entries: { $path }
  }
backups-dropped = Taken off the list: { $path }
backups-failed = { $why }. Nothing was changed.
backups-file = File
backups-when = Made
backups-read = Read through
backups-check = Read it through
backups-gone = not there any more
backups-drop = Take it off the list
backups-back-head = Put one back
backups-back = Stop the program, then type this in a terminal. What is on record now is put aside beside it, not thrown away.
backups-export-head = As plain text
backups-export = Everything as files that any program reads. Stop the program, then type this.
backups-words = Words that were deleted do not come back with a backup.
