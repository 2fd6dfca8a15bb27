### Measuring and what is asked: looking closer, windows, kinds of question, the way a bench can be taken.

measure-height = Height A to B
measure-snap = Marks and dragged cursors go to the nearest peak
measure-after = This take began { $s } after the end of exercise.
take-label = Label of this take
zoom-in = Look closer, A to B
zoom-out = Zoom out
spot-kept = window 1
spot-hint = look here
spot-deed = here
refusal-too_narrow = That is too narrow to look into: at least { $least } s.
refusal-not_zoomed = The strip is drawn at its usual width.
refusal-no_window = Set both cursors first.
refusal-not_asked = That is not asked for here.
refusal-too_late = Something has been done already; how the bench is taken is chosen first.
refusal-not_checked = Check your reading first; hints answer to it.
refusal-no_hint = There is no further hint now.
refusal-worked_example = This is the worked example; it does everything itself. Stop it to try your own hand.
refusal-label_too_long = A label has room for { $max } letters.
error-no_worked_example = There is no worked example of this scenario.
error-history_invalid = What is kept of past attempts cannot be read: { $found }.

task-asked = Asked:
task-own_window = count in a window of your own, { $need } s or longer.
task-given_window = count in a window of { $seconds } s; half a second more or less does no harm.
task-intervals = time { $n } intervals, from one feature to the same feature { $n } beats later.
task-irregular = this pulse is uneven: take a window of { $at_least_s } s or longer.
task-after_exercise = a window of { $need } to { $longest_s } s, its middle no later than { $within_s } s after the end of exercise.
task-clean_stretch = put A and B around a clean stretch, { $need } s or longer. Nothing is counted.
task-read_range = read the range; then A on a foot, B on the peak of the same beat, and the height between them.
task-name_fault = name what is wrong. Nothing is measured.
task-compare = two windows of one take that share at most half; then say how far the rate can be trusted.

sheet-about_clean_stretch = Open a take and look for a stretch where each wave resembles the next. Fuzz, jumps, wandering and flat tops do not belong in it.
sheet-about_name_fault = Test, look, and name what your tests point to. A take is not needed.
sheet-about_read_range = Open a take. Look closer at one beat: A at its foot, B at its peak. The heights are in millivolts.
sheet-about_compare = Open a take. Read one window and keep it; then move A and B and read another.
sheet-about_intervals = Open a take. Choose one feature, a peak or a foot. A on the first, B on the same feature as many intervals later.
sheet-check_names = Check what I named ({ $n } of { $of })
sheet-check_names_over = Check what I named
sheet-reveal_faults = Show what is wrong
sheet-may = if you like
sheet-window_n = Window { $n }
sheet-keep = Keep this as window 1
sheet-keep_clear = Forget window 1
sheet-kept_none = Not kept yet. Set A and B, read this window, then keep it.
sheet-kept_now = Kept as window 1. A and B are free for window 2.
sheet-kept = Kept: { $from } to { $to } of take { $take }, { $s } long.
sheet-middle_how = How to find the time of the middle
sheet-middle_text = The strip tells how long after the end of exercise the take began. The middle of the window lies half-way between A and B: add A and B, halve it, and add when the take began.

sheet-line-count-intervals = From A to B I time n =
    .after = intervals
sheet-line-seconds-intervals = in Δt =
    .after = seconds
sheet-line-rate-intervals = so 60 · n / Δt gives a heart rate of
    .after = beats/min
sheet-line-uncertainty = which I trust to within ±
    .after = beats/min
sheet-line-middle = The middle of the window lies
    .after = seconds after the end of exercise
sheet-line-range = The full-scale range is ±
    .after = mV
sheet-line-amplitude = From foot to peak the pulse measures
    .after = mV
sheet-line-count_1 = In window 1 I count N =
    .after = beats
sheet-line-seconds_1 = in T =
    .after = seconds
sheet-line-rate_1 = so its rate is
    .after = beats/min
sheet-line-count-compare = In window 2 I count N =
    .after = beats
sheet-line-seconds-compare = in a window of T =
    .after = seconds
sheet-line-rate-compare = so its rate is
    .after = beats/min
sheet-line-uncertainty-compare = I trust either of the two to within ±
    .after = beats/min

asked-given = A and B stand { $s } s apart, to half a second.
asked-intervals = From A to B are { $n } intervals: { $n } beats after the first.
asked-feature = A and B stand on the same feature, peak and peak or foot and foot.
asked-intervals_work = n, Δt and the rate follow from one another.
asked-short = A and B stand { $s } to { $longest } s apart: the rate falls while you count.
asked-within = The middle of the window lies at most { $s } s after the end of exercise.
asked-two = Two windows of one take, which share at most half.
asked-uncertainty = The uncertainty is that of one beat more or less in your window, or of the beats that may lie at its edges.
asked-clean = In it each wave resembles the next: no fuzz, no jumps, nothing cut flat.
asked-range = The range is read as the recorder shows it, ± millivolts.
asked-foot_peak = A stands on a foot, B on the peak of the same beat.
asked-amplitude = The height from foot to peak, in millivolts.
asked-name_test = Before you name a cause, do something that shows it: change one thing, ask, or look closely at that place.
asked-name_all = Everything that is wrong is named, and nothing else.
asked-name_one = One change at a time, with a look at the strip after it.

truth-beats = beats in your window
truth-unsure = { $n ->
    [one] And one beat too small or too early to be sure of: counted or left out, both are right.
   *[other] And { $n } beats too small or too early to be sure of: counted or left out, both are right.
}
truth-window = beats/min: your window
truth-window_how = 60 · { $n } / { $s } s. Your count answers to this one.
truth-span = beats/min: your window’s beats
truth-span_how = { $n } intervals from the first to the last of them, { $s } s. How fast they followed one another.
truth-record = beats/min: the whole record
truth-record_how = { $n } intervals from the first beat to the last, { $s } s. No short window has to hit it.
truth-range = mV: the range, plus or minus
truth-amplitude = mV: the height from A to B

offer-title = How do you want to start?
offer-shown = Watch it done first
offer-half = Half done, I finish it
offer-alone = On my own
offer-why-shown = Proposed: watch. The example is done on this very bench, step by step; then it is your turn.
offer-why-half = Proposed: half done. The bench does the set-up and leaves the rest to you.
offer-why-alone = Proposed: on your own. What this bench asks for, you have done before, or it is here to find out.
offer-now-half = Half done. If a recording lies open, set A and B, count, and write it down. If none does, something is wrong here: find it, fix it, then record.
offer-now-alone = On your own. Hints come after a check, if you ask for them.
offer-now-shown = Now you, with a heart that you have not met. The running count and the snap to peaks are there to help, if you want them.

way-stand = Your progress
way-stand_for = twelve skills, and what you did
way-stand_text = What went well twice, what is due again, and each trial that you checked, with its strip.
side-skills = Skill map
side-notebook = Notebook
side-device = This device
side-words = The trade’s words
side-teach = For instructors
side-report = Report
side-back = Back to the bench
side-back_start = Back to the scenarios
notebook-full = This trial could not be kept in the notebook: this device’s storage is full or switched off. Print or export what matters, and delete old pages.

caution-before = Before a pad goes on a person: ask them. Follow your local codes and your institution’s rules. Loosen the strap at once if a finger goes numb or dark. Leave what a trace may mean to licensed clinicians.
caution-read = Before the pad goes on: the caution
caution-later = Later
caution-agree = Read; I will keep to it
caution-agreed = The caution is read.
