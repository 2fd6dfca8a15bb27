### The worked example: the narrator's own words.

narrator-title = Worked example
narrator-begin = Watch how it is done here. Everything is real: the plugs, the trace, the blanks.
narrator-pause = Pause the example
narrator-go_on = Continue
narrator-next = Next step
narrator-faster = Faster
narrator-speed = { $n } times as fast
narrator-stop = Stop and do it yourself
narrator-now_you = Your turn
narrator-ended = That was the whole example.
narrator-ended_why = The same equipment is ready for you, with another heart.
worked-waiting = The trace is running: { $s } to go.
