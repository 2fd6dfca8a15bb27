### The worksheet and the naming of faults.

brief-more = the whole brief
brief-less = fold the brief away

try-look = Look at one place
try-touch = Touch
try-ask = Ask the subject
try-other = The other hand
try-help = Fix

sheet-title = Worksheet
sheet-about = Open a take, set cursors A and B around a clean stretch, mark the beats, and write down what you read.
sheet-about_recording = Set cursors A and B around a clean stretch, mark the beats, and write down what you read.

naming-title = What is wrong here?
naming-about = Name what your tests point to: first the impression, then the fault. Nothing is judged before the check, and a name can be taken back.
naming-none = Nothing named yet.
naming-list = What you named
naming-unname = Take back: { $fault }
naming-named = Named: { $fault }.
naming-taken_back = Taken back: { $fault }.
naming-loading = The names are on their way.
naming-failed = The names did not come. ({ $told })
naming-again = Try again
naming-read = Read about faults and their tests

sheet-line-count = Between A and B I count N =
    .after = beats
sheet-line-seconds = in a window of T =
    .after = seconds
sheet-line-multiplier = To make a minute of it I multiply by
sheet-line-rate = so the heart rate is
    .after = beats/min
sheet-check = Check my reading ({ $n } of { $of })
sheet-check_over = Check my reading
sheet-reveal = Show the true rate
sheet-reveal_recording = Show the detector’s rate
sheet-check_first = Check your own reading first; the other rate is an answer to it.
sheet-again = Try again with a new seed

problem-empty = Still blank.
problem-not_a_number = This does not read as a number. Digits, with a point or a comma, are enough.
problem-negative = This should be more than nothing.
problem-two_signs = Two points or commas: it is not clear which is the decimal sign.
problem-divided_by_zero = Nothing can be divided by zero.
problem-too_long = This is too long to read as one number.
problem-unknown = This cannot be read as a number here.

asked-title = What a reading needs here
asked-points = What this attempt is scored for
asked-row = { $n ->
    [one] 1 point
   *[other] { $n } points
}
asked-ready = Ready means: the check is passed, 16 points of 20 or more, no row at zero, and you did all of it yourself, not watched and not half done. Hints cost nothing.
asked-fill = The pulse fills { $low } to { $high } % of the screen.
asked-hum = Hum stays under { $hum } % of the pulse.
asked-clip = No top or bottom is cut flat.
asked-record = The take is { $s } s long or longer.
asked-window = A and B stand { $s } s apart or more.
asked-long = A and B stand 15 s apart or more; a shorter window makes each beat weigh too much.
asked-compared = Your count is compared with the detector’s in your own window.
asked-count = N is the number of beats between A and B: one for each steep climb.
asked-work = Multiplier = 60/T; rate = N × multiplier.

fault-cause = Cause
fault-seen = On the strip
fault-test = The test that tells
fault-remedy = Remedy
fault-alike = Looks like

faults-title = Faults and the tests that tell them apart
faults-lede = Faults that look alike at first sight stand together. What tells them apart is a test, seldom a longer look. Read it before the lab or after; at the bench, test first.
faults-jump = First impressions
faults-back = Back to the bench
faults-back_start = Back to the scenarios
faults-order_title = An order that saves time
faults-order = Lamps and links|does the computer see the unit?|the right input?|tap the pad: a spike means that pad, lead and unit are in order|range and time base|is the subject still?|then move leads, telephone and charger, one at a time
