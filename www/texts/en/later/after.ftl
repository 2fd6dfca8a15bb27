### After a check: hints, the course of the attempt, the spread of windows, the rubric.

after-report = Report for printing
after-skills = Skill map

hint-look_at = look at: { $place }
hint-other_socket = another socket for: { $end }
hint-move = move: { $part }
hint-switch = the switch: { $id }
hint-do-answer = another number in the blank
hint-do-buffered = the input buffer on or off
hint-do-charger = the charger in or out
hint-do-cursor = the times at both cursors
hint-do-hand_height = the hand higher or lower
hint-do-high_pass = another high-pass filter
hint-do-input = another input
hint-do-invert = inverting the trace
hint-do-low_pass = another low-pass filter
hint-do-notch = the notch filter on or off
hint-do-open_recording = open the recording
hint-do-other_hand = another place for the other hand
hint-do-sensor_place = another place on the finger
hint-do-range = another range
hint-do-rate = another sampling rate
hint-do-scale = the value scale
hint-do-scroll = scroll through the recording
hint-do-show = going back to live
hint-do-shown = the trace on or off
hint-do-zero = zero the trace
hint-do-bits = another number of bits
hint-do-manoeuvre = let the subject do something or rest
hint-do-record = a recording
hint-do-strap = the strap tighter or looser
hint-do-time_base = another time base
hint-try = Try: { $what }.
hint-nothing_wrong = Nothing is wrong here.

hints-title = Hints
hints-first = A hint
hints-more = Another hint
hints-rung-look = look
hints-rung-locate = locate
hints-rung-rule = rule
hints-rung-worked = worked step
hints-rung-answer = answer
hints-after_next = Try again first. You see the answer only after a second check.
hints-end = That was the last hint.

trail-title = What you did, step by step
trail-hint = Use the arrow keys to go from action to action. Long pauses are drawn short.
trail-list = As a list
trail-before = The step before
trail-next = The next step
trail-to_wrong = To the first wrong step
trail-times = { $text } ({ $n } times)
trail-wrong = “{ $step }” first went wrong here.
trail-lane-bench = bench
trail-lane-settings = settings
trail-lane-record = record
trail-lane-measure = measure
trail-lane-check = check

deed-unknown = { $deed }
deed-plug = { $end }: plugged into { $socket }.
deed-unplug = { $end }: unplugged.
deed-switch = { $on ->
    [true] { $id } switched on.
   *[other] { $id } switched off.
}
deed-move = Moved: { $part }.
deed-charger = { $on ->
    [true] Charger plugged in.
   *[other] Charger unplugged.
}
deed-strap_on = Sensor strapped on.
deed-strap_off = Strap taken off.
deed-strap = Strap set to { $percent } %.
deed-sensor_place = Sensor moved to the { $place }.
deed-sensor_side = Sensing side turned { $face }.
deed-hand_height = Hand moved to { $cm } cm from the heart’s level.
deed-rescan = Let the computer look again.
deed-tap_sensor = Tapped the sensor.
deed-ask_still = Asked to keep still.
deed-ask_quiet = Asked to be quiet.
deed-ask_finger = Asked how the finger feels.
deed-press_finger = Pressed the finger.
deed-wiggle = Wiggled: { $end }.
deed-swap_cable = Took another sensor cable.
deed-rest_arm = Arm put on a cushion.
deed-push_up_sleeve = Sleeve pushed up.
deed-dry_plug = Wiped the sensor’s plug.
deed-wipe_sensor = Wiped the sensor.
deed-close_programs = Closed other programs.
deed-tell_instructor = Told the instructor.
deed-look = Looked at: { $place }.
deed-shade = { $on ->
    [true] Cloth put over the finger.
   *[other] Cloth removed from the finger.
}
deed-other_hand = The other hand { $on }.
deed-manoeuvre = Asked the subject to { $what }.
deed-input = Input { $n } shown.
deed-range = Range { $v }.
deed-time_base = Time base { $s } per screen.
deed-zero = Trace zeroed.
deed-zero_clear = Zero undone.
deed-invert = { $on ->
    [true] Trace inverted.
   *[other] Trace no longer inverted.
}
deed-high_pass = High-pass filter { $hz }.
deed-low_pass = Low-pass filter { $hz }.
deed-notch = Notch filter { $hz }.
deed-average = Averaging { $ms }.
deed-anti_alias = { $on ->
    [true] Anti-alias filter on.
   *[other] Anti-alias filter off.
}
deed-buffered = { $on ->
    [true] Input buffer on.
   *[other] Input buffer off.
}
deed-calibrator = { $on ->
    [true] Calibrator on.
   *[other] Calibrator off.
}
deed-integral = { $on ->
    [true] Integral shown.
   *[other] Integral no longer shown.
}
deed-consent = { $on ->
    [true] Results may be used in the study.
   *[other] Results may not be used in the study.
}
deed-let_pass = Waited { $n } min.
deed-rate = Sampling rate { $hz }.
deed-bits = Resolution { $n } bit.
deed-scale = Value scale ×{ $by }.
deed-shown = { $on ->
    [true] Trace drawn.
   *[other] Trace not drawn.
}
deed-show = Trace set to { $mode }.
deed-record = Recording started.
deed-stop = Recording ended.
deed-open_recording = Recording { $recording } opened.
deed-scroll = Trace scrolled.
deed-zoom = Zoomed in, { $from } to { $to }.
deed-zoom_out = Zoomed out.
deed-cursor = Cursor { $which } to { $t }.
deed-mark = Beat marked at { $t }.
deed-unmark = Mark near { $t } removed.
deed-marks_clear = All marks cleared.
deed-another_window = Another counting window chosen.
deed-snap = { $on ->
    [true] Snap to peaks on.
   *[other] Snap to peaks off.
}
deed-answer = Written: { $field } = { $text }.
deed-keep_window = Kept as counting window 1.
deed-keep_clear = Counting window 1 deleted.
deed-name = Named: { $fault }.
deed-unname = Removed: { $fault }.
deed-label = Recording { $recording } labeled “{ $text }”.
deed-agree = Caution read.
deed-check = Checked.
deed-reveal = True values shown.
deed-hint = Asked for a hint.
deed-help = Scenario started: { $mode }.

spread-title = How uncertain a heart rate from this counting window is
spread-band = { $n } beats in { $s }: { $rate } beats/min. One beat more or less makes it { $low } or { $high }. Each beat changes it by { $one }.
spread-later = You see what other counting windows of this recording give when you see the true values.
spread-others = { $n } other counting windows of { $s } in the same recording were counted. Nine of ten give { $rates } beats/min. Each dot is one of them.
spread-picture = The uncertainty of your counting window, and what others in the same recording give
spread-own = as counted
spread-record = whole recording
spread-unit = beats/min

rubric-title = The pre-lab rubric
rubric-total = { $got } of { $of }
rubric-ready = Ready with this seed. Do it again with another seed.
rubric-bar_check = Not ready yet: you did not pass the check.
rubric-bar_shown = Not ready yet: you saw the answer. Start a new seed.
rubric-bar_help = A part of this was done for you. To be ready, do all of it yourself, with a new seed.
rubric-bar_row = Not ready yet: no point for { $list }.
rubric-bar_points = Not ready yet: you need 16 points.
rubric-not_scored = You watched, so there are no points. You get points for what you do yourself.
rubric-of = { $got } / { $of }
rubric-left_out = This attempt does not include: { $list }. The rest counts as 20.
rubric-see = Show it
rubric-is_got = correct: 
rubric-is_open = not done: 
rubric-rests = see: { $on }

field-count = N
field-seconds = T
field-multiplier = multiplier
field-rate = heart rate
field-uncertainty = uncertainty
field-middle = middle
field-range = range
field-amplitude = foot to peak
field-count_1 = N, counting window 1
field-seconds_1 = T, counting window 1
field-rate_1 = heart rate, counting window 1
help-mode-shown = after watching
help-mode-half = half done
help-mode-alone = alone
deed-predict = Said what to expect.
deed-add_row = Added A to B to the table.
deed-row_note = Wrote a note in the table.
deed-remove_row = Removed a row of the table.
deed-conclude = Said what the table shows.
asked_to-breathe = breathe { $n } times a minute
asked_to-exercise = step up and down for { $n } min
