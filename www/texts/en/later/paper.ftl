### What goes on paper.

paper-title = On paper
paper-lede = Sheets for “{ $title }”, the scenario that you assigned last on this device. Choose them, look at them, print them.
paper-handout = Handout
paper-worksheet = Worksheet
paper-station = Station checklist
paper-key = Instructor’s sheet
paper-print = Print
paper-change = Change the scenario
paper-foot = For teaching, not for diagnosis. Follow your local safety rules and your institution’s rules first.

paper-scan = Scan the square, or open the link from your instructor.
paper-points = How it is scored
paper-how = What to do
paper-how_open = Open the link. You need no account. Nothing leaves your device unless you submit it.
paper-how_code = Type your student ID.
paper-how_tries = { $n ->
    [one] You have one attempt.
   *[other] You have { $n } attempts.
    }
paper-how_hand = At the end, save the result file or copy the result code. Submit it as you were told.
paper-code = My student ID
paper-due = Submit by

paper-name = Name
paper-partner = Partner
paper-date = Date
paper-station_no = Station
paper-settings = Settings of the recorder
paper-range = Range, ± mV
paper-base = Time base, s per screen
paper-rate = Samples per second
paper-finger = Hand and finger
paper-strip = The trace
paper-grid = Draw or glue the trace here. Write the time and the height of one square beside it. Mark A, B and the peaks.
paper-reading = What you read
paper-work = Show how you calculated it:
paper-found = What was wrong, and what you did
paper-saw = What the trace showed
paper-did = What you changed, one thing at a time
paper-then = What the trace did then
paper-seen_by = Seen by

paper-power_line = For power of { $volts } V, { $hz } Hz
paper-by = Checked by
paper-before = Before the class
paper-before_cable = All cables and plugs are whole: no bare wire, no crack, no loose pin. Remove what is damaged and report it.
paper-before_unit = The recorder is plugged into the power strip, and the power strip into the wall outlet. The recorder’s indicator light is on.
paper-before_seen = The data cable is in the computer, and the program sees the recorder.
paper-before_input = The sensor is in the input that the program shows.
paper-before_sensor = Sensor and strap are clean and dry. The strap closes well.
paper-before_away = Charger, phone and desk lamp are half a meter or more away from the sensor cable.
paper-before_strip = The sensor cable does not run along the power strip. No cable is where people walk. There is no drink on the table.
paper-before_set = The range and the time base are those of the worksheet.
paper-before_try = One good trace was seen here today. The pulse fills a third of the screen or more, without noise or flat tops.
paper-before_spare = A spare sensor and a spare strap are at hand.
paper-pair = With each pair
paper-pair_ask = The person with the sensor was asked and said yes. They may stop at any time, without a reason.
paper-pair_finger = The finger is warm, without a ring and without a wound.
paper-pair_loosen = If the finger goes numb or dark, loosen the strap at once.
paper-pair_still = The hand rests on the table during the recording.
paper-pair_uneven = Tell the instructor about an uneven pulse. Nobody in the room says what it means.
paper-pair_stop = Who feels ill sits or lies down. Call the instructor.
paper-end = At the end
paper-end_saved = The recording is saved where your institution wants it, without names.
paper-end_clean = Sensor and strap are cleaned as your institution’s rules say.
paper-end_off = The recorder is off, and the cables are put away.
paper-end_told = What was broken is written down and reported.

paper-key_about = For instructors only. Do not give this to students.
paper-key_none = Nothing is wrong in this scenario.
paper-key_severity = Strength: { $v } %.
paper-key_severities = Strength: { $low } to { $high } %, different for each student.
paper-key_misreadings = Your own misreadings
paper-key_misreading = { $field } = { $formula }: { $words }
paper-key_reading = The reading
paper-key_own = Each student has their own heart. The count is judged in the student’s own counting window.
paper-key_edge = A beat on a cursor may be counted or not. One beat more or less in { $s } s is { $v } beats/min.
paper-key_true = The true heart rates, with seeds and strengths, come with the answer key of “Class results”. It needs your password.
