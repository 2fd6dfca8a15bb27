### The experiment: what one expects, the table, what it shows.

experiment-title = Experiment
experiment-expect = 1. What do you expect?
experiment-expect_about = Say it before you record. Nothing is graded here: a wrong guess costs no points.
experiment-expect_done = You expected this. It stays as it is once you have recorded.
experiment-from_to = From “{ $first }” to “{ $last }”:
experiment-measure-rate = heart rate
experiment-measure-amplitude = height of the pulse
experiment-measure-swing = swing of the beat intervals
experiment-expect-up = It rises
experiment-expect-down = It falls
experiment-expect-same = It stays the same
experiment-why = Why?
experiment-why_own = Choose a reason or write your own
experiment-write = Write it down
experiment-written = Written down.

experiment-table = 2. Your table
experiment-table_about = Record, put A and B, and fill in N on the worksheet. Then choose the condition and add the counting window.
experiment-table_no_count = Record, and put A and B. Then choose the condition and add the counting window.
experiment-condition = Condition
experiment-conditions = Conditions
experiment-when = { $to ->
    [0] After “Start”, count from { $from } s on.
   *[other] After “Start”, count from { $from } to { $to } s.
}
experiment-when_now = At first, count at once.
experiment-have = { $n } of { $of } measured
experiment-have_any = { $n } measured
experiment-begin_exercise = Start: { $s } s of exercise, then “{ $condition }”
experiment-now = Now: { $condition }.
experiment-now_before = “{ $condition }” begins in { $s } s.
experiment-now_since = Now: { $condition }, for { $s } s.
experiment-now_wait = Count in { $s } s.
experiment-now_over = The time for counting is over. Start it again.
experiment-line_right = Your conclusion, { $measure }: “{ $said }”. That is right.
experiment-line_wrong = Your conclusion, { $measure }: “{ $said }”. That is not right. See “Experiment”.
whether-remove_row_title = Remove this row?
whether-remove_row_text = The row and its note are gone then.
whether-remove_row_yes = Remove it
whether-remove_row_no = Keep it
refusal-row_there = Row { $row } has most of this counting window already. Choose another part, or record again.
experiment-begin = Start: { $condition }
experiment-begun = { $condition }: started.
experiment-add = Add A to B to the table
experiment-added = Row { $n } added.
experiment-removed = Row { $n } removed.
experiment-remove = Remove row { $n }
experiment-note = Note on row { $n }
experiment-rows = Rows of the table
experiment-empty = The table is still empty.
experiment-csv = Save the table (CSV)
experiment-picture = Save the picture: { $measure }
experiment-col-n = No.
experiment-col-since = Time (s)
experiment-col-count = N
experiment-col-seconds = T (s)
experiment-col-rate = Heart rate (beats/min)
experiment-col-amplitude = Height (mV)
experiment-col-swing = Swing (ms)
experiment-col-note = Note
experiment-off = count to look at again
experiment-value = { $value } ± { $u }
experiment-means = Mean of each condition
experiment-mean = { $measure }: { $first } ± { $first_u } in “{ $first_of }”, { $last } ± { $last_u } in “{ $last_of }”. The difference is { $d } ± { $u } { $unit }.
experiment-unit-rate = beats/min
experiment-unit-amplitude = mV
experiment-unit-swing = ms
experiment-about_u = The number after ± is one standard deviation. It comes from the count, your repeats, and what a body does by itself.
experiment-fit = One curve through your points: the heart rate falls to { $rest } beats/min with a time constant of { $tau } s. Your points allow { $low } to { $high } s.
experiment-fit_open = One curve through your points: the heart rate falls to { $rest } beats/min with a time constant of { $tau } s. Your points allow { $low } s and more: measure later, too.
experiment-fit_none = For a curve, add at least two counting windows of rest and three after exercise.

experiment-conclude = 3. What does your table show?
experiment-conclude_about = Choose with care: once all is answered, the table is closed.
experiment-conclude-up = It rises
experiment-conclude-down = It falls
experiment-conclude-same = No difference that this table can show
experiment-conclude_do = This is what it shows
experiment-needs = First measure each of the two conditions.

experiment-result = Your conclusion, and the way there
experiment-outcome-shown = Right. The table shows this difference.
experiment-outcome-none_shown = Right. This table cannot show a difference. That is a result, too.
experiment-outcome-missed = There is a difference, and your table can show it. Compare the difference with its ±.
experiment-outcome-overclaimed = This table does not show that. The difference is no larger than chance can make it.
experiment-outcome-opposite = The difference goes the other way. Look at which condition comes first.
experiment-as_expected = It is what you expected.
experiment-not_expected = You expected something else. That is how one learns most.
experiment-truth = In the subject itself, in these counting windows, the difference was { $truth } { $unit }.
experiment-remark-short = Your shortest counting window has { $s } s. One beat more or less is { $u } beats/min there. In { $asked } s it is only { $u_asked }.
experiment-remark-once = Measure each condition { $asked } times or more. One counting window does not show how much the next one differs.
experiment-remark-order = You measured all of one condition first. Time alone could make the difference. Take turns where you can.
experiment-remark-regression = Your first counting window was far from the later ones. An odd value is often followed by a usual one, whatever you do.
experiment-remark-spread = Counting windows of one condition differ by more than the two conditions do.
experiment-remark-one_subject = This is one subject. Others may react in another way: ask the whole class.
experiment-next = Now check your last reading on the worksheet.

refusal-predict_first = First say what you expect. Open “Experiment”.
refusal-conclude_first = First say what your table shows. Open “Experiment”.
refusal-other_condition = This counting window is not in “{ $condition }”. It must start { $from_s } s or more after that condition starts, and it must end before another one.
refusal-no_count = First count the beats from A to B, and fill in N on the worksheet.
refusal-no_row = The table has no such row.
refusal-rows_missing = Nothing is measured in “{ $condition }” yet.

### On the report.

report-experiment = The experiment
report-experiment_expected = What was expected
report-experiment_method = How it was measured
report-experiment_how = { $n } counting windows of { $low } to { $high } s. { $counts }. In this order of conditions: { $order }. The heart rate is the count times 60, divided by the length of the counting window.
report-experiment_times = “{ $condition }”: { $n }
report-experiment_figure = { $name }: each counting window with its uncertainty, left to right as measured.
report-experiment_concluded = What the table shows
report-experiment_limits = What this cannot tell
report-experiment_one = It is one subject. How others react is not known from it.
report-experiment_mean = A counting window gives a mean. What happened within it is not in the table.
report-experiment_height = The height of a pulse is no amount of blood. Compare it only with the same sensor, strap and range.
