# The teacher's door: choosing a passphrase, signing in and out.

door-rehearsal = This is a rehearsal. Its passphrase is not yours: it stands on the page on which you set it up.
door-sign-in = Sign in
door-choose = Choose a passphrase
door-for = For the teacher. Groups come in at { $page }. After this comes your shelf.
door-join-page = the join page
door-passphrase = Passphrase
door-again = The same again
door-lost = Lost it? Nobody can send you a new one. Stop the program and run { $command } on this computer.
door-here = For the teacher, on this computer only: a passphrase first, then a plan. Nothing leaves it unless you say so.
door-set-up = Let’s set up Barm.
door-four-words = Four words that you will not write on the board, or at least 15 characters. It keeps forecasts and marks from students.
door-set = Set passphrase
door-lost-first = Write it in your own planner. Nobody can send it to you; if it is lost, { $command } on this computer makes a new one.
door-then = Start with a plan
door-then-says = Write one, open a file, or look at the made-up class first.
door-day = On the day
door-day-says = Students need no account. They type two short codes.
door-back = Back to the shelf
door-sign-out = Sign out
door-out-says = On this device you are signed out at once; groups that have joined stay in. Then comes the page of signing in.
door-another = Another passphrase
door-another-says = Everybody who is signed in as the teacher must then sign in again.
door-change = Change passphrase
door-not-same = The two are not the same. Type the passphrase twice.
door-not-changed = The two are not the same; nothing was changed.
