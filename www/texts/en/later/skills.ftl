### The skill map.

skills-title = Skill map
skills-lede = Twelve skills of the bench. A skill is ready after two passes in a row with different seeds, and comes due again after some days.
skills-next = Next
skills-all_ready = All twelve are ready
skills-go = Take “{ $title }”
skills-why-new = { $skill }: not met yet.
skills-why-practising = { $skill }: the last try did not hold.
skills-why-once = { $skill }: it held once. With another seed it would be ready.
skills-why-due = { $skill }: it is some days since it held. See whether it still does.
skills-ready_title = Ready for the lab
skills-ready_yes = Ready: sixteen of twenty or more, { $n } times in a row, on different seeds.
skills-ready_no = { $n } of { $need } benches scored 16 of 20 or more, on different seeds, without help.
skills-state-new = not met yet
skills-state-practising = in practice
skills-state-once = held once
skills-state-ready = ready
skills-state-due = due again
skills-retest = Come back between { $from } and { $to }.
skills-retest_due = Due since { $from }; best before { $to }.
skills-evidence = Evidence: held { $passes }, open { $fails }
skills-got-pass = held:
skills-got-fail = open:
skills-kept = The map rests on the attempts that are kept on this device, and on nothing else.
skills-json = Export as JSON
skills-drop = Forget all attempts
skills-dropped = { $n ->
    [one] One attempt forgotten.
   *[other] { $n } attempts forgotten.
}

skill-wiring = Wiring
    .about = Every plug in the socket where it belongs.
skill-link = Link
    .about = Getting the computer to see the unit.
skill-contact = Contact
    .about = Strap, pad and hand, so that a pulse arrives.
skill-range = Range
    .about = A pulse that fills the screen and is not cut.
skill-time_base = Time base
    .about = Beats drawn neither too narrow nor too wide.
skill-hum = Hum
    .about = Finding where fuzz comes from, and taking it away there.
skill-motion = Motion
    .about = Telling a restless hand from a heart.
skill-recording = Recording
    .about = A take that is long enough, and one’s own.
skill-window = Window
    .about = A and B around a stretch that can be trusted.
skill-counting = Counting
    .about = Each beat once, from A to B.
skill-arithmetic = Arithmetic
    .about = From N and T to beats a minute.
skill-uncertainty = Uncertainty
    .about = How far the rate can be trusted.
