### Files: a take or the strip saved, the notes that came with a recording.

save-title = Save
save-take = Save take as
save-strip = strip as
save-csv = CSV
    .long = Save take as CSV
save-edf = EDF+
    .long = Save take as EDF+
save-wfdb = WFDB
    .long = Save take as WFDB
save-png = PNG
    .long = Save strip as PNG
save-svg = SVG
    .long = Save strip as SVG

take-file = dicrotic-take-{ $v }
strip-file = dicrotic-strip-{ $v }

notes-list = Notes that came with the file
notes-one = { $s }: { $text }
notes-long = { $s }, for { $length }: { $text }
