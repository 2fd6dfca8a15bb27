### The notebook and the printed report.

notebook-title = Notebook
notebook-lede = Every attempt that you have checked, latest first. It is kept on this device and nowhere else.
notebook-none = No attempt yet. You get a page when you check a reading.
notebook-begin = Choose a scenario
notebook-attempts = Attempts that are kept
notebook-attempt = from { $when }
notebook-attempt_try = attempt { $n }, from { $when }
notebook-json = Export as JSON
notebook-csv = Export as CSV
notebook-take = Read a notebook file
notebook-taken = Read from the file. Pages: { $pages }. Attempts: { $attempts }.
notebook-take_unknown = This file is not a notebook of this page.
notebook-drop_all = Delete all pages
notebook-drop = Delete
notebook-drop_one = Delete: { $title }, { $when }
notebook-dropped = { $n ->
    [one] One page deleted.
   *[other] { $n } pages deleted.
}
notebook-put_back = Undo
notebook-is_back = The page is back.
notebook-not_kept = This was not kept: this device’s storage is full or switched off.
notebook-note = Notes
notebook-picture = The trace of this attempt, with cursors A and B and the beat marks
notebook-no_picture = No trace was kept with this attempt.
notebook-report = Report
notebook-open = Open this scenario

page-passed = { $n ->
    [one] Correct at the first check.
   *[other] Correct at check { $n }.
}
page-open = First step that is not correct at check { $n }: { $step }.
page-closed = Closed without a correct reading.
page-hints = { $n ->
    [one] One hint.
   *[other] { $n } hints.
}
page-band = heart rate, one beat more or less
page-rubric = points { $got } of { $of }

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
report-none = There is no page of this attempt on this device.
report-from = Attempt with simulated equipment
report-when = When
report-seed = Seed
report-settings = Recorder
report-take = Recording
report-recording_value = { $v }, { $s } s, label: { $label }
report-help = Started
report-name = Name
report-name_line = ____________________________
report-caption = The counting window from A to B, with your beat marks, if you set any. Seconds below.
report-caption_truth = The counting window from A to B. Above: your beat marks, if you set any. Below: the true beats. Seconds below.
report-caption_detector = The counting window from A to B. Above: your beat marks, if you set any. Below: the beats that the detector finds. Seconds below.
report-read = What you read
report-named = Named: { $list }.
report-steps = Step by step
report-truth = Heart rates, beats/min
report-rate_own = as read
report-rate_band = this counting window, one beat more or less
report-rate_window = this counting window, true
report-rate_record = whole recording, true
report-rate_window_detector = this counting window, as the detector finds it
report-rate_record_detector = whole recording, as the detector finds it
report-others = { $n } other counting windows of this length in the same recording: nine of ten give { $rates } beats/min.
report-rubric = Pre-lab rubric: { $got } of { $of }
report-rubric_part = This scenario uses only these rows. Their points are scaled to 20.
report-note = Notes
report-hash = Result number { $hash }
