# The page of claims: what each group claims beside what the data say of it.

claims-title = Claims: { $title }
claims-lead = What each group claims, in its own words, beside what its bags and the class’s say of it.
claims-results = To the results
claims-marks = To the marks
claims-not-yet = No claim yet
claims-none = Groups write their claim on their own page, behind “Write what you found”, with the codes of their period; on another day, let these codes work on the run page of the period. It comes here as soon as they hand it in.
claims-no-mark = Nothing here is a mark. A claim against the class’s verdict may be the better reasoned one.
claims-period = Period { $period }
claims-missing = { $count ->
    [one] Group { $groups } has handed in nothing.
   *[other] Groups { $groups } have handed in nothing.
  }
claims-open = Let groups read claims
claims-close = Take them back
claims-are-open = Each group reads two claims of others, without names.
claims-opened = { $count } groups of period { $period } read each other’s claims now, two each, without names. Their page shows them.
claims-closed = The groups of period { $period } no longer see each other’s claims. What they wrote stays.
claims-too-few = { $count ->
    [0] No group of period { $period } has handed in a claim yet, so there is nothing to read.
   *[other] Only one group of period { $period } has handed in a claim; it takes two.
  }
claims-pair = { $treatment } beside { $beside }
claims-more = rose more
claims-less = rose less
claims-no-difference = no difference that can be read
claims-question = Question
claims-evidence = Evidence
claims-reasoning = Reasoning
claims-facts = What the data say
claims-nothing-written = nothing written
claims-heard = { $count ->
    [one] 1 group wrote about it
   *[other] { $count } groups wrote about it
  }
claims-reader = Group { $group }:
claims-would-ask = It would ask: { $question }
claims-interval = { $value } ({ $low } to { $high })
claims-class-yes = The class’s bags agree: { $verdict }, { $size }.
claims-class-no = The class’s bags say otherwise: { $verdict }, { $size }.
claims-class-open = The class’s bags leave it open: { $verdict }, { $size }.
claims-class-bare-yes = The class’s bags agree: { $verdict }.
claims-class-bare-no = The class’s bags say otherwise: { $verdict }.
claims-class-bare-open = The class’s bags leave it open: { $verdict }.
claims-own-yes = Its own bags agree: { $size } ({ $bags } of its bags beside { $beside }).
claims-own-no = Its own bags do not show that: { $size } ({ $bags } of its bags beside { $beside }).
claims-own-one-sided = Of its bags { $bags } made the one and { $beside } the other, so it can only speak of the class’s bags.
claims-size-within = { $claimed } lies within what the class’s bags leave open, { $size }.
claims-size-beyond = { $claimed } lies outside of what the class’s bags leave open, { $size }.
claims-number-rise = “{ $number }” is the rise of its bag { $bag } at minute { $minute }.
claims-number-height = “{ $number }” is the height of its bag { $bag } at minute { $minute }, its zero included.
claims-number-mean = “{ $number }” is the class’s mean rise of { $treatment }.
claims-number-difference = “{ $number }” is the class’s difference.
claims-number-nowhere = “{ $number }” was not found among its heights and the class’s means.
claims-set-aside = Its bag { $bag } is set aside ({ $rule }); does the evidence say so?
