### The strip: settings, cursors, marks, takes, what can be said of it.

rate-title = What is the sampling rate?
rate-text = { $file } has one value in each line and no times. Give its sampling rate, and it can be drawn against time.
rate-label = Samples per second, Hz
rate-problem = This should be a number from { $low } to { $high }.
rate-yes = Open it
rate-no = Do not open it

recording-about = This is a recording, not a simulation. Nobody knows its true heart rate. Your reading is compared with what this page’s own beat detector finds. A detector can be wrong too.

value-off = off

strip-title = The trace
strip-modes = What the screen shows
strip-live = Live
strip-paused = Pause
strip-take = Recording { $v } · { $s } s
strip-record = Record
strip-stop = Stop recording
strip-recording = Recording. Press Stop recording to finish.
strip-kept = Recording { $v }: kept.
strip-listen = Listen
strip-listen_on = You hear a click at each peak of the live trace. A taller peak gives a higher click. You hear hum as hum.
strip-listen_off = The sound is off.
strip-listen_none = This browser does not let the page make sound.
strip-start = Start the trace
strip-back = Half a screen back
strip-forth = Half a screen forward
strip-scroll = Position in the recording
strip-scroll_value = { $from } to { $to }
strip-pen_at = Time: { $s }
strip-margin_live = { $title }, live
strip-margin_paused = { $title }, paused
strip-margin_take = { $title }, recording { $v }
strip-margin_recording = recording
strip-margin_measure = Tap a beat to mark it. Tap a mark to remove it.
strip-foot_recording = { $from } to { $to } of { $all }

cursor-a = Cursor A
cursor-b = Cursor B
cursor-unplaced = not placed yet
cursor-place_first = Place the cursor first.

measure-title = Measuring
measure-none = –
measure-hint = Drag A and B, or move them with the arrow keys and the page keys. When a cursor is selected, press M to mark a beat there.

marks-at_a = Mark at A
marks-at_b = Mark at B
marks-clear = Clear all marks
marks-list = Beat marks, one by one
marks-none = No marks yet.
marks-remove = Remove the mark at { $s }
marks-made = Beat mark made at { $s }.
marks-gone = Beat mark removed.

set-time_base = Time base, per screen
set-time_less = Shorter time base
set-time_more = Longer time base
set-range = Full-scale range
set-range_less = Smaller range
set-range_more = Larger range
set-zero_clear = Undo zero
set-zero_at = zero at { $v }
set-invert = Invert
set-high_pass = High-pass
set-low_pass = Low-pass
set-high_pass_order = High-pass order
set-low_pass_order = Low-pass order
set-order-1 = 1st order
set-order-2 = 2nd order
set-notch = Notch filter
set-average = Averaging
set-input = Input shown
set-input_n = input { $v }
set-rate = Sampling rate
set-bits = Resolution
set-anti_alias = Anti-alias filter
set-shown = Show the trace
set-scale = Value scale
set-scale_by = ×{ $v }
set-line = { $time } · { $range }
set-line_high_pass = high-pass { $v }, { $order }
set-line_low_pass = low-pass { $v }, { $order }
set-line_notch = notch filter { $v }
set-line_inverted = inverted
set-line_scale = scale ×{ $v }
set-line_hidden = trace not shown
shown-about = These are ways to look at the recording. What you see is what you count, and what is checked and saved. The file itself does not change. A filter shows the wave a little later, as in the lab. A, B and your marks move with it.
shown-as_in_file = as in the file
shown-margin = { $title }, shown { $ways }
shown-caption = As shown: { $ways }

summary-ask = Trace in words
summary-no_data = No samples arrive, so there is no trace.
summary-flat = A flat trace.
summary-trace = A moving trace. You see { $s } seconds of it.
summary-fuzz-none = The trace is clean.
summary-fuzz-clear = There is clear noise on it.
summary-fuzz-heavy = Strong noise hides its shape.
summary-height-tiny = It is nearly flat.
summary-height-small = It is small on the screen.
summary-height-good = It fills a good part of the screen.
summary-height-tall = It nearly fills the whole screen.
summary-height-over = It goes beyond the screen.
summary-clipped = Some tops or bottoms are cut flat.
summary-drift = The whole trace drifts up and down.
