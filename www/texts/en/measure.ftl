### Measuring and what is asked: looking closer, windows, kinds of question, the way a bench can be taken.

measure-height = Height A to B
measure-snap = Marks and dragged cursors go to the nearest peak
measure-after = This recording started { $s } after the end of exercise.
take-label = Label of this recording
zoom-out = Zoom out
spot-kept = counting window 1
spot-hint = look here
spot-deed = here
refusal-too_narrow = A to B is too short to zoom in. It must be at least { $least } s.
refusal-above_half_rate = A filter of { $hz } Hz does not fit this recording. Choose one below { $half_hz } Hz, half its sampling rate.
refusal-not_zoomed = The trace already has its usual width.
refusal-no_window = Set both cursors first.
refusal-not_asked = That is not asked for here.
refusal-too_late = You have already done something. Choose how to start before you do anything else.
refusal-not_checked = Check your reading first. Then you can ask for a hint.
refusal-no_hint = There is no further hint now.
refusal-worked_example = This is the worked example. It does every step itself. Stop it to do the steps yourself.
refusal-label_too_long = A label can have at most { $max } letters.
error-no_worked_example = There is no worked example of this scenario.
error-history_invalid = Your past attempts cannot be read: { $found }.

task-asked = Your task:
task-own_window = count in a counting window that you choose, { $need } s or longer.
task-given_window = count in a counting window of { $seconds } s. Half a second more or less is allowed.
task-intervals = time { $n } beat intervals: from one feature to the same feature { $n } beats later.
task-irregular = this pulse is uneven. Use a counting window of { $at_least_s } s or longer.
task-after_exercise = use a counting window of { $need } to { $longest_s } s. Its middle must be at most { $within_s } s after the end of exercise.
task-clean_part = put A and B around a clean part, { $need } s or longer. You do not count anything.
task-read_range = read the range. Then put A on a foot and B on the peak of the same beat, and read the height.
task-name_fault = name what is wrong. You do not measure anything.
task-compare = use two counting windows of one recording. They may share at most half. Then say how uncertain the heart rate is.

sheet-about_clean_part = Choose a recording above the trace. Find a part where each wave looks like the next. It must have no noise, no jumps, no drift and no flat tops.
sheet-about_name_fault = Test, look, and name what your tests show. You do not need a recording.
sheet-about_read_range = Choose a recording above the trace. Zoom in on one beat: put A at its foot and B at its peak. The heights are in millivolts.
sheet-about_compare = Choose a recording above the trace. Read one counting window and keep it. Then move A and B and read another.
sheet-about_intervals = Choose a recording above the trace. Choose one feature, a peak or a foot. Put A on it. Put B on the same feature, as many beat intervals later as asked.
sheet-check_names = Check what I named ({ $n } of { $of })
sheet-check_names_over = Check what I named
sheet-reveal_faults = Show what is wrong
sheet-may = optional
sheet-window_n = Counting window { $n }
sheet-keep = Keep this as counting window 1
sheet-keep_clear = Delete counting window 1
sheet-kept_none = Not kept yet. Set A and B, read this counting window, then keep it.
sheet-kept_now = Kept as counting window 1. Now move A and B for counting window 2.
sheet-kept = Kept: { $from } to { $to } of recording { $take }, { $s } long.
sheet-middle_how = How to find the time of the middle
sheet-middle_text = The screen shows how long after the end of exercise the recording started. The middle of the counting window is half-way between A and B. Add A and B, divide by 2, and add the start time of the recording.

sheet-line-count-intervals = From A to B I time n =
    .after = beat intervals
sheet-line-seconds-intervals = in Δt =
    .after = seconds
sheet-line-rate-intervals = heart rate 60 · n / Δt =
    .after = beats/min
sheet-line-uncertainty = uncertainty ±
    .after = beats/min
sheet-line-middle = Time of the middle
    .after = s after exercise
sheet-line-range = full-scale range ±
    .after = mV
sheet-line-amplitude = pulse, foot to peak =
    .after = mV
sheet-line-count_1 = count N =
    .after = beats
sheet-line-seconds_1 = time T =
    .after = seconds
sheet-line-rate_1 = heart rate =
    .after = beats/min
sheet-line-count-compare = count N =
    .after = beats
sheet-line-seconds-compare = time T =
    .after = seconds
sheet-line-rate-compare = heart rate =
    .after = beats/min
sheet-line-uncertainty-compare = each ±
    .after = beats/min

asked-given = A and B are { $s } s apart. Half a second more or less is allowed.
asked-intervals = From A to B there are { $n } beat intervals: B is { $n } beats after A.
asked-feature = A and B are on the same feature: peak and peak, or foot and foot.
asked-intervals_work = Heart rate = 60 × n / Δt.
asked-short = A and B are { $s } to { $longest } s apart, because the heart rate falls while you count.
asked-within = The middle of the counting window is at most { $s } s after the end of exercise.
asked-two = Use two counting windows of one recording. They may share at most half.
asked-uncertainty = The uncertainty is one beat more or less in your counting window, or the beats at its edges.
asked-clean = Each wave looks like the next: no noise, no jumps, nothing cut flat.
asked-range = Read the range as the recorder shows it, ± millivolts.
asked-foot_peak = A is on a foot. B is on the peak of the same beat.
asked-amplitude = The height from foot to peak, in millivolts.
asked-name_test = Test before you name a cause: change one thing, ask, or look.
asked-name_all = Name everything that is wrong. If nothing is, name nothing.
asked-name_one = Change one thing at a time, and look after each change.

truth-beats = beats in your counting window
truth-unsure = { $n ->
    [one] One more beat is too small or too early to be sure of. You are right with it or without it.
   *[other] { $n } more beats are too small or too early to be sure of. You are right with them or without them.
}
truth-window = beats/min: your counting window
truth-window_how = 60 · { $n } / { $s } s. Your count is compared with this one.
truth-span = beats/min: the beats in your counting window
truth-span_how = { $n } beat intervals from the first beat to the last, { $s } s.
truth-record = beats/min: the whole recording
truth-record_how = { $n } beat intervals from the first beat to the last, { $s } s. A short counting window need not give this.
truth-range = mV: the range, plus or minus
truth-amplitude = mV: the height from A to B

offer-title = How do you want to start?
offer-shown = Watch it done first
offer-half = Half done, I finish it
offer-alone = On my own
offer-why-shown = Suggested: watch first. The example uses this same equipment, step by step. Then it is your turn.
offer-why-half = Suggested: half done. The set-up is done for you. You do the rest.
offer-why-alone = Suggested: on your own. You have done these steps before, or this scenario will show whether you can.
offer-now-half = The set-up is done. Now you do the rest.
offer-now-alone = On your own. You can ask for hints after a check.
offer-now-shown = Now it is your turn, with a heart that is new to you. The number of marks can help you. Marks can go to the nearest peak by themselves.

way-stand = Your progress
way-stand_for = Students: 12 skills
way-stand_text = See which skills you have, what to practice again, and each attempt that you checked.
side-skills = Skill map
side-notebook = Notebook
side-device = This device
side-words = Words of the lab
side-teach = For instructors
side-report = Report
side-back = Back to the scenario
side-back_start = Back to the scenarios
notebook-full = This attempt is not in the notebook: this device’s storage is full or switched off. Print or export what you need, and delete old pages.

caution-before = Before you put a sensor on a person or record them, ask them. Anyone may say no. Follow your local safety rules and your institution’s rules. Wipe sensor and strap first. Use a strap without latex for a person who is allergic to it.
caution-power = Keep wet hands away from power. Never bypass the ground contact of a plug. Do not use a damaged cord: tell your instructor.
caution-body = Loosen the strap at once if a finger goes numb or dark. If a person feels faint, stop. Let them sit or lie down, and get help by your institution’s rules. Only licensed clinicians say what a trace means.
caution-when = Agree before you put the sensor on. After that, it gives no point.
caution-read = Before the sensor goes on: the caution
caution-later = Later
caution-agree = I have read it and will follow it
caution-agreed = You have read the caution.
