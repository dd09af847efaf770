# The page for data sheets on paper.

paper-title = Paper: period { $period }, group { $group }
paper-lead = Type what groups wrote on paper, sheet by sheet. Nothing on record is overwritten: another number becomes a correction. Then look at the results.
paper-no-script = This page needs scripts. Turn them on, or write heights one by one on the run page.
paper-no-bags = The plan has no bags yet, so there are no sheets to type. Write the bag list on the plan page first.
paper-periods = Periods
paper-groups = Groups
paper-sheet = Sheet
paper-sheet-go = Go to it
paper-sheet-hint = The code in the foot of the sheet, such as P3-05-B, a bag code of it, such as P4-05B-K, or period and group, such as 4-5.
paper-sheet-unknown = No sheet has that code. Type it as it stands on the paper, or choose below.
paper-period = Period
paper-group = Group
paper-tab = { $done } of { $of }
paper-caption = Heights in millimeters, period { $period }
paper-bag = Bag
paper-zero-at = Zero at
paper-zero-at-of = { $bag }, time of the zero reading
paper-zero = zero
paper-minute = min
paper-cell = { $bag } at { $minute } min
paper-cell-zero = { $bag } at zero
paper-vented = vented
paper-lost = lost
paper-set-aside = set aside
paper-keys = Enter goes to the next cell, arrows move, Escape puts back what stood there. Numbers are millimeters; 1.2 cm and 3/8 in are understood. “Zero at” is the clock in the room; what stands there comes from the schedule.
paper-save = Save
paper-save-next = Save and go to the next sheet
paper-again = Type it a second time
paper-again-lead = The second time, blind. Type the same sheet again from paper, then compare.
paper-again-empty = Type the sheet once before you type it a second time.
paper-again-leave = Leave the second time
paper-compare = Compare
paper-same = Both times say the same. Save it now.
paper-chosen = All differences are settled. Save it now.
paper-differ-head = The two times differ. Look at the paper and choose.
paper-first = First time:
paper-second = Second time:
paper-blank = blank
paper-unsaved = { $count } typed, not saved yet
paper-unsaved-none = Nothing is waiting to be saved.
paper-saved = { $count ->
    [one] Saved: 1 height, corrections among them: { $corrected }.
   *[other] Saved: { $count } heights, corrections among them: { $corrected }.
  }
paper-left = Not saved: { $count }. What to do stands below.
paper-silent = The program does not answer. What you typed is kept in this browser. Save again when it is back.
paper-wrong-head = Not taken
paper-wrong-height = { $cell }: { $why }.
paper-wrong-time = { $bag }: “{ $text }” is no time of day; write it like 10:34.
paper-wrong-no-zero = { $cell }: write the zero reading of this bag first.
paper-wrong-not-here = { $cell } is no cell of this sheet any more; load the page again.
paper-not-counted = { $cell } can be written down but does not count: { $why }.
paper-fixed-head = Corrections
paper-corrects = { $cell }: { $was } mm is on record. Saving corrects it to { $mm } mm; both stay on record.
paper-chooses = { $cell }: of two heights on record, saving chooses { $mm } mm.
paper-odd-head = Worth a second look
paper-odd-lead = Nothing is changed for you. Look at the paper; if it says so, save it as it is.
paper-open-head = Two heights on record
paper-open = { $cell }: { $heights } mm. Type the right one.
paper-was-head = Corrected before
paper-was = { $cell }: { $was } mm stood there before.
paper-put-back = Put { $was } mm back
paper-all-full = All sheets are full.
paper-to-results = See what the class found.
paper-file-head = A file
paper-file-lead = Or take all heights of the day from a spreadsheet, saved as CSV. You see what it would add before anything is added.
paper-file-pick = Choose the file
paper-file-paste = Or paste the rows here, with their headings
paper-file-look = Look at it
paper-file-nothing = Choose a file or paste rows first.
paper-file-key = The page sent no key. Load it again; nothing was added.
paper-file-new = New heights: { $count }.
paper-file-there = On record already: { $count }.
paper-file-each = Which ones
paper-file-differ-head = The file says something else than the record
paper-file-differ-lead = The record stays unless you tick a row. A ticked row becomes a correction; both heights stay on record.
paper-file-record = On record
paper-file-file = In the file
paper-file-right = Which is right
paper-file-take = Take the file's
paper-file-odd = Odd things that are noted too
paper-file-aside = Bags that are set aside
paper-file-not-counted = Written down, but does not count
paper-file-notes = { $count ->
    [one] 1 note in words stays in the file. The record holds no sentences.
   *[other] { $count } notes in words stay in the file. The record holds no sentences.
  }
paper-file-rejected = Rows and cells not taken: { $count }
paper-file-line = Line { $line }:
paper-file-add = Add this to the record
paper-file-adds-nothing = There is nothing to add.
paper-file-added = { $count ->
    [one] Added to the record: 1 line.
   *[other] Added to the record: { $count } lines.
  }
