### Files: a take or the strip saved, the notes that came with a recording.

save-title = Save
save-take = Save take as
save-strip = strip as
save-csv = CSV
    .long = Save take as CSV, a table with its notes under it
save-edf = EDF+
    .long = Save take as EDF+, with annotations
save-wfdb = WFDB
    .long = Save take as a WFDB record with annotations, in one archive
save-png = PNG
    .long = Save strip as PNG, a picture of dots
save-svg = SVG
    .long = Save strip as SVG, a drawing that stays sharp

take-file = dicrotic-take-{ $v }
strip-file = dicrotic-strip-{ $v }

notes-list = Notes that came with the file
notes-one = { $s }: { $text }
notes-long = { $s }, for { $length }: { $text }
