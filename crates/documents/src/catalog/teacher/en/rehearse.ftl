# The rehearsal page.

rehearse-title = Rehearse: { $title }
rehearse-lead = Practice a period before the day: simulated groups come in and type, slips and all, and you run the period as you would. Then run the real one.
rehearse-not-yet = The plan has faults; mend them before you rehearse.
rehearse-of-a-rehearsal = This is a rehearsal already. Start another one from your own pages.
rehearse-how = How
rehearse-period = Period
rehearse-period-name = Period { $period }
rehearse-speed = Clock
rehearse-speed-as = { $speed } times as fast; { $minutes ->
    [one] about 1 minute
   *[other] about { $minutes } minutes
  } for you
rehearse-speed-true = as fast as on the day
rehearse-class = Class
rehearse-class-says = Another number gives another class with other slips.
rehearse-go = Set it up
rehearse-apart = It lies in a folder of its own. Nothing in it ever counts or mixes with what your classes type.
rehearse-runs = It runs
rehearse-open = Open its run page
rehearse-there = On the computer that runs Barm: { $address }
rehearse-passphrase = Its own passphrase, this time: { $passphrase }
rehearse-bell = Sign in there with it, then start the clock: the groups wait for that.
rehearse-so-far = { $done } of { $of } entries typed.
rehearse-stop = Stop it
rehearse-over = How it went
rehearse-entries = { $sent } of { $of } entries sent: { $saved } saved, { $refused } refused.
rehearse-stopped = It was stopped.
rehearse-nothing = Nothing went wrong at the benches. Another number gives another class.
rehearse-bag = Bag
rehearse-minute = Minute
rehearse-what = What went wrong
rehearse-seen = On your run page
rehearse-shown = shown
rehearse-not-shown = not shown
rehearse-tally = { $shown } of { $all } were shown or dealt with. A small slip looks like what bags do anyhow; no page can tell it.
