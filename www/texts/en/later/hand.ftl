### The student's side of an assignment: beginning it from a link, and handing in.

hand-link_bad = This link cannot be used. { $told }
hand-link_damaged = A part of it is missing or was changed. Copy the whole link and try again.
hand-code_each = Your own code (the one your instructor gave you; it makes your bench)
hand-code_same = Your own code, if you have one
hand-need_code = Type your code first: your bench is made from it.
hand-begin = Begin try { $n }
hand-begin_of = Begin try { $n } of { $of }
hand-go_on = Go on with try { $n }
hand-no_tries = All tries are used. The last one can still be looked at and handed in.
hand-watch = Watch an example first
hand-turn_away = Not now
hand-guest = Keep nothing on this device (for a shared computer)
hand-guest_about = Then your work is gone when this tab is closed or reloaded. Save the result file before that.

hand-title = Hand in
hand-about = The file and the code hold the bench, everything you did, and your readings, nothing else. Nothing is sent from here: you pass one of them on yourself.
hand-own_code = Your own code
hand-file = Save the result file
hand-copy = Copy the code
hand-show_code = Show the code
hand-code = The attempt as a code
hand-saved = Saved. Pass the file on as your instructor asks.
hand-copied = Copied.
hand-by_hand = Selected; copy it with your keys.
