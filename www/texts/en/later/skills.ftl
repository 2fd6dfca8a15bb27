### The skill map.

skills-title = Skill map
skills-lede = Twelve skills of the lab. You have a skill after two passes in a row with different seeds. It is due again after some days.
skills-next = Next
skills-all_ready = All twelve are ready
skills-go = Start “{ $title }”
skills-why-new = { $skill }: not started.
skills-why-practising = { $skill }: the last attempt was not correct.
skills-why-once = { $skill }: it was correct once. Pass it again with another seed.
skills-why-due = { $skill }: your last pass was some days ago. See whether you still can.
skills-ready_title = Ready for the lab
skills-ready_yes = Ready: 16 of 20 points or more, { $n } times in a row, on different seeds.
skills-ready_no = { $n } of { $need } scenarios scored 16 of 20 or more, on different seeds, without help.
skills-state-new = not started
skills-state-practising = in practice
skills-state-once = correct once
skills-state-ready = ready
skills-state-due = due again
skills-retest = Come back between { $from } and { $to }.
skills-retest_due = Due since { $from }; best before { $to }.
skills-evidence = Evidence: correct { $passes }, not correct { $fails }
skills-got-pass = correct:
skills-got-fail = not correct:
skills-kept = The map uses only the attempts that are kept on this device.
skills-json = Export as JSON
skills-drop = Delete all attempts
skills-dropped = { $n ->
    [one] One attempt deleted.
   *[other] { $n } attempts deleted.
}

skill-wiring = Wiring
    .about = Put every plug in the right socket.
skill-link = Link
    .about = Get the computer to see the recorder.
skill-contact = Contact
    .about = Set strap, sensor and hand so that you get a pulse.
skill-range = Range
    .about = Make the pulse fill the screen, with nothing cut off.
skill-time_base = Time base
    .about = Draw the beats not too narrow and not too wide.
skill-hum = Hum
    .about = Find where noise comes from, and remove it there.
skill-motion = Motion
    .about = Tell a moving hand from a heart.
skill-recording = Recording
    .about = Make a recording that is long enough, and your own.
skill-window = Counting window
    .about = Put A and B around a part that you can trust.
skill-counting = Counting
    .about = Count each beat once, from A to B.
skill-arithmetic = Arithmetic
    .about = Get beats per minute from N and T.
skill-uncertainty = Uncertainty
    .about = Say how uncertain the heart rate is.
