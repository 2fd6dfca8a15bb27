### The rows and points of the rubric.

rubric-setup = Set-up and checks
rubric-signal = The signal
rubric-faults = Faults
rubric-recording = Recording
rubric-measurement = Measuring
rubric-uncertainty = Uncertainty
rubric-safety = Safety and consent

rubric-point-linked = Recorder seen, recording made
rubric-point-socket = The sensor is in the shown input
rubric-point-strap = The strap fits well
rubric-point-size = The pulse fills a good part of the range
rubric-point-hum = Hum is under a tenth of the pulse
rubric-point-unclipped = Nothing is cut off
rubric-point-calm = Subject and sensor kept still
rubric-point-view = 5 to 30 s shown, ≥ 100 samples/s
rubric-point-named = You named what was wrong
rubric-point-tested = A test showed what was wrong
rubric-point-one_change = One change at a time
rubric-point-mended = The cause is gone
rubric-point-long = The recording is long enough
rubric-point-clean_window = A clean counting window, long enough
rubric-point-exact_count = You counted every beat in it once
rubric-point-intervals_counted = You counted the beat intervals from A to B correctly
rubric-point-units = You read the time in seconds
rubric-point-formula = 60 × N / T
rubric-point-rate_worked = 60 × n / Δt
rubric-point-range_read = You read the range correctly
rubric-point-height_read = You read the height correctly
rubric-point-uncertainty = An uncertainty that fits
rubric-point-middle_read = The time of the middle is correct
rubric-point-told = You told the instructor what you saw
rubric-point-caution = You agreed to the caution, before you put the sensor on
