### The worksheet and the naming of faults.


try-look = Look at one place
try-touch = Touch
try-ask = Ask the subject
try-other = The other hand
try-help = Fix

sheet-title = Worksheet
sheet-about = Choose a recording above the trace. Put A and B around a clean part, mark the beats, and write down what you read.
sheet-about_recording = Put A and B around a clean part, mark the beats, and write down what you read.

naming-title = What is wrong here?
naming-about = Name what your tests show: first what you see, then the fault. Nothing is judged before the check. You can remove a name.
naming-why = How do you know? One line, if you like. It is never graded.
naming-none = Nothing named yet.
naming-list = What you named
naming-unname = Remove: { $fault }
naming-named = Named: { $fault }.
naming-taken_back = Removed: { $fault }.
naming-loading = The list of names is loading.
naming-failed = The list of names did not load. ({ $told })
naming-again = Try again
naming-read = Read about faults and their tests

sheet-line-count = Between A and B I count N =
    .after = beats
sheet-line-seconds = time T =
    .after = seconds
sheet-line-multiplier = 60/T =
sheet-line-rate = heart rate =
    .after = beats/min
sheet-check = Check my reading ({ $n } of { $of })
sheet-check_over = Check my reading
sheet-reveal = Show the true heart rate
sheet-reveal_recording = Show the detector’s heart rate
sheet-again = Try again with a new seed
sheet-another = Choose another counting window
sheet-another_now = The cursors stay where they were. Move A and B.
sheet-window_over = This counting window is closed. Choose another counting window.

problem-empty = Still blank.
problem-not_a_number = This is not a number. Use digits, with a point or a comma.
problem-negative = This must be more than zero.
problem-two_signs = There are two points or commas. Use one for the decimal sign.
problem-divided_by_zero = You cannot divide by zero.
problem-too_long = This number is too long.
problem-unknown = This cannot be read as a number here.

asked-title = What your reading needs
asked-points = How this attempt is scored
asked-row = { $n ->
    [one] 1 point
   *[other] { $n } points
}
asked-ready = To be ready, pass the check with 16 points of 20 or more and no row at zero. Do every step yourself, without the example and without the half-done start. Hints cost no points.
asked-fill = The pulse fills { $low } to { $high } % of the screen.
asked-hum = Hum is under { $hum } % of the pulse.
asked-clip = No top or bottom is cut flat.
asked-record = The recording is { $s } s long or longer.
asked-window = A and B are { $s } s apart or more.
asked-long = A and B are 15 s apart or more. In a shorter counting window each beat changes the heart rate too much.
asked-compared = Your count is compared with the detector’s count in your own counting window.
asked-count = N is the number of beats between A and B: one for each steep rise.
asked-work = Multiplier = 60/T; heart rate = N × multiplier.

fault-cause = Cause
fault-seen = On the trace
fault-test = The test
fault-remedy = Fix
fault-alike = Looks like

faults-title = Faults, and the tests that tell them apart
faults-lede = Faults that look alike are together here. A test tells them apart; a longer look seldom does. Read this before the lab or after it. In the lab, test first.
faults-jump = What you see first
faults-back = Back to the scenario
faults-back_start = Back to the scenarios
faults-order_title = An order that saves time
faults-order = Indicator lights and cables|does the computer see the recorder?|the right input?|tap the sensor: a spike means that sensor, cable and recorder work|range and time base|is the subject still?|then move cables, phone and charger, one at a time
