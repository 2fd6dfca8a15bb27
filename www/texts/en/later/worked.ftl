### The worked example: the narrator's own words.

narrator-title = Worked example
narrator-begin = Watch how it is done on this bench. Everything is real: the plugs, the strip, the blanks.
narrator-pause = Pause
narrator-go_on = Go on
narrator-next = Next step
narrator-faster = Faster
narrator-speed = { $n } times as fast
narrator-stop = Stop and try yourself
narrator-now_you = Now you
narrator-ended = That was the whole of it.
narrator-ended_why = The same bench waits for you, with another heart.
worked-waiting = The paper runs: { $s } to go.
