### The start page: ways, shelf, kept attempts, cautions.

app-title = Dicrotic: a practice bench for the finger pulse

skip-main = Skip to the bench

where-title = { $title } · Dicrotic
where-seed = seed { $v }

tools-scenarios = Scenarios
tools-open = Open a recording
tools-faults = Faults and tests
tools-language = Language
tools-theme = Dark or light

caution-title = For teaching, not for diagnosis
caution-short = For teaching, not for diagnosis. On a real bench follow your local codes, your institution’s rules and the licensed clinicians and instructors who are responsible for it.
caution-long = The subject here is simulated, and nothing on this page says anything about anyone’s health. Before a sensor goes on a person, follow your local codes and your institution’s rules, and ask the instructor. If a trace worries you, see a licensed clinician.

start-title = Rehearse the finger pulse
start-lede = Connect the equipment, record a clean pulse, count the beats, and compare your rate with the true rate, which the bench knows and you do not.
start-all = All scenarios

way-kept = Go on where you were
way-kept_from = seed { $seed }, { $when }
way-rehearse = Rehearse
way-rehearse_for = before the lab, twenty minutes
way-rehearse_text = A bench in pieces: put it together, strap the pad on, tune the strip, record, count. Every step is looked at.
way-rehearse_go = Begin with “{ $title }”
way-glimpse = 30-second preview
way-check = Check yourself
way-check_for = five minutes, again and again
way-check_text = A bench with something wrong and a heart you have not met. The debrief comes after your reading.
way-check_go = Take the next bench
way-assign = Set it for a class
way-assign_for = ten minutes, for instructors
way-assign_text = Put a bench together with the faults you want, try how fair its grading is, pass a link on, and see who is ready.
way-assign_go = Set a bench
way-assign_class = Class results

hero-foot = the foot
hero-peak = the peak, once in every beat
hero-notch = the notch
hero-bump = the second bump:|do not count it

start-help-guided = guided
start-help-alone = on your own
start-levels = Level { $v }
start-find = Find by a word
start-found_none = No scenario has “{ $word }” in its title or aim.
start-faults_title = What can be wrong at the bench?
start-faults = A card index of faults by first impression, each with the test that tells it from its look-alikes.
start-faults_go = Open the card index
start-own_title = Something real to read?
start-own = A recording of your own (a CSV file with a time and a value in each line) can be opened on the strip, measured and counted. It stays on this device.

whether-close_title = The last check
whether-close_text = This check closes the attempt. The answer is shown after it, and nothing can be changed.
whether-close_yes = Check and close
whether-close_no = Not yet
whether-reveal_title = Show the answer?
whether-reveal_text = This closes the attempt. It does not count as ready, and your second check is gone.
whether-reveal_yes = Show and close
whether-reveal_no = Not yet
resume-title = You have been here before
resume-text = An attempt with this seed is kept on this device, from { $when }. Go on with it?
resume-yes = Go on with it
resume-no = Start afresh
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

pane-title = Parts of the page
pane-bench = Bench
pane-strip = Strip
pane-sheet = Worksheet

ask-title = Ask the subject to
ask-do = Ask
ask-done = You ask, and the subject nods.
ask-rest = sit and rest
ask-deep_breath = take one deep breath
ask-paced_breathing = breathe 6 times a minute
ask-breath_hold = hold the breath
ask-stand_up = stand up
ask-sit_down = sit down
ask-exercise = step for a minute
ask-talk = tell a story
ask-laugh = laugh
ask-grip = squeeze with the other hand
ask-cold_other_hand = put the other hand in cool water
ask-ice_water = other hand in ice water (simulated only)
ask-valsalva = strain against a closed mouth (simulated only)
ask-face_immersion = face in cold water (simulated only)
ask-caution = Simulated only: not for a person in class. It can make people faint and can slow the heart dangerously. Whether it may be done at all is for local rules, your institution and licensed clinicians to say.

error-unknown = The core reported something unexpected ({ $code }).
error-cut_short = The file ends in the middle: a part of it is missing. Ask the student to save it again.
error-no_result = It is no result file, or a part of it is missing. ({ $found })
error-version = This result file has form { $found }. This version of Dicrotic reads form { $ours }.
error-code = { $found }
error-scenario_missing = Its bench is not at hand: open the scenario file or paste the link first.
error-other_bench = It is another bench than the one set.
error-set_twice = The same bench is given already, with other criteria ({ $other }). Give only the one that is to judge. “Forget all” begins anew.
error-too_long = It is longer than any result.
error-replay = It cannot be replayed: { $found }
error-core_stopped = The simulation stopped. Reload the page; the attempt is kept up to the last action. ({ $told })
error-scenario_invalid = A scenario file cannot be read: { $field } should be { $expected }, but is { $found }.
error-csv_empty = { $file } holds no line with numbers.
error-csv_cell = { $file }, line { $line }, column { $column }: expected { $expected }, found “{ $found }”.
error-csv_columns = { $file }, line { $line }: expected at least { $expected } columns, found { $found }.
error-csv_cells = { $file }, line { $line }: expected { $expected } columns, as in the lines above, found { $found }. A comma may stand for the decimal point and between columns too.
error-csv_thousands = { $file }, line { $line }: “{ $found }” can be a decimal number or a number of thousands, because “{ $other }” stands in the same column. Write the numbers without a mark between the thousands.
error-csv_column_unknown = { $file } has no column “{ $found }”.
error-csv_time_order = { $file }, line { $line }: time must grow, but { $found_s } s follows { $previous_s } s.
error-csv_rate_missing = { $file } has no time column, so its sampling rate is not known. A first column with the time in seconds helps.
error-csv_rate_range = { $file }: expected a sampling rate of { $low_hz } to { $high_hz } Hz, found { $found_hz } Hz.
error-csv_length = { $file }: expected { $low } to { $high } samples, found { $found }.
error-csv_gap = { $file }: { $gap_s } s go by without a line, where { $usual_s } s are usual. Cut the recording at the gap and open one part.
error-csv_missing = { $file }: { $found } of { $of } values are missing; at most one in { $limit_one_in } may be.
error-restore_invalid = The kept attempt cannot be read: { $found }.
error-bad_value = { $field } should be { $expected }.
error-drawing_failed = The strip cannot be drawn: { $found }.
error-no_canvas = This browser gives no canvas to draw on.
error-no_take = There is no such take.
error-seed_invalid = The seed in the address cannot be used: { $found }.
error-not_found = A file of this page is missing: { $what }.
error-no_scenario = There is no scenario called “{ $id }” here. Choose one of these.
error-file_left = What was open stays open.
error-page = Something on this page went wrong, and the rest goes on. Reloading helps most of the time. ({ $told })
