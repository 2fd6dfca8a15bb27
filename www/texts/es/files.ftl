### Archivos: un registro o la tira guardados, las notas que venían con un registro.

save-title = Guardar
save-take = Guardar registro en
save-strip = tira en
save-csv = CSV
    .long = Guardar registro en CSV
save-edf = EDF+
    .long = Guardar registro en EDF+
save-wfdb = WFDB
    .long = Guardar registro en WFDB
save-png = PNG
    .long = Guardar tira en PNG
save-svg = SVG
    .long = Guardar tira en SVG

take-file = dicrotic-registro-{ $v }
strip-file = dicrotic-tira-{ $v }

notes-list = Notas que venían con el archivo
notes-one = { $s }: { $text }
notes-long = { $s }, durante { $length }: { $text }
