# The page of another round: what to make next, and both rounds together.

again-title = Another round: { $title }
again-lead = What this class could make next, the most telling first; one button makes the plan. Once it was made, both rounds are judged together here.
again-wait = No bag has been read yet, or a period runs now. Come back when the day is done.
again-by = Ranked by
again-clear-bag = clear verdicts for each bag
again-clear-dollar = clear verdicts for each dollar
again-narrower-bag = how much narrower, for each bag
again-propose = Propose another round
again-takes = It takes up to a minute. The page shows how far it has come.
again-working = { $of ->
    [0] The day’s readings are being looked at.
   *[other] { $done } of { $of } second rounds are weighed.
  }
again-lost = It could not be worked out: { $why }
again-none = Nothing that was tried can be made with these groups.
again-head = What to make next
again-of = { $shown } of { $all }, the most telling first
again-bags = { $count ->
    [one] 1 bag in all
   *[other] { $count } bags in all
  }
again-take = Make this plan
again-take-says = It becomes an investigation of its own on your shelf, a week after this one, with bag codes of its own. Change its days and periods there.
again-gone = Something else is on record since. Propose again; nothing was made.
again-both = Both rounds together
again-second = Second round
again-judge = Judge both together
again-no-other = There is no other investigation on the shelf.
again-not = They cannot be judged together: { $why }
again-round-one = Round one
again-rounds = Both rounds
again-round-two = Round two by itself
again-students = For your students
