### One line for each control: what it does, and its unit.

explain-all = What each one does

explain-time_base = How many seconds one screen shows. Longer shows more beats; shorter shows each beat in more detail.
explain-range = How far the screen goes above and below zero, plus or minus, in volts. A smaller range makes the trace taller.
explain-range_shown = How far the screen goes above and below zero, in the unit of the file. The whole height shows all of the recording.
explain-zero = Makes the voltage of this moment, in volts, the middle of the screen.
explain-zero_shown = Makes the mean value on the screen the middle of the screen.
explain-invert = Turns the trace upside down, for a pulse that points the wrong way.
explain-shown = Hides the trace or shows it again. The samples do not change.
explain-high_pass = Removes what is slower than this many hertz, such as drift and breath. If it is high, the wave changes its shape.
explain-low_pass = Removes what is faster than this many hertz, such as noise. If it is low, the dicrotic notch is lost too.
explain-order = How strongly a filter cuts. At ten times the frequency, first order leaves a tenth and second order leaves a hundredth.
explain-notch = Removes one narrow band around the power-line frequency, in hertz. It hides hum; it does not fix the cause.
explain-average = Replaces each sample with the mean of this many milliseconds.
explain-integral = Shows the running integral: the sum of the signal over time. It makes a pulse out of a slope pulse. A wave of 1 Hz keeps its height.
explain-buffered = With the buffer the input impedance is high: the sensor keeps its charge, and the trace is a volume pulse. A plain input of one megohm can make a slope pulse of it.
explain-calibrator = Puts a known square wave on the input: 10 mV high, once per second. Use it to check the range, the time base and what a filter does to a step.
explain-input = Which of the recorder’s inputs the trace shows.
explain-rate = How many samples per second the converter takes, in hertz. With too few, fast waves look like slow ones.
explain-bits = How many levels the full range has: 2 to the power of this many bits.
explain-anti_alias = Removes what is too fast for the sampling rate, before it can look like something slow.
explain-scale = Multiplies the shown values. ×10 and ×1000 are for sensors with their own amplifier.

explain-end = Each plug, and the socket that it is in. The button beside it wiggles the plug.
explain-wait = Waits at once. Use it when something takes minutes: a cold finger that gets warm, or a heart rate after exercise.
explain-strap_on = Whether the sensor is strapped on the fingertip.
explain-tightness = How hard the strap presses, from loose to tight. Too loose gives a small pulse; too tight stops the blood.
explain-place = Where on the finger the sensor is. The soft part of the fingertip has the most blood vessels.
explain-face = Which side of the sensor touches the skin. Only the sensing side measures.
explain-height = How far the hand is above or below the heart, in centimeters. The pressure in the finger changes with it.
explain-ask = Something that the subject does for you. The pulse needs some time to change.
explain-switch_power_strip = Power for everything that is plugged into the power strip.
explain-switch_recorder = Power for the recorder, if its power cord is in an outlet that has power.
explain-charger = The computer’s charger, in the power strip or out of it. It causes hum while it is plugged in.
explain-lamp = Turns the desk lamp on or off. Light sensors see its light, and its cord causes hum.
explain-move = Moves a thing on the table, in centimeters from the left edge and from the far edge.
