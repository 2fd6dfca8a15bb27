### The strip: settings, cursors, marks, takes, what can be said of it.

rate-title = How fast was it sampled?
rate-text = { $file } holds one value in each line and no times. With its sampling rate it can be drawn against time.
rate-label = Samples in a second, Hz
rate-problem = This should be a number from { $low } to { $high }.
rate-yes = Open it
rate-no = Leave it

recording-about = This is a recording, not a simulated bench. Nobody knows its true rate: your reading is compared with what the project’s own beat detector finds, and a detector can err too.

value-off = off

strip-title = The strip
strip-modes = What the strip shows
strip-live = Live
strip-hold = Hold
strip-take = Take { $v } · { $s } s
strip-record = Record
strip-stop = Stop recording
strip-recording = Recording. Everything under the stylus is kept until you stop.
strip-kept = Take { $v } is kept, { $s } s long, and lies open for measuring.
strip-listen = Listen
strip-listen_on = You hear a click at each crest of the live trace, higher for a taller one, and hum as hum.
strip-listen_off = The strip is silent again.
strip-listen_none = This browser gives the page no sound.
strip-start = Set the drum turning
strip-dock_open = Show the strip
strip-back = Half a screen back
strip-forth = Half a screen on
strip-scroll = Where in the take
strip-scroll_value = { $from } to { $to }
strip-pen_at = stylus at { $s }
strip-margin_live = { $title }, live
strip-margin_hold = { $title }, held
strip-margin_take = { $title }, take { $v }
strip-margin_recording = recording
strip-margin_measure = tap a beat to mark it, tap the mark to take it away
strip-foot_take = { $from } to { $to } of { $all }

take-export = Save take as CSV
take-file = dicrotic-take-{ $v }.csv

cursor-a = Cursor A
cursor-b = Cursor B
cursor-a_s = Cursor A, s
cursor-b_s = Cursor B, s
cursor-unplaced = not placed yet
cursor-place_first = Place the cursor first.

measure-title = Measuring
measure-interval = Interval A to B
measure-marks = Marks in the window
measure-none = –
measure-hint = Drag A and B, or move them with the arrow and page keys. With a cursor in focus, M marks a beat where it stands.

marks-at_a = Mark at A
marks-at_b = Mark at B
marks-clear = Clear all marks
marks-list = Beat marks, one by one
marks-none = No marks yet.
marks-remove = Remove the mark at { $s }
marks-made = Marked at { $s }.
marks-gone = Mark taken away.

set-paper_only = Paper
set-paper = Paper and stylus
set-filters = Filters
set-converter = Input and converter
set-time_base = Time base, per screen
set-time_less = Shorter time base
set-time_more = Longer time base
set-range = Full-scale range
set-range_less = Smaller range
set-range_more = Larger range
set-zero = Zero the line here
set-zero_clear = Undo zero
set-zero_at = zero at { $v }
set-invert = Turn polarity over
set-high_pass = High-pass
set-low_pass = Low-pass
set-high_pass_order = High-pass order
set-low_pass_order = Low-pass order
set-order-1 = 1st order
set-order-2 = 2nd order
set-notch = Mains notch
set-average = Averaging
set-input = Input shown
set-input_n = input { $v }
set-rate = Sampling rate
set-bits = Resolution
set-anti_alias = Anti-alias filter
set-shown = Trace drawn
set-scale = Value scale
set-scale_by = ×{ $v }
set-line = { $time } · { $range }
set-line_high_pass = high-pass { $v }, { $order }
set-line_low_pass = low-pass { $v }, { $order }
set-line_notch = notch { $v }
set-line_inverted = turned over
set-line_scale = scale ×{ $v }
set-line_hidden = trace not drawn

summary-ask = Strip in words
summary-no_data = No samples arrive, so there is no line.
summary-flat = A flat line.
summary-trace = A moving trace, { $s } seconds of it in sight.
summary-fuzz-none = The line is clean.
summary-fuzz-mild = There is a little fuzz on it.
summary-fuzz-clear = There is clear fuzz on it.
summary-fuzz-heavy = Heavy fuzz hides its shape.
summary-height-tiny = It hardly leaves the middle.
summary-height-small = It is small on the screen.
summary-height-good = It fills a good part of the screen.
summary-height-tall = It nearly fills the whole screen.
summary-height-over = It runs beyond the screen.
summary-clipped = Some tops or bottoms are cut flat.
summary-drift = The whole line wanders up and down.
