### Después de comprobar: pistas, el curso del intento, la dispersión de las ventanas, la rúbrica.

after-report = Informe para imprimir
after-skills = Mapa de destrezas

hint-look_at = mirar: { $place }
hint-other_socket = otro conector para: { $end }
hint-move = mover: { $part }
hint-switch = el interruptor: { $id }
hint-do-answer = otro número en el espacio en blanco
hint-do-buffered = el búfer de la entrada puesto o quitado
hint-do-charger = enchufar o desenchufar el cargador
hint-do-cursor = los tiempos de los dos cursores
hint-do-hand_height = la mano más alta o más baja
hint-do-high_pass = otro filtro de paso alto
hint-do-input = otra entrada
hint-do-invert = invertir el trazo
hint-do-low_pass = otro filtro de paso bajo
hint-do-notch = el filtro de banda estrecha, encendido o apagado
hint-do-open_recording = abrir la grabación
hint-do-other_hand = otro sitio para la otra mano
hint-do-sensor_place = otro sitio en el dedo
hint-do-range = otro rango
hint-do-rate = otra frecuencia de muestreo
hint-do-scale = la escala de valores
hint-do-scroll = recorrer la grabación
hint-do-show = volver a «En vivo»
hint-do-shown = el trazo, visible o no
hint-do-zero = poner el trazo a cero
hint-do-bits = otro número de bits
hint-do-manoeuvre = que el sujeto haga algo o repose
hint-do-record = una grabación
hint-do-strap = la correa más apretada o más floja
hint-do-time_base = otra base de tiempo
hint-try = Prueba: { $what }.
hint-nothing_wrong = Aquí no falla nada.

hints-title = Pistas
hints-first = Una pista
hints-more = Otra pista
hints-rung-look = mirar
hints-rung-locate = localizar
hints-rung-rule = regla
hints-rung-worked = paso resuelto
hints-rung-answer = respuesta
hints-after_next = Antes, inténtalo otra vez. Ves la respuesta solo después de una segunda comprobación.
hints-end = Esa era la última pista.

trail-title = Lo que hiciste, paso a paso
trail-hint = Con las flechas vas de acción en acción. Las pausas largas se dibujan cortas.
trail-list = Como lista
trail-before = El paso anterior
trail-next = El paso siguiente
trail-to_wrong = Al primer paso equivocado
trail-times = { $text } ({ $n } veces)
trail-wrong = «{ $step }» falló aquí por primera vez.
trail-lane-bench = mesa
trail-lane-settings = ajustes
trail-lane-record = grabación
trail-lane-measure = medida
trail-lane-check = comprobar

deed-unknown = { $deed }
deed-plug = { $end }: conectado a { $socket }.
deed-unplug = { $end }: desconectado.
deed-switch = { $on ->
    [true] Se encendió: { $id }.
   *[other] Se apagó: { $id }.
}
deed-move = Se movió: { $part }.
deed-charger = { $on ->
    [true] Se enchufó el cargador.
   *[other] Se desenchufó el cargador.
}
deed-strap_on = Se sujetó el sensor con la correa.
deed-strap_off = Se quitó la correa.
deed-strap = Correa al { $percent } %.
deed-sensor_place = El sensor pasó a { $place }.
deed-sensor_side = Lado sensible vuelto { $face }.
deed-hand_height = Mano a { $cm } cm de la altura del corazón.
deed-rescan = La computadora buscó otra vez.
deed-tap_sensor = Se golpeó el sensor.
deed-ask_still = Se pidió al sujeto que no se moviera.
deed-ask_quiet = Se pidió silencio.
deed-ask_finger = Se preguntó cómo se nota el dedo.
deed-press_finger = Se presionó el dedo.
deed-wiggle = Se meneó la clavija: { $end }.
deed-swap_cable = Se tomó otro cable del sensor.
deed-rest_arm = Se puso el brazo en un cojín.
deed-push_up_sleeve = Se subió la manga.
deed-dry_plug = Se limpió la clavija del sensor.
deed-wipe_sensor = Se limpió el sensor.
deed-close_programs = Se cerraron otros programas.
deed-tell_instructor = Se avisó al docente.
deed-look = Se miró: { $place }.
deed-shade = { $on ->
    [true] Se puso un paño sobre el dedo.
   *[other] Se quitó el paño del dedo.
}
deed-other_hand = La otra mano, { $on }.
deed-manoeuvre = Se pidió al sujeto que { $what }.
deed-input = Se mostró la entrada { $n }.
deed-range = Rango { $v }.
deed-time_base = Base de tiempo { $s } por pantalla.
deed-zero = Se puso el trazo a cero.
deed-zero_clear = Se deshizo el cero.
deed-invert = { $on ->
    [true] Se invirtió el trazo.
   *[other] El trazo ya no está invertido.
}
deed-high_pass = Filtro de paso alto: { $hz }.
deed-low_pass = Filtro de paso bajo: { $hz }.
deed-notch = Filtro de banda estrecha: { $hz }.
deed-average = Promediado: { $ms }.
deed-anti_alias = { $on ->
    [true] Filtro antialias puesto.
   *[other] Filtro antialias quitado.
}
deed-buffered = { $on ->
    [true] Búfer de la entrada puesto.
   *[other] Búfer de la entrada quitado.
}
deed-calibrator = { $on ->
    [true] Calibrador puesto.
   *[other] Calibrador quitado.
}
deed-integral = { $on ->
    [true] Se muestra la integral.
   *[other] Ya no se muestra la integral.
}
deed-consent = { $on ->
    [true] Los resultados se pueden usar en el estudio.
   *[other] Los resultados no se pueden usar en el estudio.
}
deed-let_pass = Espera de { $n } min.
deed-rate = Frecuencia de muestreo { $hz }.
deed-bits = Resolución de { $n } bits.
deed-scale = Escala de valores ×{ $by }.
deed-shown = { $on ->
    [true] Trazo dibujado.
   *[other] Trazo sin dibujar.
}
deed-show = Trazo puesto en: { $mode }.
deed-record = Empezó la grabación.
deed-stop = Terminó la grabación.
deed-open_recording = Se abrió la grabación { $recording }.
deed-scroll = Se recorrió el trazo.
deed-zoom = Se amplió, de { $from } a { $to }.
deed-zoom_out = Se alejó.
deed-cursor = Cursor { $which } a { $t }.
deed-mark = Latido marcado en { $t }.
deed-unmark = Marca quitada cerca de { $t }.
deed-marks_clear = Se borraron todas las marcas.
deed-another_window = Se eligió otra ventana de conteo.
deed-snap = { $on ->
    [true] Ajuste a los picos puesto.
   *[other] Ajuste a los picos quitado.
}
deed-answer = Se escribió: { $field } = { $text }.
deed-keep_window = Guardada como ventana de conteo 1.
deed-keep_clear = Ventana de conteo 1 borrada.
deed-name = Nombrado: { $fault }.
deed-unname = Quitado: { $fault }.
deed-label = Etiqueta de la grabación { $recording }: «{ $text }».
deed-agree = Advertencia leída.
deed-check = Se comprobó.
deed-reveal = Se mostraron los valores verdaderos.
deed-hint = Se pidió una pista.
deed-help = Escenario empezado: { $mode }.

spread-title = Qué incertidumbre tiene una frecuencia cardíaca de esta ventana de conteo
spread-band = { $n } latidos en { $s }: { $rate } latidos/min. Con un latido menos o uno más son { $low } o { $high }. Cada latido la cambia en { $one }.
spread-later = Lo que dan otras ventanas de conteo de esta grabación lo ves con los valores verdaderos.
spread-others = En la misma grabación se contaron otras { $n } ventanas de conteo de { $s }. Nueve de cada diez dan { $rates } latidos/min. Cada punto es una de ellas.
spread-picture = La incertidumbre de tu ventana de conteo, y lo que dan otras de la misma grabación
spread-own = lo contado
spread-record = grabación entera
spread-unit = latidos/min

rubric-title = La rúbrica previa a la práctica
rubric-total = { $got } de { $of }
rubric-ready = Listo con esta semilla. Hazlo otra vez con otra semilla.
rubric-bar_check = Aún no: no aprobaste la comprobación.
rubric-bar_shown = Aún no: viste la respuesta. Empieza con otra semilla.
rubric-bar_help = Una parte ya estaba hecha. Para estar listo, hazlo todo tú, con otra semilla.
rubric-bar_row = Aún no: ningún punto por { $list }.
rubric-bar_points = Aún no: hacen falta 16 puntos.
rubric-not_scored = Lo miraste, así que no hay puntos. Los puntos son por lo que haces tú.
rubric-of = { $got } / { $of }
rubric-left_out = Este intento no incluye: { $list }. El resto cuenta como 20.
rubric-see = Mostrar
rubric-is_got = correcto: 
rubric-is_open = sin hacer: 
rubric-rests = mira: { $on }

field-count = N
field-seconds = T
field-multiplier = multiplicador
field-rate = frecuencia cardíaca
field-uncertainty = incertidumbre
field-middle = centro
field-range = rango
field-amplitude = del pie al pico
field-count_1 = N, ventana de conteo 1
field-seconds_1 = T, ventana de conteo 1
field-rate_1 = frecuencia cardíaca, ventana de conteo 1
help-mode-shown = después de mirar
help-mode-half = hecho a medias
help-mode-alone = por tu cuenta
deed-predict = Se dijo qué se espera.
deed-add_row = Se añadió A a B a la tabla.
deed-row_note = Se escribió una nota en la tabla.
deed-remove_row = Se quitó una fila de la tabla.
deed-conclude = Se dijo qué muestra la tabla.
asked_to-breathe = respire { $n } veces por minuto
asked_to-exercise = suba y baje un escalón durante { $n } min
