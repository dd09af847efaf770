# The queue of what groups propose.

approve-title = Approve: { $title }
approve-lead = Only where groups plan for themselves: what they propose, the ones with a fault first. Approve, change one thing, or send it back with one question. Approved ones are in the plan at once; then prepare.
approve-keys = Keys: { $next } next, { $before } the one before, { $approve } approve, { $change } change one thing, { $back } send back with one question.
approve-use-keys = Use these keys
approve-waiting = Waiting
approve-none-yet = Nothing yet. Groups write their plan on their own page, with the codes of their period; it comes here as soon as they hand it in.
approve-all-answered = Nothing waits. Every proposal has its answer.
approve-who = period { $period }, group { $group }
approve-group = Period { $period }, group { $group }
approve-partner = period { $period } group { $group }
approve-faults = { $count ->
    [0] No fault
    [one] 1 fault
   *[other] { $count } faults
  }
approve-no-asks = No question written.
approve-changes = Changes
approve-makes = Makes
approve-bags-of-each = { $count ->
    [one] 1 bag of each
   *[other] { $count } bags of each
  }
approve-beside = Beside
approve-beside-nothing = nothing
approve-all-have = All have
approve-expects = Expects
approve-because = , because { $why }
approve-same-question = Same question
approve-allergens = Allergens
approve-adds = Adds
approve-adds-cost = { $dollars } to the shopping
approve-forecast = Forecast
approve-cautions = { $count ->
    [one] Brings 1 caution
   *[other] Brings { $count } cautions
  }
approve-go = Approve
approve-change = Change one thing
approve-back = Send back
approve-kinds = Kinds of bag, parted by ;
approve-each = Bags of each
approve-with-change = Approve with this change
approve-one-question = One question, not a correction
approve-back-go = Send it back

# What was done.
approve-no-question = Write one question for { $who }, then send it back.
approve-sent-back = Sent back to { $who } with your question.
approve-nothing-of = Nothing is there of { $who }.
approve-worded = Question in the plan
approve-worded-says = Their own words stay apart and can be deleted. A plan is kept in all its versions: write no names here.
approve-keep = { $count ->
    [one] This group has { $count } sealed bag. It leaves the new bag list, but keeps the plan that it was sealed under; its readings stay.
   *[other] This group has { $count } sealed bags. They leave the new bag list, but keep the plan that they were sealed under; their readings stay.
}
approve-done = Approved: { $who }. It is in the plan.
approve-not-done = Not approved: { $who } still has a fault. Change one thing or send it back.

# Questions that a teacher might ask.
ask-unsaid = What exactly goes into each bag?
ask-cupboard = What from our cupboard could you take?
ask-two-things = If one bag wins, how will you know which of the two things did it?
ask-change = What is different between your bags?
ask-alike = Which two of your bags are made alike?
ask-compare = What will you compare your bags with?
ask-luck = With one bag of a kind, how will you know that it was not luck?
ask-gas = What in your bags makes the gas?
ask-hot = What could water that hot do to you, and to yeast?
ask-make = How will you measure that out?

# The board beside the queue.
approve-cover = What they cover
approve-cover-none = Nothing waits.
approve-covered = { $groups ->
    [one] 1 group
   *[other] { $groups } groups
  }, { $bags ->
    [one] 1 bag of each
   *[other] { $bags } bags of each
  }
approve-alike = { $count } groups picked the same.
approve-alike-ask = Ask some of them what else could matter.
approve-missing = Not handed in
approve-missing-count = { $count ->
    [one] 1 group:
   *[other] { $count } groups:
  }
approve-missing-of = Period { $period }: { $groups }
approve-missing-paper = Planned on paper? A group’s number opens its sheet to be typed in.
approve-type-in = Type in the sheet of { $who }
approve-sheet-title = A planning sheet, typed in
approve-sheet-lead = Type in what the group wrote on paper, as it wrote it. When you hand it in, it waits in the queue with the others.
approve-sheet-back = Back to the queue
approve-download = Download all as a table
approve-answered = { $count } answered
approve-was-approved = approved.
approve-was-returned = sent back: { $question }
