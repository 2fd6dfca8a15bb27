### The start page: ways, shelf, kept attempts, cautions.

app-title = Dicrotic: a practice bench for the finger pulse

skip-main = Skip to the scenario

where-title = { $title } · Dicrotic
where-seed = seed { $v }

tools-scenarios = Scenarios
tools-open = Open a file
tools-own = Your own pulse
tools-faults = Faults and tests
tools-language = Language
tools-theme = Theme
theme-light = Light
theme-dark = Dark

caution-title = For teaching, not for diagnosis
caution-short = For teaching, not for diagnosis. With real equipment, first follow your local safety rules, your institution, and the licensed clinicians and instructors in charge.
caution-long = The subject here is not real. This page says nothing about anyone’s health. Before you put a sensor on a person, ask your instructor. Follow your local safety rules, and the rules of your institution. If you see a trace that worries you, ask a licensed clinician.

start-title = Practice the finger pulse
start-lede = Practice on screen for the physiology lab: connect the equipment, record a clean pulse, and count the beats. Then see the true heart rate.
start-pulse = You have a real pulse with you:
start-pulse_go = measure your own pulse
start-all = All scenarios
start-single = One fault at a time
start-single_about = In these scenarios the title tells what you will see, and the fault is the same each time. They are for instructors and to practice one skill.

tools-menu = Menu
way-kept = Continue where you stopped
way-kept_over = Last attempt (closed)
way-kept_from = seed { $seed }, { $when }
way-kept_from_over = seed { $seed }, { $when }, closed
way-rehearse = Prepare for the lab
way-rehearse_for = Students: 20 minutes
way-rehearse_text = Connect the equipment, set the trace, record, and count the beats. Each step is checked.
way-rehearse_go = Start with “{ $title }”
way-glimpse = 30-second preview
way-check = Quick self-check
way-check_for = Students: 5 minutes
way-check_text = Something is wrong with the equipment. Find it, and read a heart rate that is new to you.
way-check_go = Start a self-check
way-assign = For your class
way-assign_for = Instructors: 10 minutes
way-assign_text = Choose the faults, see if the grading is fair, and give out one link. Later, see who is ready.
way-assign_go = Assign a scenario
way-assign_class = Class results
way-assign_guide = Guide

hero-foot = the foot
hero-peak = the peak, once in every beat
hero-notch = the dicrotic notch
hero-bump = the second bump:|do not count it

start-help-guided = guided
start-help-alone = on your own
start-levels = Level { $v }
start-find = Find by a word
start-found_none = No scenario has “{ $word }” in its title or aim.
start-faults_title = What can go wrong?
start-faults = A list of faults, sorted by what you see first. Each fault has the test that tells it from similar faults.
start-faults_go = Open the list of faults
start-own_title = Do you have a recording of your own?
start-own = Open it here. A CSV file with a time and a value in each line will do. You can measure it and count its beats. It stays on this device.

whether-close_title = The last check
whether-close_text = This check closes the attempt. You see the answer after it, and you cannot change anything.
whether-close_yes = Check and close
whether-close_no = Not yet
whether-reveal_title = Show the answer?
whether-reveal_text = This closes the attempt. It does not count as ready, and you lose your second check.
whether-reveal_yes = Show and close
whether-reveal_no = Not yet
resume-title = You were here before
resume-text = An attempt with this seed is kept on this device, from { $when }. Do you want to continue it?
resume-yes = Continue it
resume-no = Start again
resume-now = a moment ago
resume-minutes = { $n ->
    [one] a minute ago
   *[other] { $n } minutes ago
}
resume-hours = { $n ->
    [one] an hour ago
   *[other] { $n } hours ago
}
resume-days = { $n ->
    [one] yesterday
   *[other] { $n } days ago
}


ask-title = Ask the subject to
ask-do = Ask
ask-done = You ask, and the subject nods.
ask-rest = sit and rest
ask-deep_breath = take one deep breath
ask-paced_breathing = breathe 6 times a minute
ask-breath_hold = hold the breath
ask-stand_up = stand up
ask-sit_down = sit down
ask-exercise = step up and down for a minute
ask-talk = talk
ask-laugh = laugh
ask-grip = squeeze with the other hand
ask-cold_other_hand = put the other hand in cool water
ask-ice_water = other hand in ice water (simulated only)
ask-valsalva = strain against a closed mouth (simulated only)
ask-face_immersion = face in cold water (simulated only)
ask-caution = Simulated only: never do this with a person in class. It can make people faint. It can slow the heart, and this is a danger. Local rules, your institution and licensed clinicians decide whether it may be done at all.
ask-caution_effort = Some people must not do this. Examples are heart or lung trouble, high blood pressure, and pregnancy. Anyone may say no, without a reason. Stop at pain or dizziness. Local rules, your institution and licensed clinicians decide.

error-unknown = The program reported an error that it does not know ({ $code }).
error-cut_short = The file ends too early: a part of it is missing. Ask the student to save it again.
error-no_result = This is not a result file, or a part of it is missing. ({ $found })
error-version = This result file has form { $found }. This version of Dicrotic reads form { $ours }.
error-code = { $found }
error-scenario_missing = Its scenario is not here. Open the scenario file or paste the link first.
error-other_bench = This is not the scenario that was assigned.
error-set_twice = The same scenario is already here, with other criteria ({ $other }). Open only the one that you want to grade by. “Delete all” starts again.
error-too_long = It is longer than any result.
error-replay = It cannot be replayed: { $found }
error-core_stopped = The simulation stopped. Reload the page. The attempt is kept up to the last action. ({ $told })
error-scenario_invalid = A scenario file cannot be read: { $field } should be { $expected }, but is { $found }.
error-csv_empty = { $file } has no line with numbers.
error-csv_cell = { $file }, line { $line }, column { $column }: expected { $expected }, found “{ $found }”.
error-csv_columns = { $file }, line { $line }: expected at least { $expected } columns, found { $found }.
error-csv_cells = { $file }, line { $line }: expected { $expected } columns, as in the lines above, found { $found }. Perhaps a comma is used both in decimal numbers and between columns.
error-csv_thousands = { $file }, line { $line }: “{ $found }” can be a decimal number or a number of thousands, because the same column has “{ $other }”. Write the numbers without a mark between the thousands.
error-csv_column_unknown = { $file } has no column “{ $found }”.
error-csv_time_order = { $file }, line { $line }: the time must increase, but { $found_s } s comes after { $previous_s } s.
error-csv_rate_missing = { $file } has no time column, so its sampling rate is not known. Add a first column with the time in seconds.
error-csv_rate_range = { $file }: expected a sampling rate of { $low_hz } to { $high_hz } Hz, found { $found_hz } Hz.
error-csv_length = { $file }: expected { $low } to { $high } samples, found { $found }.
error-csv_gap = { $file }: there is a gap of { $gap_s } s, where { $usual_s } s is usual. Cut the recording at the gap and open one part.
error-csv_missing = { $file }: { $found } of { $of } values are missing; at most one in { $limit_one_in } may be.
error-restore_invalid = The kept attempt cannot be read: { $found }.
error-bad_value = { $field } should be { $expected }.
error-drawing_failed = The trace cannot be drawn: { $found }.
error-no_canvas = This browser cannot draw the trace.
error-no_recording = This recording does not exist.
error-seed_invalid = The seed in the address cannot be used: { $found }.
error-not_found = A file of this page is missing: { $what }.
error-no_scenario = There is no scenario with the name “{ $id }” here. Choose one of these.
error-file_left = The file that was open stays open.
error-page = A part of this page has failed. The rest still works. Reload the page to fix it. ({ $told })
