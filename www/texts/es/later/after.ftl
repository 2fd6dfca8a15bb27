### Después de comprobar: pistas, el curso del intento, la dispersión de las ventanas, la rúbrica.

after-report = Informe para imprimir
after-skills = Mapa de destrezas

hint-look_at = mirar: { $place }
hint-other_socket = otra toma para: { $end }
hint-move = mover: { $part }
hint-switch = el interruptor: { $id }
hint-do-answer = otro número en el hueco
hint-do-charger = enchufar o quitar el cargador
hint-do-cursor = los tiempos de los dos cursores
hint-do-hand_height = la mano más alta o más baja
hint-do-high_pass = otro filtro paso alto
hint-do-input = otra entrada
hint-do-invert = la polaridad
hint-do-low_pass = otro filtro paso bajo
hint-do-notch = el filtro de red, puesto o quitado
hint-do-open_take = abrir el registro
hint-do-other_hand = otro sitio para la otra mano
hint-do-pad_place = otro sitio en el dedo
hint-do-range = otro rango
hint-do-rate = otra frecuencia de muestreo
hint-do-scale = la escala de valores
hint-do-scroll = recorrer el registro
hint-do-show = otra vez en directo
hint-do-shown = el trazo, visible o no
hint-do-zero = poner el trazo a cero
hint-do-time_base = otra base de tiempo
hint-try = Prueba: { $what }.
hint-nothing_wrong = En esta mesa no falla nada.

hints-title = Pistas
hints-first = Una pista
hints-more = Otra pista
hints-rung-look = mirar
hints-rung-locate = localizar
hints-rung-rule = regla
hints-rung-worked = paso resuelto
hints-rung-answer = respuesta
hints-after_next = Antes, inténtalo otra vez: la respuesta solo se dice después de una segunda comprobación.
hints-end = Ese era el último peldaño.

trail-title = El curso del intento
trail-hint = Las flechas van de raya en raya. Las pausas largas se dibujan cortas.
trail-list = Como lista
trail-before = El paso anterior
trail-next = El paso siguiente
trail-to_wrong = Al primer paso equivocado
trail-times = { $text } ({ $n } veces)
trail-wrong = Aquí falló por primera vez «{ $step }».
trail-lane-bench = mesa
trail-lane-settings = ajustes
trail-lane-record = registro
trail-lane-measure = medida
trail-lane-check = balance

deed-unknown = { $deed }
deed-plug = { $end }, conectado: { $socket }.
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
deed-pad_place = El sensor pasó a { $place }.
deed-pad_face = Cara activa vuelta { $face }.
deed-hand_height = Mano a { $cm } cm de la altura del corazón.
deed-rescan = Se buscó la unidad.
deed-tap_pad = Se golpeó el sensor.
deed-ask_still = Se pidió al sujeto que no se moviera.
deed-ask_quiet = Se pidió silencio.
deed-ask_finger = Se preguntó cómo se nota el dedo.
deed-press_finger = Se apretó el dedo.
deed-wiggle = Se movió la clavija: { $end }.
deed-swap_lead = Se tomó otro cable.
deed-rest_arm = Se apoyó el brazo en un cojín.
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
deed-zero = Se puso el cero.
deed-zero_clear = Se deshizo el cero.
deed-invert = { $on ->
    [true] Se invirtió la polaridad.
   *[other] Se devolvió la polaridad.
}
deed-high_pass = Paso alto: { $hz }.
deed-low_pass = Paso bajo: { $hz }.
deed-notch = Filtro de red: { $hz }.
deed-average = Promediado: { $ms }.
deed-anti_alias = { $on ->
    [true] Filtro antialias puesto.
   *[other] Filtro antialias quitado.
}
deed-rate = Frecuencia de muestreo { $hz }.
deed-bits = Resolución de { $n } bits.
deed-scale = Escala de valores ×{ $by }.
deed-shown = { $on ->
    [true] Trazo dibujado.
   *[other] Trazo sin dibujar.
}
deed-show = Tira puesta en: { $mode }.
deed-record = Empezó el registro.
deed-stop = Terminó el registro.
deed-open_take = Se abrió el registro { $take }.
deed-scroll = Se recorrió la tira.
deed-zoom = Se miró de cerca, de { $from } a { $to }.
deed-zoom_out = Se mostró todo otra vez.
deed-cursor = Cursor { $which } a { $t }.
deed-mark = Latido marcado en { $t }.
deed-unmark = Marca quitada cerca de { $t }.
deed-marks_clear = Se borraron todas las marcas.
deed-snap = { $on ->
    [true] Ajuste a los picos puesto.
   *[other] Ajuste a los picos quitado.
}
deed-answer = Se escribió: { $field } = { $text }.
deed-keep_window = Guardada como ventana 1.
deed-keep_clear = Ventana 1 olvidada.
deed-name = Nombrada: { $fault }.
deed-unname = Retirada: { $fault }.
deed-label = Etiqueta del registro { $take }: «{ $text }».
deed-agree = Advertencia leída.
deed-check = Se comprobó.
deed-reveal = Se mostró la verdad.
deed-hint = Se pidió una pista.
deed-help = Mesa tomada: { $mode }.

spread-title = Cuánto te puedes fiar de una ventana de esta duración
spread-band = { $n } latidos en { $s }: { $rate } latidos/min. Con un latido menos o uno más serían { $low } o { $high }; cada latido pesa { $one }.
spread-later = Lo que dan otras ventanas de este registro se muestra con la verdad.
spread-others = En el mismo registro se contaron otras { $n } ventanas de { $s }: nueve de cada diez dan de { $low } a { $high } latidos/min. Cada punto es una de ellas.
spread-picture = La banda de tu ventana, y lo que dan otras ventanas del mismo registro
spread-own = lo contado
spread-record = registro entero
spread-unit = latidos/min

rubric-title = La rúbrica previa a la práctica
rubric-total = { $got } de { $of }
rubric-ready = A punto, con esta semilla. Hacen falta dos.
rubric-bar_check = Todavía no: la comprobación no está aprobada.
rubric-bar_shown = Todavía no: se mostró la respuesta. Empieza con otra semilla.
rubric-bar_help = Una parte estaba hecha. Para estar listo, hazlo todo tú, con otra semilla.
rubric-bar_row = Todavía no: ningún punto por { $list }.
rubric-bar_points = Todavía no: hacen falta 16 puntos.
rubric-not_scored = Lo miraste, así que no hay puntos. Los puntos son por lo que haces tú.
rubric-of = { $got } / { $of }
rubric-left_out = Este intento no tiene: { $list }. El resto cuenta como 20.
rubric-see = Mostrar
rubric-is_got = logrado: 
rubric-is_open = abierto: 
rubric-rests = se apoya en: { $on }

field-count = N
field-seconds = T
field-multiplier = multiplicador
field-rate = frecuencia
field-uncertainty = incertidumbre
field-middle = centro
field-range = rango
field-amplitude = del pie al pico
field-count_1 = N, ventana 1
field-seconds_1 = T, ventana 1
field-rate_1 = frecuencia, ventana 1
help-mode-shown = después de verla hecha
help-mode-half = a medias
help-mode-alone = sin ayuda
