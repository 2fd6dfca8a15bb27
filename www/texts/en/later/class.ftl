### For instructors: setting a bench for a class, and what the class handed in.

assign-title = Assign a scenario to a class
assign-lede = Use a scenario as it is or change it. See what a student will meet. Then give out the link or the file: all of it is in there. This page sends nothing.
assign-load = Open a scenario file
assign-scripts = { $n ->
    [one] { $file } has a scripted attempt. It is not kept here, because you may change the scenario. Your file still has it.
   *[other] { $file } has { $n } scripted attempts. They are not kept here, because you may change the scenario. Your file still has them.
}
assign-problem = You cannot use this scenario yet. { $told }
assign-blank_title = Our own scenario
assign-blank_aim = Record a clean pulse, set a counting window, and read a heart rate from it.
assign-blank_brief = Look at the trace first. If something is wrong with it, put that right. Then record, and put A and B at least fifteen seconds apart. Count the beats and calculate the heart rate.
assign-base = Start with
assign-blank = a plain scenario
assign-part_what = What the students are told
assign-title_is = Heading
assign-aim = Aim, in a sentence
assign-brief = Task text
assign-task = What is asked
assign-task_own_window = count in a counting window of their own
assign-task_given_window = count in a counting window of a given length
assign-task_intervals = time a number of beat intervals
assign-task_irregular = count an irregular pulse
assign-task_after_exercise = count soon after exercise
assign-task_clean_part = find a clean part
assign-task_read_range = read range and height
assign-task_name_fault = only name what is wrong
assign-task_compare = compare two counting windows
assign-part_faults = What is wrong
assign-faults_about = Up to four faults, or more to draw one from. How strong each fault is for a student is drawn between the mildest and the worst that you allow.
assign-add_fault = Add a fault
assign-pool = Draw one of them for each student
assign-pool_nothing = For some students nothing is wrong, and to name nothing is right
assign-choose_fault = choose one
assign-take_fault = Remove “{ $fault }”
assign-mildest = “{ $fault }”: mildest
assign-worst = “{ $fault }”: worst
assign-severity_one = { $v } % of its worst, for everyone
assign-severity_two = drawn from { $low } to { $high } % of its worst
assign-name_faults = Students name what is wrong before the check
assign-part_subject = Whose finger it is
assign-drawn = What you leave free is drawn again for each student.
assign-free = free
assign-between = From { $min } to { $max }.
assign-wrong = { $field }: “{ $found }” is not possible. It must be from { $min } to { $max }.
assign-age = Age, years
assign-pulse = Heart rate at rest, beats/min
assign-temperature = Finger, °C
assign-premature = Early beats, per min
assign-restless = How much the hand moves
assign-part_help = Region and help
assign-region = Power line
assign-region_of = { $hz } Hz, { $volts } V
assign-help = Help
assign-part_pass = What students must reach
assign-window = Shortest counting window, s
assign-record = Shortest recording, s
assign-edge = A beat this near to a cursor may be counted or not
assign-hum = Largest hum, % of the pulse
assign-low = Smallest pulse, % of the screen
assign-high = Largest pulse, % of the screen
assign-percent = { $v } %
assign-all_fields = All fields of a scenario file
assign-part_own = Misreadings and hints of your own
assign-wrong_in = Look at “{ $label }”: { $told }
assign-wrong_formula = The formula does not work: { $found }. It may have n, t, multiplier, rate, n_true, t_true, rate_true, numbers, + - * / and brackets.
assign-wrong_formula_right = Right answers give this number too, so it cannot show a mistake. Change the formula, or the number under “Plus or minus”.
assign-wrong_part = Part { $n }: { $told }
assign-wrong_name = “{ $found }” cannot be the name. Use small letters, digits and _, and each name once.
assign-wrong_due = It is due before it opens.
assign-wrong_here = { $found } is not possible here. Expected: { $expected }.
assign-course_problem = You cannot use this course yet. { $told }
assign-word_kept = kept as it was; type to replace it
assign-own_about = When an answer is not right and equals your formula, the student reads your words. In the formula, n, t, multiplier and rate are as typed. n_true, t_true and rate_true are the true values in the student’s own counting window. You can also use numbers, + - * / and brackets. The page shows your words as they are, also before the last check.
assign-own_add_misreading = Add a misreading
assign-own_name = Short name, for the class results
assign-own_field = The answer that it shows in
assign-own_formula = The wrong number, as a formula
assign-own_tolerance = Plus or minus
assign-own_words = What the student reads
assign-own_words_first = Look at how you came to this number.
assign-own_hints_about = Your words can replace a built-in hint. Choose the step and the hint. A student reads them after a check in which that step was not right, and only on request.
assign-own_add_hint = Add a hint
assign-own_step = The step
assign-own_rung = The hint
assign-own_rung_look = 1, where to start
assign-own_rung_locate = 2, where to look
assign-own_rung_rule = 3, the rule
assign-own_rung_worked = 4, a worked step
assign-own_recording = Remove “{ $name }”
assign-part_class = For the class
assign-attempts = Attempts
assign-seeds = Each student’s heart
assign-seeds_each = their own, from their student ID
assign-seeds_same = the same for everyone
assign-key = Key of the assignment
assign-key_about = With the key and a student ID you can make any student’s scenario again.
assign-word = Password for the true values (may stay empty)
assign-word_about = With this password you can make an answer key with the true heart rates. The link and the file have only its hash, so keep the password yourself. Choose it before you give out the scenario: another password makes other hearts.
assign-opening = Text before the first attempt
assign-closing = Text after the last check
assign-preview = What one student meets
assign-another = Another student
assign-stand_still = Pause
assign-run_on = Continue
assign-seen = Seed { $v }. The sensor’s signal before anyone changes anything.
assign-unseen = Seed { $v }. The computer sees no recorder here. The trace stays empty until the student fixes that.
assign-agree = Does not fit together
assign-agree_about = The task asks students for one thing, and the check asks for another.
assign-agree-recording_too_short = The shortest recording ({ $record } s) is shorter than the counting window of { $window } s.
assign-agree-no_window = The longest counting window is { $longest } s and the shortest is { $window } s. No counting window fits both.
assign-agree-brief_recording = The task text names { $stated } s at most. A recording must have { $asked } s: say so in the text.
assign-agree-brief_window = The task text names { $stated } s at most. The counting window must have { $asked } s: say so in the text.
assign-agree-unlisted = This scenario has “{ $name }”, and it is not in the list of faults. A student who finds it gets no point for it.
assign-agree-unknown = Something does not fit ({ $code }).
assign-agree_add = Add it as a fault
assign-agree_add_of = Add “{ $name }” as a fault
assign-fair = Is it fair?
assign-fair_about = Simulated students with a correct method put a counting window of this length anywhere on a clean recording. How many of them would fail if you count …
assign-fair_own = in their own counting window, a beat near a cursor counted or not (this page grades so)
assign-fair_exact = in their own counting window, exactly to the beat
assign-fair_mean = compared with the mean of a whole minute, ± { $v } beats/min
assign-fair_done = { $n } simulated students.
assign-fair_without = { $n } of { $of } simulated students found no beats to count. The numbers are of the others.
assign-out = Give it out
assign-out_about = The link has the whole scenario in it. Put it on your course site, show the picture, or give out the file.
assign-link = The link
assign-at = Address of the page for your students
assign-at_here = This address works on this computer only. Students on other computers cannot open it. Put the page on a web server, and type its address here.
assign-at_wrong = This is not a web address. It must begin with https:// or http://.
assign-length = { $n } characters.
assign-copy = Copy the link
assign-as_student = Open it as a student
assign-save = Save the scenario file
assign-paper = On paper
assign-qr = The link as a picture for a phone’s camera
assign-pack = For a course site
assign-pack_about = A package has this scenario and the whole page in it. Upload it to your course site as an activity. The course site then keeps attempts, texts, points, each step and each misreading. The package is made here, on your device.
assign-pack_standard = Standard
assign-pack_scorm12 = SCORM 1.2 (every course site reads it)
assign-pack_scorm2004 = SCORM 2004 (has room for longer attempts)
assign-pack_cmi5 = cmi5 (has room for every attempt)
assign-pack_save = Save the package
assign-pack_working = The package is being made.
assign-pack_done = Saved.
assign-pack_large = The package is too large for its format.
assign-qr_save = Save the picture
assign-qr_long = The link is too long for a picture. Shorten the texts, or give out the link or the file.

class-title = Class results
class-lede = Open what the class submitted. It is graded on this computer: the files stay here. Save the class as a file to keep it. If you close this browser tab, the class is lost.
class-set = Assign a scenario to a class
class-back = Back to the class
class-looking = You only look at this attempt. Nothing that you do here changes it.
class-looking_at = This is an attempt of { $name }. You only look at it. Nothing that you do here changes it.
class-intake = Open results
class-drop = Drop result files here, as many as you like.
class-choose = Choose files
class-codes = Or paste result codes. Other text around them does no harm. A link in the text counts as the assignment
class-take_codes = Use the result codes
class-pasted = pasted
class-file = File { $n }
class-files_hidden = File names can contain student IDs, so they are hidden. Tick “Show the student IDs” to see them.
class-result_of = { $from }, result { $n }
class-part_points = { $n } points
class-part_before_open = started before it opened
class-part_after_due = after its due date
class-code_of = { $from }, result code { $n }
class-no_code = There is no result code in it.
class-too_large = It is far larger than a result.
class-busy = { $n } of { $of } replayed …
class-came = { $n } results; { $wrong } could not be used.
class-names = Show the student IDs
class-need = Ready after
class-need_of = { $n ->
    [one] one pass
   *[other] { $n } passes in different scenarios
}
class-need_rubric = ready by the rubric in one scenario
class-need_rubric_twice = ready by the rubric in two scenarios
class-csv = Save as a table (CSV)
class-empty = Delete all
class-of = { $n } of { $of }
class-students = Students
class-student = Student { $n }
class-col_student = Student
class-col_ready = State
class-col_passed = Passed
class-col_score = Points of 20
class-col_minutes = Minutes
class-col_look = Attempt
class-look = Look
class-look_n = { $n }
class-look_at = Look at attempt { $n } of { $name }
class-given_open = Open the assignment
class-given_none = No assignment is open yet, so no result can be compared with it. Open the assignment’s file, or paste its link.
class-given_out = Remove
class-given_tries = { $n ->
    [one] One attempt.
   *[other] { $n } attempts.
}
class-given_out_of = Remove { $title } ({ $from })
class-given_faults = Faults: { $list }.
class-given_faultless = No faults.
class-given_severity = { $fault } ({ $severity })
class-given_part = This is a part of the course. If you remove it, you remove the whole course.
class-given_rival = Another scenario with this name is assigned too. The results of both count.
class-rival_title = “{ $title }” is assigned already
class-rival_text = { $from } has the same name but is another scenario. If both are assigned, the results of both count, also those of the easier one. Assigned already:
class-rival_replace = Replace it
class-rival_add = Assign both
class-rival_leave = Leave it as it was
class-as_set_title = Is this what the class got?
class-as_set_text = { $file } is a scenario or a course, not a result. All results would be compared with it.
class-as_set_yes = Yes, it was assigned
class-as_set_no = No, leave it out
class-not_a_result = It is a scenario or a course, not a result. It was left out.
class-set_is_result = It is a result, not an assignment. Open it under “Submitted results”.
class-link_in = the link in { $from }
class-link_beside = a link beside the result codes
class-about_all = Only “{ $what }”: show all again
class-nobody = somebody without a student ID
class-answers_which = { $title } ({ $from })
class-not_compared = { $n ->
    [one] One result was not compared with an assignment. It may be from another scenario.
   *[other] { $n } results were not compared with an assignment. They may be from other scenarios.
}
class-several = { $n } different scenarios have the name “{ $name }”. Open the one that was assigned.
class-again = { $n ->
    [one] One result was submitted more than once. It counts once.
   *[other] { $n } results were submitted more than once. They count once.
}
class-turned = { $n ->
    [one] One result is judged differently by the criteria that you give now.
   *[other] { $n } results are judged differently by the criteria that you give now.
}
class-against-other_bench = This is not the scenario that was assigned.
class-against-other_seed = The scenario is not the one of this student ID.
class-against-too_many_tries = It is one attempt more than there are.
class-against-told_truth = It had misreadings that you did not assign and that tell the right answer.
class-alike = Cursors and marks are in the same places as those of { $who }.
class-remark-all_at_once = Counting window, answers and check came at one moment.
class-remark-clock = The student’s clock shows less time than the attempt lasted.
class-remark-no_pause = Many actions came without any time between them.
class-remark-other_course = It came in the result of another course than the one assigned.
class-remark-several_students = It came in one course result with results of other students.
class-remark-begun_twice = The same attempt was started twice. Each start counts as an attempt.
class-remark-no_time = It does not say when it started or ended.
class-remark-other_words = It was done with other misreadings, hints or criteria than those assigned.
class-remark-two_times = The same actions came in with two times. The one that ended first counts.
class-copied = The same actions, with the same pauses, came from { $who }.
class-doubt-changed = The file was changed after it was written.
class-doubt-other_scenario = The text of the scenario was changed.
class-doubt-other_program = Another version of Dicrotic made it. That version may judge differently.
class-doubt-differs = The page did the student’s actions again, and got another result than the file says. It does not count. Look at the attempt.
class-faults = Faults not fixed
class-faults_about = Results in which it was still there at the end.
class-misreadings = Misreadings
class-misreading-bumps_counted = second bumps counted too
class-misreading-beats_missed = beats left out
class-misreading-one_too_many = one beat too many
class-misreading-one_too_few = one beat too few
class-misreading-spikes_counted = spikes counted
class-misreading-breaths_counted = breaths counted
class-misreading-hum_counted = hum counted
class-misreading-other_multiplier = the multiplier of another T
class-misreading-not_scaled = the count written as the heart rate
class-misreading-per_second = beats per second
class-misreading-seconds_per_beat = seconds per beat
class-misreading-milliseconds = milliseconds for seconds
class-misreading-other_window = T between other cursors
class-misreading-turned_over = the fraction upside down
class-misreading-rounded_early = rounded too early
class-misreading-window_too_short = counting window too short
class-misreading-too_many_digits = more digits than the count gives
class-misreading-single_interval = only one beat interval
class-misreading-mixed_features = from one feature to another
class-misreading-time_at_b = the time at B for the time from A to B
class-misreading-whole_recording = the whole recording, not the counting window
class-misreading-screen_length = the screen’s length for T
class-misreading-minutes = minutes for seconds
class-misreading-grid_squares = grid squares for seconds
class-misreading-both_sides = the range from edge to edge
class-misreading-posts_counted = beats for beat intervals
class-misreading-gap_missed = one beat interval left out
class-own_misreading = your own: { $name }
class-misreading-show_work = not explained by one thing
class-show = Show a fault to the room
class-show_about = The bench and the trace fill the whole screen, with the power line of your region. The same equipment also runs without the fault. Press C to switch, P to pause, N to zoom in, W to show the fault’s name. The arrow keys bring similar faults.
class-show_fault = Fault
class-show_severity = Strength
class-show_go = Show it
class-show_closer = Zoom in
class-show_name = Show its name
class-show_close = Close
class-show_card = Open its card
class-show_faulty = With the fault
class-show_cured = Fixed
class-show_cure = Fix it
class-show_uncure = With the fault
class-show_freeze = Pause
class-show_go_on = Continue
class-show_before = Previous similar fault
class-show_after = Next similar fault
class-show_place = { $n } of { $of } similar faults
class-show_power_line = power line { $volts } V, { $hz } Hz
class-open = Open a saved class
class-save = Save the class
class-print = Print the report
class-step_set = 1. The assignment
class-step_roster = 2. Who is in the class
class-step_results = 3. Submitted results
class-roster_open = Open the list
class-roster_or = Or paste the list
class-roster_paste = One student per line: student ID, name, e-mail, group. Commas, semicolons or tabs between them
class-roster_take = Use the list
class-roster_forget = Delete the list
class-roster_left_out = { $n ->
    [one] The list is in use, without one line:
   *[other] The list is in use, without { $n } lines:
}
class-roster_none = No list yet. Without a list you cannot see who has submitted nothing.
class-roster_is = { $n ->
    [one] One student is on the list.
   *[other] { $n } students are on the list.
}
class-roster-wrong-too_long = The list is far too long ({ $bytes } bytes; at most { $most }).
class-roster-wrong-too_many = Line { $line }: a class has at most { $most } students.
class-roster-wrong-not_text = Line { $line }: this is not plain text. Save the list as CSV in UTF-8.
class-roster-wrong-empty = There is no student in the list.
class-roster-wrong-open_quote = Line { $line }: a quote opens here and does not close.
class-roster-wrong-no_code_column = Line { $line }: no column has the student IDs. Its titles are { $titles }. Name the column “student ID”.
class-roster-wrong-two_columns = Line { $line }: “{ $first }” and “{ $second }” both look like the { $what ->
    [codes] student IDs
    [names] names
    [addresses] e-mail addresses
   *[other] groups
}. Rename one of them.
class-roster-wrong-no_code = Line { $line }: the student ID is missing.
class-roster-wrong-twice = Line { $line }: the student ID “{ $student }” is already on line { $first }.
class-roster-wrong-twice_hidden = Line { $line }: the student ID is already on line { $first }.
class-roster-wrong-too_many_cells = Line { $line }: { $found } cells for { $columns } columns. Put quotes around a cell that has a separator in it.
class-roster-wrong-long_cell = Line { $line }: a cell has { $length } characters; at most { $most }.
class-roster-wrong-unknown = The list cannot be read ({ $code }).
class-codes_or = Or paste result codes from e-mails
class-wrong_list = What could not be used
class-roster_wrong = What is wrong with the list
class-cancel = Stop grading
class-cancelled = { $n ->
    [one] Stopped. One result was not graded.
   *[other] Stopped. { $n } results were not graded.
}
class-pick = Counts
class-pick_best = the best attempt
class-pick_last = the last attempt
class-due = Submit before
class-tiles = Show one kind of student
class-tiles_of = { $n ->
    [one] Of the one student on the list:
   *[other] Of the { $n } students on the list:
}
class-tiles_all = { $n ->
    [one] One student has submitted results. No list is open.
   *[other] { $n } students have submitted results. No list is open.
}
class-not_listed = not on the list
class-state-absent = nothing submitted
class-state-unusable = unusable
class-state-wrong_bench = wrong scenario
class-state-tried = not ready
class-state-ready = ready
class-state-waived = excused
class-minutes_of = Time of an attempt: median { $v } min; half of the students took { $low } to { $high } min.
class-first_last = Results at the first check and at the last one, of { $of } results with a check.
class-talk_about = Press a line to see whose results those are.
class-both = { $n } at first and at last
class-from_to = { $first } at first, { $last } at last
class-wrong = First step that is not correct
class-trace = Why the trace was not good enough
class-trace-clipped = cut off at the range
class-trace-small = too small
class-trace-tall = too tall
class-trace-hum = hum
class-trace-restless = movement
class-trace-short = too short, or no recording
class-trace-foreign = another student’s recording
class-trace_was = trace: { $list }
class-left_n = { $n ->
    [one] One fault is not fixed
   *[other] { $n } faults are not fixed
}
class-forget_title = Delete this class?
class-forget_unsaved = Something here is not saved in any file. You cannot get it back.
class-forget_saved = The file that you saved keeps it. It is deleted only here.
class-forget_no = Keep it
class-forget_yes = Delete it
class-given_or = Or paste its link
class-given_link = Link of the assignment or the course
class-given_recording = Use the link
class-given_no_link = There is no link with an assignment in it.
class-roster-wrong-no_list = This is not a list of students. It looks like an assignment or a result. Open an assignment under 1, and a result under 3.
class-left = not fixed: { $list }
class-groups = Groups side by side
class-group_group = Group
class-group_n = Students
class-group_points = Points, median
class-group_misreading = Most frequent misreading
class-group_none = no group
class-group_all = all groups
class-points_of = { $n } of { $of }
class-changes = { $n ->
    [one] One student’s result changed
   *[other] { $n } students’ results changed
}
class-change = { $name }: { $before } → { $now }, points { $from } → { $to }
class-changes_more = and { $n } more
class-search = Find a student, or what went wrong
class-sort = Order
class-sort_state = who needs something first
class-sort_name = by name
class-sort_points = by points, low first
class-sort_group = by group
class-sort_list = as on the list
class-group = Group
class-of_group = Group { $name }
class-shown = { $n } of { $of } students
class-col_wrong = What went wrong
class-tick = Mark { $name }
class-unlisted = Not on the list.
class-against-late = It came after the deadline.
class-decide = Exceptions
class-decide_for = Exceptions for { $name }
class-care_waived = Excused
class-care_tries = More attempts than the others
class-care_tries_of = { $n ->
    [one] One more attempt.
   *[other] { $n } more attempts.
}
class-care_link = Copy a link with the extra attempts
class-care_link_copied = Copied. Send this link to the student. It opens the same scenario.
class-care_until = May submit until
class-care_until_of = Until { $when }.
class-care_note = Note to the student
class-care_noted = Note.
class-care_keep = Save
class-care_leave = Cancel
class-gradebook = Gradebook file
class-gradebook_about = One row for each student, as CSV. Give the columns the titles that your course site expects. This browser remembers them.
class-gradebook_save = Save the gradebook
class-gradebook_saved = { $n ->
    [one] Saved, with one row.
   *[other] Saved, with { $n } rows.
}
class-column_add = Add a column
class-column_out = Remove
class-column_out_of = Remove column { $n }
class-column_title = Title of column { $n }
class-column_field = What is in column { $n }
class-field_code = student ID
class-field_name = name
class-field_email = e-mail
class-field_group = group
class-field_state = state
class-field_ready = ready (yes or no)
class-field_points = points
class-field_maximum = most points
class-field_percent = per cent
class-field_tries = results submitted
class-field_minutes = minutes of the attempt
class-field_feedback = feedback
class-field_part = points of part { $n }
class-field_empty = nothing
class-rows = Rows
class-rows_all = all students
class-rows_shown = those shown above
class-rows_ticked = those marked above
class-maximum = Most points
class-divides = Between the cells
class-divides_comma = comma
class-divides_semicolon = semicolon
class-divides_tab = tab
class-bom = Start with a byte order mark (for spreadsheets)
class-blank = Leave the points empty when nothing counts
class-feedback_points = { $n } of { $of } points.
class-feedback_step = First step that is not correct: { $step }
class-answers = Answer key
class-answers_about = For each student and attempt: seed, faults with their strength, and the true heart rate over the first minute. It needs the password of the assignment.
class-answers_of = Assignment
class-answers_save = Save the answer key
class-answers_made = { $n } of { $of } students
class-answers_stop = Stop
class-answers_stopped = Stopped. No file was saved.
class-answers_word = Password of the assignment
class-answers_saved = Saved. Students must not get it.
error-class_too_long = It is far larger than a saved class ({ $bytes } bytes; at most { $most }).
error-class_foreign = This is not a saved class, or a part of it is missing. ({ $found })
error-course_version = This course result has form { $found }. This version of Dicrotic reads form { $ours }.
error-class_version = Another version of Dicrotic saved this class (form { $found }; this version reads { $ours }).
error-gradebook_columns = A gradebook has 1 to { $most } columns; these are { $found }.
error-gradebook_field = A column cannot hold “{ $found }”.
error-gradebook_divides = Use a comma, a semicolon or a tab between the cells.
error-gradebook_maximum = The most points must be above 0 and at most 1000; found { $found }.
error-answers_no_assignment = Open the assignment first. Only an assignment has an answer key.
error-answers_no_word = This assignment has no password, so nobody can open its answers.
error-answers_other_word = This is not the password of the assignment.

assign-course = A course of several assignments
assign-course_about = Add assignments in the order in which students should do them. Students open one link and see what is done and due. They submit one file for all parts. Dates are information: the student’s device and the class results show who was early or late. Nothing is locked.
assign-course_title = Title of the course
assign-course_words = Text above the list
assign-course_add = Add the scenario of this form
assign-course_files = Add assignment files or links
assign-course_anew = Start another course
assign-course_no_bench = The scenario of this form cannot be used yet; see above.
assign-course_no_title = The course needs a title. Then there is a link.
assign-course_no_part = Add an assignment. Then there is a link.
assign-course_alike = Two parts have the heading “{ $title }”. Students cannot tell them apart: give one of them another title.
assign-course_bad_file = { $file } was not added. { $told }
assign-course_up = Up
assign-course_up_of = Move “{ $title }” up
assign-course_opens = Opens
assign-course_due = Due
assign-course_part_words = Text for this part
assign-course_link = The link of the course
assign-course_copy = Copy the course link
assign-course_save = Save the course file
