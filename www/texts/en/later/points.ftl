### The rows and points of the rubric.

rubric-setup = Set-up and checks
rubric-signal = The signal
rubric-faults = Dealing with faults
rubric-recording = Recording
rubric-measurement = Measuring
rubric-uncertainty = Uncertainty
rubric-safety = Safety and consent

rubric-point-linked = The computer sees the unit, and a take was made
rubric-point-socket = The pad is in the input that is shown
rubric-point-strap = The strap is snug, neither loose nor tight
rubric-point-size = The pulse fills a good part of the range
rubric-point-hum = Hum is under a tenth of the pulse
rubric-point-unclipped = Nothing is cut off
rubric-point-calm = The subject and the sensor kept still in the window
rubric-point-view = 5 to 30 s on the screen, 100 samples a second or more
rubric-point-named = What was wrong is named
rubric-point-tested = A test showed what was wrong
rubric-point-one_change = One change at a time
rubric-point-mended = The cause is gone
rubric-point-long = The take is long enough
rubric-point-clean_window = A clean window, long enough
rubric-point-exact_count = Every beat in it counted once
rubric-point-intervals_counted = The intervals from A to B counted right
rubric-point-units = The time read right, in seconds
rubric-point-formula = 60 × N / T
rubric-point-rate_worked = 60 × n / Δt
rubric-point-range_read = The range read right
rubric-point-height_read = The height read right
rubric-point-uncertainty = An uncertainty that the window supports
rubric-point-middle_read = The time of the window’s middle right
rubric-point-told = What was seen told to the instructor
rubric-point-caution = The caution read and agreed to
