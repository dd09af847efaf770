# Students and groups: a school's roster, who is in which group, grades as files.

roster-title = Students and groups: { $title }
roster-lead = Take a roster of your school, say which class is which period, and put students into groups; then every student’s grade can go into the school’s gradebook. No page of a group, the wall or an aide shows any of it.
roster-marks = Marks, and grades as files
roster-file = Roster
roster-file-says = The school’s own system exports it as OneRoster, version 1.1 or 1.2, a zip. Read are names, ids and classes of students; everything else is dropped while it is read. Nothing is kept before you choose the classes.
roster-file-again = A newer roster takes the place of the older one, period by period. Who is still in the class stays in the group.
roster-pick = The zip, at most 8 MB
roster-look = Look at it
roster-no-file = Pick a zip of at most 8 MB first. If the export of the whole school is larger, export your own classes.
roster-offers = { $count ->
    [one] 1 class with students.
   *[other] { $count } classes with students.
  }
roster-offers-says = { $students ->
    [one] 1 student in all. Nothing of it is kept yet.
   *[other] { $students } students in all. Nothing of it is kept yet.
  }
roster-passed = What was passed over
roster-which = Class of period { $period }
roster-as-it-is = { $count ->
    [one] leave the list with 1 student as it is
   *[other] leave the list with { $count } students as it is
  }
roster-no-class = none
roster-students = { $count ->
    [one] 1 student
   *[other] { $count } students
  }
roster-take = Take these classes
roster-taken = The classes are taken. Now put the students into groups, and save each period.
roster-taken-of = { $count ->
    [one] 1 class is taken.
   *[other] { $count } classes are taken.
  }
roster-nothing = No class was chosen for any period.
roster-twice = “{ $class }” was chosen for two periods; a class is one period.
roster-not-chosen = What was chosen is not in this roster; look at it again.
roster-nothing-kept = Nothing was kept or changed.
roster-none = No class is chosen for this period.
roster-proposal = This is a first proposal, in the order of the list. It counts once you save it.
roster-faults = Nothing is saved yet:
roster-newer = Nothing was saved: this list is another by now. It stands below as it is.
roster-saved = Period { $period } is saved.
roster-save = Save period { $period }
roster-student = Student
roster-group = Group
roster-absent = Absent
roster-gets = Gets
roster-own = Own mark
roster-words = Words with it
roster-group-of = Group of { $student }
roster-absent-of = { $student } was absent
roster-own-of = Own mark of { $student }
roster-words-of = Words to { $student }
roster-own-says = A student gets what the group gets. Whoever was absent is excused, unless you write an own mark, on the class’s data. An own mark is 0 to { $most } points, “missing” or “excused”. A group that handed in nothing and is not marked counts as missing; one that handed in a claim waits for your marks.
roster-missing = missing
roster-excused = excused
roster-not-marked = not marked yet
roster-too-many = own mark above the most
roster-not-saved = groups not saved
roster-on-class-data = Marked on the class’s data.
roster-work-asks = How it was planned, measured, claimed and reasoned.
roster-away = Delete these lists
roster-away-says = Names, ids, groups, absences and own marks of students, of this investigation. Marks of groups stay. They are overwritten on disk, here and in every backup that can be reached.
roster-away-go = Delete the lists of students
roster-away-done = The lists of students are deleted.
roster-grades = Grades for the gradebook
roster-grades-none = No roster with groups yet.
roster-grades-open = Take a roster, put students into groups
roster-grades-edit = Students and groups
roster-tally = Of { $students } students { $points } get points, { $missing } are missing, { $excused } are excused; { $open } are not marked yet, and stand in no file with a grade.
roster-left-out = { $count ->
    [0] OneRoster 1.1 has all of them that are graded.
    [one] OneRoster 1.1 has no way to say missing or excused: 1 grade is in 1.2 only.
   *[other] OneRoster 1.1 has no way to say missing or excused: { $count } grades are in 1.2 only.
  }
roster-file-table = Table with names
roster-file-for = OneRoster { $version }
roster-file-not = OneRoster { $version } cannot be written: { $why }.
roster-in-group = In this group: { $students }
roster-in-group-absent = { $student } (absent)
