### One's own pulse: by touch, by a silent count, by the camera.

own-title = Your own pulse
own-lede = In the scenarios the finger is simulated. Here you measure the pulse that you have with you.
own-care = Only if you want to: nobody has to measure themselves. Nothing leaves this device. This page says nothing about your health and does not judge your heart. If beats come unevenly, or if something worries you, tell your instructor.
own-ways = Ways to measure
own-way_touch = By touch
own-way_count = Silent count
own-way_camera = By camera

own-seconds = How long
own-seconds_one = { $s } s
own-stop = Stop
own-open = Open as a recording
own-outcome = Here you will see the result.
own-rate = Heart rate
own-rate_plain = { $rate } beats/min
own-rate_off = { $rate } ± { $off } beats/min
own-rate_none = none
own-uneven = Beat intervals are never all alike. This page does not say why. That is a question for your instructor.
own-file_touch = own-pulse-touch
own-file_camera = own-pulse-camera

own-touch_title = Feel it, and tap
own-wrist = At the wrist.
    .how = Turn one palm up. Put two fingertips below the base of the thumb, in the groove beside the bone. Press lightly until you feel the beat.
own-neck = At the neck.
    .how = Put two fingertips beside the windpipe, below the jaw. Press lightly, and on one side only. Never press both sides, and do not rub.
own-touch_fingers = Use your fingertips and not the thumb. The thumb has a pulse of its own.
own-touch_hand = Tap with a free finger, once with each beat: on the button, or with Space or Enter. A partner can tap for you.
own-touch_dizzy = If you feel dizzy, let go and sit down.
own-tap = Tap
own-tap_first = Tap with the first beat
own-tap_starts = The time of { $s } s starts with your first tap.
own-tap_count = { $n ->
    [one] 1 tap
   *[other] { $n } taps
}, { $s } s of { $of } s
own-undo = Remove the last tap
own-tap_few = Too few taps for a heart rate. Tap with each beat, three times or more.
own-tap_n = Taps
own-tap_of = { $n } taps, so { $intervals } beat intervals in { $s } s
own-interval = Mean beat interval
own-interval_ms = { $ms } ms, spread { $sd } ms
own-off_why = After ± you see how far this may be off, because no tap is exactly on its beat.
own-tap_missed = { $n ->
    [one] One beat interval is about twice as long as the others. Perhaps you missed a beat.
   *[other] { $n } beat intervals are about twice as long as the others. Perhaps you missed beats.
}
own-tap_doubled = { $n ->
    [one] One beat interval is about half as long as the others. Perhaps you tapped twice.
   *[other] { $n } beat intervals are about half as long as the others. Perhaps you tapped twice.
}

own-count_title = Count in silence
own-count_how = Feel your pulse. Press Start on a beat, and call that beat zero. Count on without a sound. You see no clock. At the end the page says stop, with a short tone.
own-count_why = Why zero? The first beat starts the time. If you call it one, you count one beat too many.
own-count_ready = Find your pulse first.
own-count_start = Start on a beat
own-count_on = Zero, one, two …
own-count_leave = Stop counting
own-count_over = Stop. Which number did you reach?
own-count_n = Beats counted
own-count_take = Calculate
own-count_bad = Type a whole number from 0 to { $most }.
own-count_rate = { $n } beats in { $s } s: { $n } × { $multiplier } = { $rate } beats/min. One beat more or less changes this by { $step } beats/min.

own-camera_title = A fingertip on the camera
own-camera_how = Each beat brings blood into the fingertip, and its color changes a little. A camera can see that. Lay a fingertip on the lens, without pressing. Rest your hand on the table.
own-camera_lamp = If the camera has a light, the page turns it on. If it has none, turn the lens to a desk lamp or the bright sky. Never turn it to the sun.
own-camera_before = Before the camera starts
own-camera_choice = It is your choice. You can stop at any time.
own-camera_numbers = Of each picture the page keeps three numbers: how red, green and blue its middle is.
own-camera_nothing = No picture is kept, stored or sent. The numbers stay on this device.
own-camera_off = The camera and its light go off when you stop, leave this screen, or go to another app.
own-camera_warm = A camera light gets warm. Take your finger away if it feels hot.
own-camera_start = Start the camera
own-camera_is_off = The camera is off.
own-camera_other = Use another camera
own-camera_asking = Asking your browser for the camera …

own-quality-start = Lay a fingertip on the lens.
own-quality-no_finger = Cover the lens with a fingertip.
own-quality-too_dark = Too dark. Turn to more light: a desk lamp or the sky.
own-quality-too_bright = Too bright. Cover all of the lens, or turn away from the light.
own-quality-press_less = Press less.
own-quality-hold_still = Keep still.
own-quality-wait = A few more seconds.
own-quality-good = Good. Stay like this.
own-quality-none = No pictures come from the camera.
own-light-on = The light of the camera is on.
own-light-none = This camera has no light that the page can turn on. Use a desk lamp or the sky.
own-light-failed = The light of the camera did not turn on. Use a desk lamp or the sky.
own-now = { $rate } beats/min now
own-recorded_wait = The recording of { $s } s starts by itself when the pulse can be read.
own-recorded_on = The recording has started.
own-recorded = Recorded: { $s } s of { $of } s
own-part = From { $from } to { $to } s
own-colors = Save the colors as CSV

own-ended-done = The recording is complete. The camera is off.
own-ended-stopped = The camera is off.
own-ended-taken = The camera was taken away: another program has it, or it was unplugged. It is off here.
own-ended-hidden = The camera went off because this page was out of sight.
own-ended-long = The pulse could not be read for three minutes, so the camera is off. You can measure by touch.
own-ended_nothing = Nothing was recorded.

own-fail-denied = The camera was not allowed. If you want to allow it, look for the camera sign beside the address of this page.
own-fail-missing = No camera was found.
own-fail-busy = The camera did not start. Perhaps another program has it. Close that program, then start again.
own-fail-insecure = The browser gives no camera to this page. It must be opened over https, or on this computer.
own-fail-policy = The page around this one does not let it use the camera. In its own browser tab it can.
own-fail-policy_page = The web server of this page does not allow the camera.
own-fail-failed = The camera did not start. ({ $told })
own-fail_tab = Open in its own browser tab
own-fail_else = You can measure by touch, or with a silent count.

own-refused-gap = Pictures are missing.
own-refused-too_dark = Too dark.
own-refused-too_bright = Too bright.
own-refused-no_finger = No finger, or it left the lens.
own-refused-moving = The light changes too much: the finger or the camera moves.
own-refused-weak = The pulse is too small to read.
own-refused-unsteady = The beats cannot be told apart well enough.
own-refused-disagree = Two ways to read it do not agree.
own-refused-unknown = no heart rate ({ $code })

own-list_title = What you measured
own-list_none = Nothing yet. Measure twice, or in two ways, and see if they agree.
own-list_one = Measure once more, or in another way, and see if they agree.
own-list_touch = By touch, { $s } s
own-list_count = Silent count, { $s } s
own-list_camera = By camera, { $s } s
own-compare_within = The last two are { $d } beats/min apart. Each of them may be off, and together by more than this: they agree.
own-compare_beyond = The last two are { $d } beats/min apart. That is more than both may be off. A heart rate changes, and a count can be wrong. Measure again.
