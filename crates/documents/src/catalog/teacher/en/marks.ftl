# Marks: the list, a group's page, the rubric.

marks-title = Marks: { $title }
marks-lead = What is marked is how a group planned, measured, claimed and reasoned, not whether its bag did what was foretold. You mark; nothing is marked for you.
marks-rubric = The rubric
marks-hand-out = Hand out
marks-handed-out = { $count ->
    [0] Nothing was handed out to period { $period }.
    [one] 1 group of period { $period } sees its marks now. That copy stays as it is.
   *[other] { $count } groups of period { $period } see their marks now. Those copies stay as they are.
  }
marks-left = { $count ->
    [one] Group { $groups } is not marked in full, and got nothing.
   *[other] Groups { $groups } are not marked in full, and got nothing.
  }
marks-group = Group
marks-claim = Claim
marks-standing = Marks
marks-claimed = handed in
marks-no-claim = none
marks-sum = { $sum } of { $of }
marks-open = { $count ->
    [one] 1 strand open
   *[other] { $count } strands open
  }
marks-one-lead = What the group handed in, beside the rubric. Next: give each strand its level, then go on to the next group.
marks-place = { $place } of { $of }
marks-nothing-claimed = This group handed in no claim on its page.
marks-keys = Keys: { $levels } the level, { $down } and { $up } from strand to strand, { $remark } a remark (Esc leaves it), { $next } next group, { $before } the one before.
marks-class-data = Marked on the class’s data: absent, or the group’s own bags failed
marks-next = Save, next group
marks-save = Save
marks-before = Save, the one before
marks-list = All groups
marks-nothing = nothing handed in
marks-remark = Remark
marks-again = Remarks that you wrote before
marks-bags = Its bags
marks-no-bags = No bag of this group is in the plan.
marks-not-read = not read
marks-rise = { $rise } mm at minute { $minute }
marks-set-aside = (set aside: { $rule })
marks-levels = What the levels are called
marks-rubric-lead = One rubric for everything on your shelf. Put it into your own words; a strand with an empty name is taken out.
marks-rubric-faults = Nothing is saved yet:
marks-rubric-new = One more strand
marks-rubric-name = Its name
marks-rubric-level = Level { $level } looks like
marks-rubric-save = Save the rubric
marks-rubric-again = Take the first one again
