### The workspace: its views, the steps of the work, the card of a touched part, the signal's path.

view-title = What stands on the left
view-brief = Task
view-bench = Bench
view-list = All equipment
view-name = What is wrong
view-result = Result

rewire = Connect it as last time
undo = Undo
undo-nothing = There is nothing to undo.

steps-title = Steps of the work
steps-power = Power and cables
steps-sensor = Sensor
steps-adjust = Adjust
steps-record = Record
steps-measure = Measure
steps-name = Name the fault
steps-check = Check
steps-done = done
steps-open = not done yet

next-nothing = All steps are done.
next-unknown = Go on with the next step.
next-power_any = Bring power to the recorder and connect it. The computer must see it.
next-power_recorder_end = Plug the power cord into the recorder.
next-power_outlet_end = Plug the other end of the power cord into the power strip.
next-power_recorder_switch = Switch the recorder on.
next-power_no_light = The recorder has no power. Follow its power cord and look at the switch of the power strip.
next-power_data_recorder = Plug the data cable into the recorder.
next-power_data_computer = Plug the other end of the data cable into the computer.
next-power_sensor_cable = Plug the sensor cable into input 1 of the recorder.
next-power_not_seen = The computer does not see the recorder. Let it look again.
next-sensor_on = Put the sensor on the fingertip.
next-sensor_loose = The strap is loose. Touch the hand and make it tighter.
next-sensor_tight = The strap is too tight. Touch the hand and loosen it.
next-sensor_place = Move the sensor to the fingertip.
next-sensor_side = Turn the sensing side to the skin.
next-adjust_any = Get a clean pulse that fills a good part of the screen.
next-adjust_no_data = No samples arrive. Is everything connected?
next-watched = This is the example. Watch: you do not need to do anything.
next-adjust_flat = The trace is flat. Is the input right, and does the sensor touch the skin?
next-adjust_clipped = Tops or bottoms are cut flat. Choose a larger range.
next-adjust_small = The pulse is small on the screen. Choose a smaller range.
next-adjust_tall = The pulse is too tall for the screen. Choose a larger range.
next-adjust_noise = There is noise on the trace. Find where it comes from.
next-adjust_restless = The trace jumps or wanders. Wait, or ask the subject to keep still.
next-record = Record as long as the task needs.
next-record_on = Recording. Stop when it is long enough.
next-measure_open = Choose a recording above the trace.
next-measure_cursors = Drag cursors A and B to the ends of a clean part.
next-measure_blanks = Count the beats from A to B and fill in the blanks.
next-sensor_caution = Read the caution before the sensor goes on.
next-adjust_wait = Wait until a few beats are on the screen.
next-adjust_zero = The trace is near the edge. Press “Zero here” to bring it to the middle.
next-kept_short = This recording is short. Record again.
next-kept_clipped = Tops or bottoms of this recording are cut flat. Choose a larger range and record again.
next-kept_small = The pulse of this recording is small. Choose a smaller range and record again.
next-kept_tall = The pulse of this recording is too tall. Choose a larger range and record again.
next-kept_noise = There is noise in this part. Find where it comes from and record again.
next-kept_restless = The trace jumps or wanders here. Choose another part, or record again.
next-measure_foot_and_peak = Put A on the foot and B on the peak of one beat.
next-measure_beat_to_beat = Put A and B on the same feature of two beats: peak and peak, or foot and foot.
next-measure_height = Read the values at A and B and fill in the blanks.
next-measure_intervals = Count the beat intervals from A to B and fill in the blanks.
next-name = Name what is wrong, if anything is.
next-check = Check your reading.
next-check_again = Fix what the result points to. Then check again.
next-closed = This attempt is closed. Try again with a new seed.

card-close = Close
card-look = Look closely
card-wiggle = Wiggle the plug
card-plug_into = Plug it into
card-sensor = Sensor

drag-wrong_shape = { $socket }: the shape does not fit

bench-close_up = Look at
bench-close_up-whole = all
bench-close_up-recorder = recorder
bench-close_up-finger = finger

path-title = The path of the signal
path-sensor = Sensor
path-amplifier = Amplifier
path-filters = Filters
path-converter = Converter
path-screen = Screen

strip-take_short = Recording { $v }
strip-record_for = Record { $s } s and stop
strip-elapsed_of = { $s } of { $all }
cursor-drag = drag
marks-undo = Undo
measure-more = More
measure-a = A (s)
measure-b = B (s)
measure-between = A to B
measure-marked = Marks
measure-closer = Zoom in
axis-range = Range
axis-time_base = Time base
axis-zero = Zero here
says-title = What you see and hear
