### Files: a take or the strip saved, the notes that came with a recording.

save-title = Save
save-take = Save recording as
save-strip = trace as
save-as_shown = Files and pictures are saved as shown: { $ways }.
save-csv = CSV
    .long = Save recording as CSV
save-edf = EDF+
    .long = Save recording as EDF+
save-wfdb = WFDB
    .long = Save recording as WFDB
save-png = PNG
    .long = Save trace as PNG
save-svg = SVG
    .long = Save trace as SVG

take-file = dicrotic-recording-{ $v }
strip-file = dicrotic-trace-{ $v }

notes-list = Notes that came with the file
notes-one = { $s }: { $text }
notes-long = { $s }, for { $length }: { $text }
