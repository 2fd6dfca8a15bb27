### What goes on paper.

paper-title = On paper
paper-lede = Sheets for “{ $title }”, the bench that you set last on this device. Choose them, look at them, print them.
paper-handout = Handout
paper-worksheet = Worksheet
paper-station = Station checklist
paper-key = Key
paper-print = Print
paper-change = Change the bench
paper-foot = For teaching, not for diagnosis. Your local codes and your institution’s rules come first.

paper-scan = Scan the square, or open the link that your instructor gave you.
paper-points = What it is scored for
paper-how = How to go about it
paper-how_open = Open the link. It needs no account, and nothing leaves your device unless you hand it in.
paper-how_code = Type your code, the one that your instructor knows.
paper-how_tries = { $n ->
    [one] You have one try.
   *[other] You have { $n } tries.
    }
paper-how_hand = When you are done, save the result file or copy the code, and hand it in as you were told.
paper-code = My code
paper-due = Hand in by

paper-name = Name
paper-partner = Partner
paper-date = Date
paper-station_no = Station
paper-settings = How the recorder was set
paper-range = Range, ± mV
paper-base = Time base, s a screen
paper-rate = Samples a second
paper-finger = Hand and finger
paper-strip = The trace
paper-grid = Draw or paste the trace here. Write the time and the height of one square beside it. Mark A, B and the peaks.
paper-reading = What was read
paper-work = Show how you worked it out:
paper-found = What was wrong, and what was done
paper-saw = What the trace showed
paper-did = What we changed, one thing at a time
paper-then = What the trace did then
paper-seen_by = Seen by

paper-mains = For mains of { $volts } V, { $hz } Hz
paper-by = Checked by
paper-before = Before the class
paper-before_lead = All leads and plugs are whole: no bare wire, no crack, no loose pin. Remove what is damaged and report it.
paper-before_unit = The recorder is plugged into the power strip, the power strip into the wall outlet, and the recorder’s light is on.
paper-before_seen = The data lead is in the computer, and the program sees the unit.
paper-before_input = The sensor is in the input that the program shows.
paper-before_sensor = Sensor and strap are clean and dry. The strap holds.
paper-before_away = Charger, telephone and lamp are half a meter or more away from the sensor cable.
paper-before_strip = The sensor cable does not run along the power strip. No lead lies where feet go; no drink stands on the table.
paper-before_set = The range and the time base are those of the worksheet.
paper-before_try = One good trace was seen here today: pulse over a third of the screen, no fuzz, no flat tops.
paper-before_spare = A spare sensor and a spare strap are at hand.
paper-pair = With each pair
paper-pair_ask = The person with the sensor was asked and said yes. They may stop at any time, without a reason.
paper-pair_finger = The finger is warm, without a ring, without a wound or a sore place.
paper-pair_loosen = A strap that numbs or darkens the finger is loosened at once.
paper-pair_still = The hand lies on the table and rests while the recording runs.
paper-pair_uneven = An uneven pulse is told to the instructor. Nobody in the room says what it means.
paper-pair_stop = Whoever feels unwell lies or sits down, and the instructor is called.
paper-end = At the end
paper-end_saved = The recording is saved where your institution wants it, without names.
paper-end_clean = Sensor and strap are cleaned as your institution’s rules say.
paper-end_off = The unit is off, the leads are laid by.
paper-end_told = What was broken is written down and told.

paper-key_about = For whoever teaches; not to hand out.
paper-key_none = Nothing is wrong with this bench.
paper-key_severity = Strength: { $v } %.
paper-key_severities = Strength: { $low } to { $high } %, by the student’s number.
paper-key_misreadings = Your own misreadings
paper-key_misreading = { $field } = { $formula }: { $words }
paper-key_reading = The reading
paper-key_own = Each student’s bench has a heart of its own. The count is judged in the student’s own window.
paper-key_edge = A beat on a cursor may be counted or not. One beat more or less in { $s } s is { $v } beats/min.
paper-key_true = The true rates, with seeds and severities, come with the answer key of “Class results”, behind your word.
