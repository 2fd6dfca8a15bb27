### One line for each control: what it does, and its unit.

explain-all = What each one does

explain-time_base = How many seconds one screen is wide: longer shows more beats, shorter shows each in more detail.
explain-range = How far the screen reaches above and below zero, plus or minus so many volts: smaller makes the trace taller.
explain-zero = Takes the voltage of this moment, in volts, as the middle of the screen.
explain-invert = Turns the trace upside down, for a pulse that points the wrong way.
explain-shown = Takes the trace off the screen or brings it back; the samples are not touched.
explain-high_pass = Takes away what is slower than this many hertz: drift and breath go, and the wave's shape with them if it is set high.
explain-low_pass = Takes away what is faster than this many hertz: fuzz goes, and the notch with it if it is set low.
explain-order = How steeply a filter cuts: first order falls to a tenth for ten times the frequency, second order to a hundredth.
explain-notch = Takes away one narrow band round the mains frequency, in hertz. It hides hum; it does not mend its cause.
explain-average = Puts the mean of so many milliseconds in the place of each sample.
explain-input = Which of the unit's three inputs the strip shows.
explain-rate = How many samples a second the converter takes, in hertz. Too few, and fast waves come out as slow ones.
explain-bits = Into how many steps the way from minus to plus full scale is cut: 2 to the power of this many bits.
explain-anti_alias = Takes away what is too fast for the sampling rate before it can come out as something slow.
explain-scale = Multiplies the shown values; ×10 and ×1000 are for sensors with an amplifier of their own.

explain-end = Each plug with the socket that it is in. The button beside it wiggles the plug.
explain-strap_on = Whether the pad is strapped on the fingertip.
explain-tightness = How hard the strap presses the pad on, from loose to tight. Too loose gives little pulse; too tight stops the blood.
explain-place = Where along the finger the pad sits. The pulp of the fingertip has the richest bed of vessels.
explain-face = Which face of the pad lies on the skin. Only one of them feels.
explain-height = How far the hand lies above or below the heart, in centimeters. Pressure in the finger changes with it.
explain-ask = Something that the subject does for you; the pulse answers in its own time.
explain-switch_strip = Power for everything that is plugged into the power strip.
explain-switch_unit = Power for the recorder unit, if its mains lead reaches a live socket.
explain-charger = The computer’s charger in the power strip or out of it. It radiates hum while it is in.
explain-lamp = The desk lamp on or off. Light pads see it, and its lead radiates hum.
explain-move = Puts a part of the table to another place, in centimeters from the left edge and from the far edge.
