### The notebook and the printed report.

notebook-title = Notebook
notebook-lede = Every trial that you have checked, latest first. It is kept on this device and nowhere else.
notebook-none = No trial yet. A page is made when a reading is checked.
notebook-begin = Choose a bench
notebook-attempts = Attempts that are kept
notebook-attempt = from { $when }
notebook-attempt_try = try { $n }, from { $when }
notebook-json = Export as JSON
notebook-csv = Export as CSV
notebook-drop_all = Delete all pages
notebook-drop = Delete
notebook-drop_one = Delete: { $title }, { $when }
notebook-dropped = { $n ->
    [one] One page deleted.
   *[other] { $n } pages deleted.
}
notebook-put_back = Put back
notebook-is_back = Put back.
notebook-not_kept = That could not be kept: this device’s storage is full or switched off.
notebook-note = Notes
notebook-picture = The strip of this trial, with cursors A and B and the beat marks
notebook-no_picture = No strip was kept with this trial.
notebook-report = Report
notebook-open = Open this bench

page-passed = { $n ->
    [one] It held at the first check.
   *[other] It held at check { $n }.
}
page-open = First open step at check { $n }: { $step }.
page-closed = Closed without a reading that holds.
page-hints = { $n ->
    [one] One hint.
   *[other] { $n } hints.
}
page-band = one beat more or less
page-band_value = { $low } to { $high } beats/min
page-rubric = rubric { $got } of { $of }

field-unit-count = beats
field-unit-seconds = s
field-unit-rate = beats/min
field-unit-uncertainty = beats/min
field-unit-middle = s
field-unit-range = mV
field-unit-amplitude = mV
field-unit-count_1 = beats
field-unit-seconds_1 = s
field-unit-rate_1 = beats/min

report-print = Print
report-none = There is no page of this trial on this device.
report-from = Trial at the practice bench
report-when = When
report-seed = Seed
report-settings = Recorder
report-take = Take
report-take_value = { $v }, { $s } s, label: { $label }
report-help = Taken
report-name = Name
report-name_line = ____________________________
report-caption = The window from A to B, with the beats that were marked. Seconds below.
report-caption_truth = The window from A to B: above, the beats that were marked; below, the bench’s own beats. Seconds below.
report-caption_detector = The window from A to B: above, the beats that were marked; below, the beats that the detector finds. Seconds below.
report-read = What was read
report-named = Named: { $list }.
report-steps = Step by step
report-truth = Rates, beats/min
report-rate_own = as read
report-rate_window = this window, true
report-rate_record = whole record, true
report-rate_window_detector = this window, as the detector finds it
report-rate_record_detector = whole record, as the detector finds it
report-others = { $n } other windows of this length in the same record: nine in ten give { $low } to { $high } beats/min.
report-rubric = Pre-lab rubric: { $got } of { $of }
report-rubric_part = This bench calls for these rows only; their points are brought to 20.
report-note = Notes
report-hash = Debrief { $hash }
