### The student's side of an assignment: beginning it from a link, and handing in.

hand-link_bad = This link cannot be used. { $told }
hand-link_damaged = A part of it is missing or was changed. Copy the whole link again.
hand-code_each = Student ID from your instructor
hand-code_same = Your student ID, if you have one
hand-need_code = Type your student ID first. Your scenario is made from it.
hand-begin = Start attempt { $n }
hand-begin_of = Start attempt { $n } of { $of }
hand-go_on = Continue attempt { $n }
hand-no_tries = You have used all attempts. You can still look at the last one and submit it.
hand-watch = Watch an example first
hand-turn_away = Not now
hand-guest = Keep nothing on this device (for a shared computer)
hand-guest_about = Your work is then lost when you close or reload this browser tab. Save the result file before that.

hand-title = Submit
hand-about = The file and the result code have the scenario, everything you did, and your readings, nothing else. This page sends nothing. You send one of them yourself.
hand-own_code = Your student ID
hand-file = Save the result file
hand-copy = Copy the result code
hand-show_code = Show the result code
hand-code = The attempt as a result code
hand-saved = Saved. Send the file as your instructor asks.
hand-copied = Copied.
hand-by_hand = Selected. Copy it with your keyboard.

hand-course_part = This is a part of “{ $title }”.
hand-course_back = Back to the course
hand-course_who = The list then shows what you did on this device.
hand-course_about = One file has the results of every part that you checked on this device. This page sends nothing. You send the file yourself.
hand-course_save = Save one result file for all parts
hand-course_codes = Copy all result codes
hand-course_code_list = The result codes, one line each
hand-course_saved = { $n ->
    [one] Saved, with { $n } result. Send the file as your instructor asks.
   *[other] Saved, with { $n } results. Send the file as your instructor asks.
}
hand-course_open = Open
hand-course_open_part = Open “{ $title }”
hand-course_looking = Loading what you did.
hand-course_state_nothing = Not started.
hand-course_state_begun = Started, not checked.
hand-course_state_checked = Checked, not correct yet: { $n } of { $of } points.
hand-course_state_done = Done: { $n } of { $of } points.
hand-course_phase_later = opens later
hand-course_phase_open = open
hand-course_phase_closed = after its due date
hand-course_opens = Opens { $when }.
hand-course_opened = Open since { $when }.
hand-course_due = Due { $when }.
hand-course_was_due = Was due { $when }.
hand-course_total = { $n } of { $of } parts done, { $points } of { $most } points.
