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

hand-course_part = This is a part of “{ $title }”.
hand-course_back = Back to the course
hand-course_who = The list then shows what you did on this device.
hand-course_about = One file holds the results of every part that you checked on this device. Nothing is sent from here: you pass it on yourself.
hand-course_save = Save one result file for all parts
hand-course_codes = Copy all codes
hand-course_code_list = The codes, one line each
hand-course_saved = { $n ->
    [one] Saved, with { $n } result. Pass the file on as your instructor asks.
   *[other] Saved, with { $n } results. Pass the file on as your instructor asks.
}
hand-course_open = Open
hand-course_open_part = Open “{ $title }”
hand-course_looking = Looking up what you did.
hand-course_state_nothing = Not begun.
hand-course_state_begun = Begun, not checked.
hand-course_state_checked = Checked, not correct yet: { $n } of { $of } points.
hand-course_state_done = Done: { $n } of { $of } points.
hand-course_phase_later = opens later
hand-course_phase_open = open
hand-course_phase_closed = past its date
hand-course_opens = Opens { $when }.
hand-course_opened = Open since { $when }.
hand-course_due = Due { $when }.
hand-course_was_due = Was due { $when }.
hand-course_total = { $n } of { $of } parts done, { $points } of { $most } points.
