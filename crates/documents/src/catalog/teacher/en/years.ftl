# Classes and years beside each other.

years-title = Classes and years together
years-lead = The same question, class by class: bags that were made alike are compared at one minute, and how much classes truly differ is told. Next: decide which question next year’s class should settle.
years-none = Fewer than two investigations on the shelf have readings, so there is nothing to put together yet.
years-apart = No two of these compared bags that were made alike.
years-classes = What is compared
years-bags = { $bags } bags, { $heights } heights
years-minute = mm at minute { $minute }
years-beside = { $treatment }, beside { $reference }
years-once = Asked by one class only
years-not-read = { $name } cannot be put beside others: { $why }
years-all-of = Two investigations of one class count as two. Rehearsals are left out, and invented ones where others are real.
