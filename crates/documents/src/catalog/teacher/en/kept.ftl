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
kept-rosters = { $count ->
    [one] 1 list of a class with names and ids of students
   *[other] { $count } lists of classes with names and ids of students
  }
kept-group-lists = { $count ->
    [one] 1 list of who is in which group and was away, with marks of single students, or an older state of one
   *[other] { $count } lists of who is in which group and was away, with marks of single students, older states among them
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
kept-looked = { $files ->
    [one] Looked through the one file of the data folder, { $size } MB, for { $pieces } pieces of it.
   *[other] Looked through every byte of { $files } files of the data folder, { $size } MB, for { $pieces } pieces of it.
  }
kept-looked-none = None of it stands anywhere.
kept-looked-found = The same letters still stand in these files. In the record they may belong to a version of a plan that says the same:
kept-looked-short = { $count ->
    [one] 1 text of fewer than six letters was not looked for.
   *[other] { $count } texts of fewer than six letters were not looked for.
  }
kept-looked-unread = These could not be read, so nothing is known of them:
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

people-title = What is kept about whom
people-lead = Everything this program keeps about people, on one page, and one action that deletes what they wrote. Nothing is sent anywhere.
people-whom-head = About whom
people-who = Who
people-what = What is kept
people-until = Until when
people-students = Students
people-wrote = What they type in their own words: reasons for guesses, proposals, claims, notes on claims; and your answers, marks and remarks. In a table of its own. No names are asked for, but somebody may type one.
people-wrote-until = 30 days after the last school day, or the day that you set. Or now: below.
people-roster = Students of a roster, if you took one
people-roster-what = Name and id in the school’s system, class, group, whether absent, a mark of their own with your words. In the same table. Of a roster only these are read.
people-roster-until = The same day, by itself; or when you delete the lists of students, or all that people wrote. Files of grades that you saved are beyond the program.
people-groups = Groups, as numbers
people-measured = Heights, guesses, times, what happened to a bag; by period and group. Who is in a group stands in the list of students only, if you took a roster.
people-measured-until = As long as the investigation; it is the science.
people-devices = Devices that joined
people-seat = That a device is in: period, group and times; of its secret only a fingerprint. No address of a device, no name of it. A bench keeps entries on the device until they have arrived.
people-seat-until = The end of the period, or until you put it out. A device that is cleared keeps nothing.
people-teacher = You
people-plan = Your plans in every version, your pilot, answers to cautions; of the passphrase a fingerprint; a log of starts, stops and what was refused.
people-plan-until = As long as the data folder. Write no names of students into a plan.
people-nobody = Never kept
people-never = Birth dates, addresses, logins, passwords, health; anything about families; names of students, unless you take a roster or somebody types one.
people-never-until = –
people-words-head = Texts that people wrote
people-none = There is no investigation yet.
people-texts = { $count ->
    [0] none
    [one] 1 text
   *[other] { $count } texts
  }
people-due = (goes on { $day })
people-delete-says = { $backups ->
    [0] Deletes every text of every investigation, overwrites it on disk, counts again, and then looks through every byte of the data folder for it.
   *[other] Deletes every text of every investigation, here and in every backup that can be reached, overwrites it on disk, counts again, and then looks through every byte of the data folder for it.
  }
people-delete-go = Delete all that people wrote
people-unsure = Nothing was deleted. Tick the line above the button, then press it again.
people-deleted = It is done; the proof stands below.
people-look-head = Look for a name
people-look-says = Type a name or a sentence of six letters or more: every byte of the data folder is looked through for it, whatever its capitals. What you type is kept nowhere.
people-look-name = Name or sentence
people-look-go = Look through everything
people-more = More about this deletion
people-where = All of it lies in { $folder }. Copies that you made yourself, files that were written by commands, and paper are beyond the program.

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
