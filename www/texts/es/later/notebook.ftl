### El cuaderno y el informe impreso.

notebook-title = Cuaderno
notebook-lede = Cada intento que has comprobado, el último primero. Se guarda en este dispositivo y en ningún otro sitio.
notebook-none = Aún no hay intentos. Al comprobar una lectura se hace una página.
notebook-begin = Elegir un escenario
notebook-attempts = Intentos guardados
notebook-attempt = de { $when }
notebook-attempt_try = intento { $n }, de { $when }
notebook-json = Exportar en JSON
notebook-csv = Exportar en CSV
notebook-take = Leer un archivo del cuaderno
notebook-taken = Leído del archivo. Páginas: { $pages }. Intentos: { $attempts }.
notebook-take_unknown = Este archivo no es un cuaderno de esta página.
notebook-drop_all = Borrar todas las páginas
notebook-drop = Borrar
notebook-drop_one = Borrar: { $title }, { $when }
notebook-dropped = { $n ->
    [one] Una página borrada.
   *[other] { $n } páginas borradas.
}
notebook-put_back = Deshacer
notebook-is_back = La página ha vuelto.
notebook-not_kept = No se pudo guardar: el almacenamiento del dispositivo está lleno o desactivado.
notebook-note = Notas
notebook-picture = El trazo de este intento, con los cursores A y B y las marcas de latido
notebook-no_picture = Con este intento no se guardó ningún trazo.
notebook-report = Informe
notebook-open = Abrir este escenario

page-passed = { $n ->
    [one] Correcto en la primera comprobación.
   *[other] Correcto en la comprobación { $n }.
}
page-open = Primer paso que no es correcto en la comprobación { $n }: { $step }.
page-closed = Cerrado sin una lectura correcta.
page-hints = { $n ->
    [one] Una pista.
   *[other] { $n } pistas.
}
page-band = frecuencia cardíaca, un latido más o menos
page-rubric = puntos: { $got } de { $of }

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
report-none = En este dispositivo no hay página de este intento.
report-from = Intento con equipo simulado
report-when = Cuándo
report-seed = Semilla
report-settings = Ajustes
report-take = Grabación
report-recording_value = { $v }, { $s } s, etiqueta: { $label }
report-help = Modo
report-name = Nombre
report-name_line = ____________________________
report-caption = La ventana de conteo de A a B, con tus marcas de latido, si pusiste alguna. Debajo, los segundos.
report-caption_truth = La ventana de conteo de A a B. Arriba: tus marcas de latido, si pusiste alguna. Abajo: los latidos verdaderos. Debajo, los segundos.
report-caption_detector = La ventana de conteo de A a B. Arriba: tus marcas de latido, si pusiste alguna. Abajo: los latidos que encuentra el detector. Debajo, los segundos.
report-read = Lo que leíste
report-named = Se nombró: { $list }.
report-steps = Paso a paso
report-truth = Frecuencias cardíacas, latidos/min
report-rate_own = la leída
report-rate_band = esta ventana de conteo, un latido más o menos
report-rate_window = esta ventana de conteo, verdadera
report-rate_record = grabación entera, verdadera
report-rate_window_detector = esta ventana de conteo, según el detector
report-rate_record_detector = grabación entera, según el detector
report-others = Otras { $n } ventanas de conteo de esta duración en la misma grabación: nueve de cada diez dan { $rates } latidos/min.
report-rubric = Rúbrica previa a la práctica: { $got } de { $of }
report-rubric_part = Este escenario usa solo estas filas. Sus puntos se escalan a 20.
report-note = Notas
report-hash = Número de resultado { $hash }
