### Archivos: un registro o la tira guardados, las notas que venían con un registro.

save-title = Guardar
save-take = Guardar grabación en
save-strip = trazo en
save-as_shown = Los archivos y las imágenes se guardan tal como se muestran: { $ways }.
save-csv = CSV
    .long = Guardar grabación en CSV
save-edf = EDF+
    .long = Guardar grabación en EDF+
save-wfdb = WFDB
    .long = Guardar grabación en WFDB
save-png = PNG
    .long = Guardar trazo en PNG
save-svg = SVG
    .long = Guardar trazo en SVG

take-file = dicrotic-grabacion-{ $v }
strip-file = dicrotic-trazo-{ $v }

notes-list = Notas que venían con el archivo
notes-one = { $s }: { $text }
notes-long = { $s }, durante { $length }: { $text }
