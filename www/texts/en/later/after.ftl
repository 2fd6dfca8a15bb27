### After a check: hints, the course of the attempt, the spread of windows, the rubric.

after-report = Report for printing
after-skills = Skill map

hint-look_at = look at: { $place }
hint-other_socket = another socket for: { $end }
hint-move = move: { $part }
hint-switch = the switch: { $id }
hint-do-answer = another number in the blank
hint-do-charger = the charger in or out
hint-do-cursor = the times at both cursors
hint-do-hand_height = the hand higher or lower
hint-do-high_pass = another high-pass
hint-do-input = another input
hint-do-invert = the polarity
hint-do-low_pass = another low-pass
hint-do-notch = the notch on or off
hint-do-open_take = open the recording
hint-do-other_hand = another place for the other hand
hint-do-pad_place = another place on the finger
hint-do-range = another range
hint-do-rate = another sampling rate
hint-do-scale = the value scale
hint-do-scroll = scroll through the recording
hint-do-show = live again
hint-do-shown = the trace on or off
hint-do-zero = zero the trace
hint-do-time_base = another time base
hint-try = Try: { $what }.
hint-nothing_wrong = Nothing is wrong with this bench.

hints-title = Hints
hints-first = A hint
hints-more = Another hint
hints-rung-look = look
hints-rung-locate = locate
hints-rung-rule = rule
hints-rung-worked = worked step
hints-rung-answer = answer
hints-after_next = Try once more first: the answer is only told after a second check.
hints-end = That was the last rung.

trail-title = What you did, step by step
trail-hint = Arrow keys go from scratch to scratch. Long pauses are drawn short.
trail-list = As a list
trail-before = The step before
trail-next = The next step
trail-to_wrong = To the first wrong step
trail-times = { $text } ({ $n } times)
trail-wrong = Here “{ $step }” went wrong first.
trail-lane-bench = bench
trail-lane-settings = settings
trail-lane-record = record
trail-lane-measure = measure
trail-lane-check = check

deed-unknown = { $deed }
deed-plug = { $end } into: { $socket }.
deed-unplug = { $end } pulled out.
deed-switch = { $on ->
    [true] { $id } switched on.
   *[other] { $id } switched off.
}
deed-move = Moved: { $part }.
deed-charger = { $on ->
    [true] Charger plugged in.
   *[other] Charger pulled out.
}
deed-strap_on = Pad strapped on.
deed-strap_off = Strap taken off.
deed-strap = Strap set to { $percent } %.
deed-pad_place = Pad moved to the { $place }.
deed-pad_face = Active face turned { $face }.
deed-hand_height = Hand moved to { $cm } cm from the heart’s level.
deed-rescan = Looked for the unit.
deed-tap_pad = Tapped the pad.
deed-ask_still = Asked to hold still.
deed-ask_quiet = Asked to be quiet.
deed-ask_finger = Asked how the finger feels.
deed-press_finger = Pressed the finger.
deed-wiggle = Wiggled: { $end }.
deed-swap_lead = Took another lead.
deed-rest_arm = Cushioned the arm.
deed-tell_instructor = Told the instructor.
deed-look = Looked at: { $place }.
deed-shade = { $on ->
    [true] Cloth laid over the finger.
   *[other] Cloth taken off the finger.
}
deed-other_hand = The other hand { $on }.
deed-manoeuvre = Asked the subject to { $what }.
deed-input = Input { $n } shown.
deed-range = Range { $v }.
deed-time_base = Time base { $s } per screen.
deed-zero = Line zeroed.
deed-zero_clear = Zero undone.
deed-invert = { $on ->
    [true] Polarity turned over.
   *[other] Polarity turned back.
}
deed-high_pass = High-pass { $hz }.
deed-low_pass = Low-pass { $hz }.
deed-notch = Mains notch { $hz }.
deed-average = Averaging { $ms }.
deed-anti_alias = { $on ->
    [true] Anti-alias filter on.
   *[other] Anti-alias filter off.
}
deed-rate = Sampling rate { $hz }.
deed-bits = Resolution { $n } bit.
deed-scale = Value scale ×{ $by }.
deed-shown = { $on ->
    [true] Trace drawn.
   *[other] Trace not drawn.
}
deed-show = Strip turned to { $mode }.
deed-record = Recording begun.
deed-stop = Recording ended.
deed-open_take = Take { $take } opened.
deed-scroll = Strip scrolled.
deed-zoom = Looked closer, { $from } to { $to }.
deed-zoom_out = All of it shown again.
deed-cursor = Cursor { $which } to { $t }.
deed-mark = Beat marked at { $t }.
deed-unmark = Mark near { $t } taken away.
deed-marks_clear = All marks cleared.
deed-snap = { $on ->
    [true] Snap to peaks on.
   *[other] Snap to peaks off.
}
deed-answer = Written: { $field } = { $text }.
deed-keep_window = Kept as window 1.
deed-keep_clear = Window 1 forgotten.
deed-name = Named: { $fault }.
deed-unname = Taken back: { $fault }.
deed-label = Take { $take } labelled “{ $text }”.
deed-agree = Caution read.
deed-check = Checked.
deed-reveal = The truth shown.
deed-hint = Asked for a hint.
deed-help = Bench taken { $mode }.

spread-title = How far a window of this length can be trusted
spread-band = { $n } beats in { $s }: { $rate } beats/min. One beat more or less would make it { $low } or { $high }; each beat weighs { $one }.
spread-later = What other windows of this record give is shown with the truth.
spread-others = In the same record, { $n } other windows of { $s } were counted: nine in ten give { $low } to { $high } beats/min. Each dot is one of them.
spread-picture = Your window’s band, and what other windows of the same record give
spread-own = as counted
spread-record = whole record
spread-unit = beats/min

rubric-title = The pre-lab rubric
rubric-total = { $got } of { $of }
rubric-ready = Ready, with this seed. It takes two.
rubric-bar_check = Not ready yet: the check is not passed.
rubric-bar_shown = Not ready yet: the answer was shown. Begin a new seed.
rubric-bar_help = Part of this was done for you. To be ready, do all of it yourself, with a new seed.
rubric-bar_row = Not ready yet: no point for { $list }.
rubric-bar_points = Not ready yet: it takes 16 points.
rubric-not_scored = Watched, so there are no points. Points are for what you do yourself.
rubric-of = { $got } / { $of }
rubric-left_out = This attempt has no: { $list }. The rest counts as 20.
rubric-see = Show it
rubric-is_got = got: 
rubric-is_open = open: 
rubric-rests = rests on: { $on }

field-count = N
field-seconds = T
field-multiplier = multiplier
field-rate = rate
field-uncertainty = uncertainty
field-middle = middle
field-range = range
field-amplitude = foot to peak
field-count_1 = N, window 1
field-seconds_1 = T, window 1
field-rate_1 = rate, window 1
help-mode-shown = after watching
help-mode-half = half done
help-mode-alone = alone
