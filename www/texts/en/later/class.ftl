### For instructors: setting a bench for a class, and what the class handed in.

assign-title = Set a bench for a class
assign-lede = Take a bench as it is or change it, see what a student will meet, and pass it on. Everything is in the link or the file; nothing is sent anywhere.
assign-load = Open a scenario file
assign-scripts = { $n ->
    [one] { $file } holds a scripted attempt. It is not kept here, because the bench may be changed. Your file still has it.
   *[other] { $file } holds { $n } scripted attempts. They are not kept here, because the bench may be changed. Your file still has them.
}
assign-problem = This bench cannot be used yet. { $told }
assign-blank_title = Our own bench
assign-blank_aim = Record a clean pulse, mark a window, and take a rate from it.
assign-blank_brief = The bench is wired and the pad is on. Look at the strip first. Then record, mark at least fifteen seconds, count the beats and work out the rate.
assign-base = Begin with
assign-blank = a plain bench
assign-part_what = What the students are told
assign-title_is = Heading
assign-aim = Aim, in a sentence
assign-brief = Brief
assign-task = What is asked
assign-task_own_window = count in a window of their own
assign-task_given_window = count in a window of a given length
assign-task_intervals = time a number of intervals
assign-task_irregular = count an irregular pulse
assign-task_after_exercise = count soon after exercise
assign-task_clean_stretch = find a clean stretch
assign-task_read_range = read range and height
assign-task_name_fault = only name what is wrong
assign-task_compare = compare two windows
assign-part_faults = What is wrong with it
assign-faults_about = Up to four faults. Each student’s severity is drawn between the mildest and the worst that you allow.
assign-add_fault = Add a fault
assign-choose_fault = choose one
assign-take_fault = Take “{ $fault }” out
assign-mildest = “{ $fault }”: mildest
assign-worst = “{ $fault }”: worst
assign-severity_one = { $v } % of its worst, for everyone
assign-severity_two = drawn from { $low } to { $high } % of its worst
assign-name_faults = Students name what is wrong before the check
assign-part_subject = Whose finger it is
assign-drawn = What is left free is drawn anew for each student.
assign-free = free
assign-between = From { $min } to { $max }.
assign-wrong = { $field }: “{ $found }” cannot be. It must be from { $min } to { $max }.
assign-age = Age, years
assign-pulse = Rate at rest, beats/min
assign-temperature = Finger, °C
assign-premature = Early beats, per min
assign-restless = Restlessness of the hand
assign-part_help = Region and help
assign-region = Mains
assign-region_of = { $hz } Hz, { $volts } V
assign-help = Help
assign-part_pass = What must be reached
assign-window = Shortest window, s
assign-record = Shortest recording, s
assign-edge = A beat counts either way this near to a cursor
assign-hum = Most hum, of the pulse
assign-low = Pulse at least, of the screen
assign-high = Pulse at most, of the screen
assign-percent = { $v } %
assign-part_class = For the class
assign-attempts = Tries
assign-seeds = Each student’s heart
assign-seeds_each = their own, from their code
assign-seeds_same = the same for everyone
assign-key = Key of the assignment
assign-key_about = With the key and a student’s code anyone’s bench can be made again: dicrotic seed KEY CODE.
assign-word = Word for the truth (may stay empty)
assign-word_about = With this word the command line shows you the true beats of a student’s bench. Only its hash goes into the link and the file, so keep the word yourself. Set it before you pass the bench on: another word makes other hearts.
assign-opening = Words before the first try
assign-closing = Words after the last check
assign-preview = What one student meets
assign-another = Another student
assign-stand_still = Stand still
assign-run_on = Run on
assign-seen = Seed { $v }. The pad’s signal as it stands, before anyone touches the bench.
assign-unseen = Seed { $v }. The computer sees no recorder unit here, so the strip stays empty until that is put right.
assign-fair = Is it fair?
assign-fair_about = Students with a right method lay a window of this length anywhere on a clean record. What share of them would be failed by counting …
assign-fair_own = in their own window, edges either way (this is how we grade)
assign-fair_exact = in their own window, to the beat
assign-fair_mean = against the mean of a whole minute, ± { $v } beats/min
assign-fair_done = { $n } simulated students.
assign-fair_without = { $n } of { $of } simulated students found no beats to count; the shares are of the others.
assign-out = Pass it on
assign-out_about = The link holds the whole bench. Put it on your course page, show the picture, or hand out the file.
assign-link = The link
assign-at = Address of the page for your students
assign-at_here = This address works on this computer only. Students on other computers cannot open it. Put the page on a web server, and type its address here.
assign-at_wrong = This is not a web address. It must begin with https:// or http://.
assign-length = { $n } characters.
assign-copy = Copy the link
assign-as_student = Open it as a student
assign-save = Save the scenario file
assign-qr = The link as a picture for a telephone’s camera
assign-pack = For a course site
assign-pack_about = A package holds this bench and the whole page. Upload it to your course site as an activity. Tries, words, points, each step and each misreading then go through the site. The package is made here, on your device.
assign-pack_standard = Standard
assign-pack_scorm12 = SCORM 1.2 (every course site reads it)
assign-pack_scorm2004 = SCORM 2004 (has room for longer attempts)
assign-pack_cmi5 = cmi5 (has room for every attempt)
assign-pack_save = Save the package
assign-pack_working = The package is being made.
assign-pack_done = Saved.
assign-pack_large = The package is too large for its format.
assign-qr_save = Save the picture
assign-qr_long = The link is too long for a picture; shorten the texts, or hand out the link or the file.

class-title = What came in
class-lede = Open what the class handed in. It is graded on this computer, and nothing is sent anywhere. Save the class as a file to keep it: closing this tab forgets it.
class-set = Set a bench for a class
class-back = Back to the class
class-intake = Taking in
class-drop = Drop result files here, as many as you like.
class-choose = Choose files
class-codes = Or paste codes, with whatever stands around them; a link among them counts as what was set
class-take_codes = Take the codes
class-pasted = pasted
class-a_link = the link
class-code_of = { $from }, code { $n }
class-no_code = There is no code in it.
class-too_large = It is far larger than a result.
class-busy = { $n } of { $of } replayed …
class-came = { $n } results, { $wrong } that could not be used.
class-names = Show the students’ codes
class-need = Ready after
class-need_of = { $n ->
    [one] one pass
   *[other] { $n } passes on different benches
}
class-need_rubric = ready by the rubric on one bench
class-need_rubric_twice = ready by the rubric on two benches
class-csv = Save as a table (CSV)
class-empty = Forget all
class-of = { $n } of { $of }
class-students = Students
class-student = Student { $n }
class-col_student = Student
class-col_ready = State
class-col_passed = Passed
class-col_score = Of 20
class-col_minutes = Min
class-col_look = Attempt
class-look = Look
class-look_n = { $n }
class-look_at = Look at attempt { $n } of { $name }
class-given_open = Open what was set
class-given_none = Nothing is given as set yet, so no result can be compared with it. Open the assignment’s file, or paste its link below.
class-given_is = Compared with: { $list }.
class-not_compared = { $n ->
    [one] One result was not compared with what was set. Its bench may be another one.
   *[other] { $n } results were not compared with what was set. Their benches may be others.
}
class-several = { $n } different benches are called “{ $name }”. Give the one that was set.
class-again = { $n ->
    [one] One result was handed in more than once. It counts once.
   *[other] { $n } results were handed in more than once. They count once.
}
class-turned = { $n ->
    [one] One verdict is another by the criteria that are given now.
   *[other] { $n } verdicts are others by the criteria that are given now.
}
class-against-other_bench = It is another bench than the one set.
class-against-other_seed = The bench is not the one of this code.
class-against-too_many_tries = It is one try more than there are.
class-alike = Cursors and marks stand where somebody else’s stand.
class-remark-all_at_once = Window, answers and check came at one moment.
class-remark-clock = From begin to end less time passed than at the bench.
class-remark-no_pause = Many actions came without any time between them.
class-copied = Somebody else handed in the same log.
class-doubt-changed = The file was changed after it was written.
class-doubt-other_scenario = The bench’s text was changed.
class-doubt-other_program = It was made by another version of Dicrotic, which may judge otherwise.
class-doubt-differs = A replay comes out otherwise than it says.
class-faults = Faults not cleared
class-faults_about = Results in which it was still there at the end.
class-misreadings = Misreadings
class-misreading-bumps_counted = the small bumps counted too
class-misreading-beats_missed = beats left out
class-misreading-one_too_many = one beat too many
class-misreading-one_too_few = one beat too few
class-misreading-spikes_counted = spikes counted
class-misreading-breaths_counted = breaths counted
class-misreading-hum_counted = hum counted
class-misreading-other_multiplier = the multiplier of another window
class-misreading-not_scaled = the count given as the rate
class-misreading-per_second = beats per second
class-misreading-seconds_per_beat = seconds per beat
class-misreading-milliseconds = milliseconds for seconds
class-misreading-other_window = another window than marked
class-misreading-turned_over = the fraction turned over
class-misreading-rounded_early = rounded too early
class-misreading-window_too_short = window too short
class-misreading-too_many_digits = more digits than the count carries
class-misreading-single_interval = one interval for the mean
class-misreading-mixed_features = from one feature to another
class-misreading-time_at_b = the time at B for the time from A to B
class-misreading-whole_recording = the whole recording, not the window
class-misreading-screen_length = the screen’s length for T
class-misreading-minutes = minutes for seconds
class-misreading-grid_squares = grid squares for seconds
class-misreading-both_sides = the range from edge to edge
class-misreading-posts_counted = beats for intervals
class-misreading-gap_missed = one interval left out
class-misreading-show_work = not explained by one thing
class-show = Show a fault to the room
class-show_about = One strip over the whole screen. The bench without the fault runs beside it with the same heart: press C to change over, F to freeze, N to look nearer.
class-show_fault = Fault
class-show_severity = Severity
class-show_go = Show it
class-show_closer = Look nearer
class-show_name = Name it
class-show_close = Close
class-show_faulty = As found
class-show_cured = Put right
class-show_cure = Put it right
class-show_uncure = As found
class-show_freeze = Freeze
class-show_go_on = Go on
class-open = Open a saved class
class-save = Save the class
class-print = Print the report
class-step_set = 1. What was set
class-step_roster = 2. Who is in the class
class-step_results = 3. What came in
class-roster_open = Open the list
class-roster_or = Or paste the list
class-roster_paste = One student a line: code, name, e-mail, group. Commas, semicolons or tabs between them
class-roster_take = Take the list
class-roster_forget = Forget the list
class-roster_none = No list yet. Without one, nobody can be missing.
class-roster_is = { $n ->
    [one] One student is on the list.
   *[other] { $n } students are on the list.
}
class-roster-wrong-too_long = The list is far too long ({ $bytes } bytes; at most { $most }).
class-roster-wrong-too_many = Line { $line }: a class has at most { $most } students.
class-roster-wrong-not_text = Line { $line }: this is not plain text. Save the list as CSV in UTF-8.
class-roster-wrong-empty = There is no student in the list.
class-roster-wrong-open_quote = Line { $line }: a quote opens here and does not close.
class-roster-wrong-no_code_column = Line { $line }: no column has the students’ codes. Its titles are { $titles }. Call the column “code”.
class-roster-wrong-two_columns = Line { $line }: “{ $first }” and “{ $second }” both look like the { $what ->
    [codes] codes
    [names] names
    [addresses] e-mail addresses
   *[other] groups
}. Rename one of them.
class-roster-wrong-no_code = Line { $line }: the code is missing.
class-roster-wrong-twice = Line { $line }: the code “{ $student }” is already on line { $first }.
class-roster-wrong-too_many_cells = Line { $line }: { $found } cells for { $columns } columns. Put quotes around a cell that has a separator in it.
class-roster-wrong-long_cell = Line { $line }: a cell has { $length } characters; at most { $most }.
class-roster-wrong-unknown = The list cannot be read ({ $code }).
class-codes_or = Or paste codes from mails
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
class-due = Hand in before
class-tiles = Show one kind of student
class-state-absent = nothing in
class-state-unusable = unusable
class-state-wrong_bench = wrong bench
class-state-tried = tried
class-state-ready = ready
class-state-waived = waived
class-minutes_of = Time at the bench: { $v } min in the middle; half of the students took { $low } to { $high }.
class-first_last = First check → last check, of { $of } attempts.
class-both = { $n }
class-from_to = { $first } → { $last }
class-wrong = First open step
class-trace = Why the trace was not good enough
class-trace-clipped = cut off at the range
class-trace-small = too small
class-trace-tall = too tall
class-trace-hum = hum
class-trace-restless = movement
class-trace-short = too short, or no recording
class-trace-foreign = another student’s recording
class-trace_was = trace: { $list }
class-left = left: { $list }
class-groups = Groups side by side
class-group_group = Group
class-group_n = Students
class-group_points = Points, middle
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
class-search = Find a student
class-sort = Order
class-sort_state = who needs something first
class-sort_name = by name
class-sort_points = by points, low first
class-sort_group = by group
class-sort_list = as on the list
class-group = Group
class-shown = { $n } of { $of } students
class-col_wrong = What went wrong
class-tick = Mark { $name }
class-unlisted = Not on the list.
class-against-late = It came after the deadline.
class-decide = Decide
class-decide_for = Decide for { $name }
class-care_waived = Need not hand in
class-care_tries = More tries than the others
class-care_tries_of = { $n ->
    [one] One more try.
   *[other] { $n } more tries.
}
class-care_link = Copy a link with the extra tries
class-care_link_copied = Copied. Send this link to the student. It opens the same bench.
class-care_until = May hand in until
class-care_until_of = Until { $when }.
class-care_note = Note to the student
class-care_noted = Note.
class-care_keep = Keep
class-care_leave = Leave as it was
class-gradebook = Gradebook file
class-gradebook_about = One row for each student, as CSV. Give the columns the titles that your course site expects. This browser remembers them.
class-gradebook_save = Save the gradebook
class-gradebook_saved = { $n ->
    [one] Saved, with one row.
   *[other] Saved, with { $n } rows.
}
class-column_add = Add a column
class-column_out = Take out
class-column_out_of = Take out column { $n }
class-column_title = Title of column { $n }
class-column_field = What is in column { $n }
class-field_code = code
class-field_name = name
class-field_email = e-mail
class-field_group = group
class-field_state = state
class-field_ready = ready (yes or no)
class-field_points = points
class-field_maximum = most points
class-field_percent = per cent
class-field_tries = results handed in
class-field_minutes = minutes at the bench
class-field_feedback = feedback
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
class-bom = Begin with a byte order mark (for spreadsheets)
class-blank = Leave the points empty when nothing counts
class-feedback_points = { $n } of { $of } points.
class-answers = Answer key
class-answers_about = For each student and try: seed, faults with their severity, and the true rate over the first minute. It needs the word of the assignment.
class-answers_of = Assignment
class-answers_save = Save the answer key
class-answers_made = { $n } of { $of } students
class-answers_stop = Stop
class-answers_stopped = Stopped. No file was saved.
class-answers_word = Word of the assignment
class-answers_saved = Saved. Keep it away from students.
error-class_too_long = It is far larger than a saved class ({ $bytes } bytes; at most { $most }).
error-class_foreign = It is not a saved class, or a part of it is missing. ({ $found })
error-class_version = Another version of Dicrotic saved this class (form { $found }; this version reads { $ours }).
error-gradebook_columns = A gradebook has 1 to { $most } columns; these are { $found }.
error-gradebook_field = “{ $found }” is nothing that a column can hold.
error-gradebook_divides = Between the cells stands a comma, a semicolon or a tab.
error-gradebook_maximum = The most points must be above 0 and at most 1000; found { $found }.
error-answers_no_assignment = Open what was set first. Only an assignment has an answer key.
error-answers_no_word = This assignment has no word, so nobody can open its answers.
error-answers_other_word = This is not the word of the assignment.
