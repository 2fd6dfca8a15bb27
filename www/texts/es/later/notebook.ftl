### El cuaderno y el informe impreso.

notebook-title = Cuaderno
notebook-lede = Cada ensayo que has comprobado, el último primero. Se guarda en este dispositivo y en ningún otro sitio.
notebook-none = Aún no hay ensayos. Al comprobar una lectura se hace una página.
notebook-begin = Elegir una mesa
notebook-attempts = Intentos guardados
notebook-attempt = de { $when }
notebook-attempt_try = intento { $n }, de { $when }
notebook-json = Exportar en JSON
notebook-csv = Exportar en CSV
notebook-drop_all = Borrar todas las páginas
notebook-drop = Borrar
notebook-drop_one = Borrar: { $title }, { $when }
notebook-dropped = { $n ->
    [one] Una página borrada.
   *[other] { $n } páginas borradas.
}
notebook-put_back = Devolver
notebook-is_back = Devuelto.
notebook-not_kept = No se pudo guardar: el almacenamiento del dispositivo está lleno o desactivado.
notebook-note = Notas
notebook-picture = La tira de este ensayo, con los cursores A y B y las marcas de latido
notebook-no_picture = Con este ensayo no se guardó ninguna tira.
notebook-report = Informe
notebook-open = Abrir esta mesa

page-passed = { $n ->
    [one] Se sostuvo en la primera comprobación.
   *[other] Se sostuvo en la comprobación { $n }.
}
page-open = Primer paso abierto en la comprobación { $n }: { $step }.
page-closed = Cerrado sin una lectura que se sostenga.
page-hints = { $n ->
    [one] Una pista.
   *[other] { $n } pistas.
}
page-band = un latido más o menos
page-band_value = de { $low } a { $high } latidos/min
page-rubric = rúbrica { $got } de { $of }

field-unit-count = latidos
field-unit-seconds = s
field-unit-rate = latidos/min
field-unit-uncertainty = latidos/min
field-unit-middle = s
field-unit-range = mV
field-unit-amplitude = mV
field-unit-count_1 = latidos
field-unit-seconds_1 = s
field-unit-rate_1 = latidos/min

report-print = Imprimir
report-none = En este dispositivo no hay página de este ensayo.
report-from = Ensayo en la mesa de prácticas
report-when = Cuándo
report-seed = Semilla
report-settings = Ajustes
report-take = Registro
report-take_value = { $v }, { $s } s, etiqueta: { $label }
report-help = Modo
report-name = Nombre
report-name_line = ____________________________
report-caption = La ventana de A a B, con los latidos marcados. Debajo, los segundos.
report-caption_truth = La ventana de A a B: arriba, los latidos marcados; abajo, los latidos de la propia mesa. Debajo, los segundos.
report-caption_detector = La ventana de A a B: arriba, los latidos marcados; abajo, los latidos que encuentra el detector. Debajo, los segundos.
report-read = Lo que se leyó
report-named = Se nombró: { $list }.
report-steps = Paso a paso
report-truth = Frecuencias, latidos/min
report-rate_own = la leída
report-rate_window = esta ventana, verdadera
report-rate_record = registro entero, verdadera
report-rate_window_detector = esta ventana, según el detector
report-rate_record_detector = registro entero, según el detector
report-others = Otras { $n } ventanas de esta duración en el mismo registro: nueve de cada diez dan de { $low } a { $high } latidos/min.
report-rubric = Rúbrica previa a la práctica: { $got } de { $of }
report-rubric_part = Esta mesa pide solo estas filas; sus puntos se llevan a 20.
report-note = Notas
report-hash = Balance { $hash }
