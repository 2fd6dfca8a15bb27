### Para docentes: preparar una mesa para una clase, y lo que la clase entregó.

assign-title = Preparar una mesa para una clase
assign-lede = Toma una mesa tal como es o cámbiala, mira qué encontrará un estudiante y compártela. Todo está en el enlace o en el archivo; no se envía nada a ningún sitio.
assign-load = Abrir un archivo de escenario
assign-scripts = { $n ->
    [one] { $file } contiene un intento con guion. Aquí no se guarda, porque la mesa puede cambiar. Tu archivo todavía lo tiene.
   *[other] { $file } contiene { $n } intentos con guion. Aquí no se guardan, porque la mesa puede cambiar. Tu archivo todavía los tiene.
}
assign-problem = Esta mesa aún no se puede usar. { $told }
assign-blank_title = Nuestra propia mesa
assign-blank_aim = Registra un pulso limpio, marca una ventana y saca de ella una frecuencia.
assign-blank_brief = La mesa está conectada y el sensor puesto. Mira primero la tira. Después registra, marca al menos quince segundos, cuenta los latidos y calcula la frecuencia.
assign-base = Partir de
assign-blank = una mesa corriente
assign-part_what = Lo que se dice a los estudiantes
assign-title_is = Título
assign-aim = Objetivo, en una frase
assign-brief = Encargo
assign-task = Qué se pide
assign-task_own_window = contar en una ventana propia
assign-task_given_window = contar en una ventana de duración dada
assign-task_intervals = medir varios intervalos
assign-task_irregular = contar un pulso irregular
assign-task_after_exercise = contar poco después del ejercicio
assign-task_clean_stretch = encontrar un tramo limpio
assign-task_read_range = leer el rango y la altura
assign-task_name_fault = solo nombrar lo que falla
assign-task_compare = comparar dos ventanas
assign-part_faults = Lo que falla en ella
assign-faults_about = Hasta cuatro averías. La gravedad se sortea para cada estudiante entre la más leve y la peor que permitas.
assign-add_fault = Añadir una avería
assign-choose_fault = elige una
assign-take_fault = Quitar «{ $fault }»
assign-mildest = «{ $fault }»: la más leve
assign-worst = «{ $fault }»: la peor
assign-severity_one = al { $v } % de lo peor, para todos
assign-severity_two = sorteada del { $low } al { $high } % de lo peor
assign-name_faults = Se nombra lo que falla antes de comprobar
assign-part_subject = De quién es el dedo
assign-drawn = Lo que quede libre se sortea de nuevo para cada estudiante.
assign-free = libre
assign-between = De { $min } a { $max }.
assign-wrong = { $field }: “{ $found }” no es posible. Debe ser de { $min } a { $max }.
assign-age = Edad, años
assign-pulse = Frecuencia en reposo, latidos/min
assign-temperature = Dedo, °C
assign-premature = Latidos tempranos, por min
assign-restless = Inquietud de la mano
assign-part_help = Región y ayuda
assign-region = Red eléctrica
assign-region_of = { $hz } Hz, { $volts } V
assign-help = Ayuda
assign-part_pass = Lo que hay que alcanzar
assign-window = Ventana más corta, s
assign-record = Registro más corto, s
assign-edge = Un latido vale contado o no a esta distancia de un cursor
assign-hum = Zumbido máximo, respecto del pulso
assign-low = Pulso mínimo, respecto de la pantalla
assign-high = Pulso máximo, respecto de la pantalla
assign-percent = { $v } %
assign-part_class = Para la clase
assign-attempts = Intentos
assign-seeds = El corazón de cada estudiante
assign-seeds_each = uno propio, según su código
assign-seeds_same = el mismo para todos
assign-key = Clave de la tarea
assign-key_about = Con la clave y el código de un estudiante se puede rehacer la mesa de cualquiera: dicrotic seed CLAVE CÓDIGO.
assign-word = Palabra para la verdad (puede quedar vacía)
assign-word_about = Con esta palabra la línea de órdenes te muestra los latidos verdaderos de la mesa de un estudiante. En el enlace y en el archivo solo va su hash, así que guarda tú la palabra. Ponla antes de repartir la mesa: otra palabra hace otros corazones.
assign-opening = Palabras antes del primer intento
assign-closing = Palabras después de la última comprobación
assign-preview = Lo que encuentra un estudiante
assign-another = Otro estudiante
assign-stand_still = Detener
assign-run_on = Seguir
assign-seen = Semilla { $v }. La señal del sensor tal como está, antes de que nadie toque la mesa.
assign-unseen = Semilla { $v }. Aquí la computadora no ve ninguna unidad de registro, así que la tira sigue vacía hasta que se arregle.
assign-fair = ¿Es justo?
assign-fair_about = Unos estudiantes con un buen método ponen una ventana de esta duración en cualquier parte de un registro limpio. ¿Qué proporción suspendería si se contara…
assign-fair_own = en su propia ventana, con los bordes a favor (así evaluamos)
assign-fair_exact = en su propia ventana, al latido exacto
assign-fair_mean = frente a la media de un minuto entero, ± { $v } latidos/min
assign-fair_done = { $n } estudiantes simulados.
assign-fair_without = { $n } de { $of } estudiantes simulados no encontraron latidos que contar; las proporciones son de los demás.
assign-out = Compartirla
assign-out_about = El enlace contiene la mesa entera. Ponlo en la página de tu curso, muestra la imagen o reparte el archivo.
assign-link = El enlace
assign-at = Dirección de la página para tus estudiantes
assign-at_here = Esta dirección funciona solo en este ordenador. Los estudiantes no pueden abrirla en otros. Pon la página en un servidor web y escribe aquí su dirección.
assign-at_wrong = Esto no es una dirección web. Debe empezar por https:// o http://.
assign-length = { $n } caracteres.
assign-copy = Copiar el enlace
assign-as_student = Abrirlo como estudiante
assign-save = Guardar el archivo del escenario
assign-qr = El enlace como imagen para la cámara de un teléfono
assign-pack = Para un sitio de curso
assign-pack_about = Un paquete contiene esta mesa y la página entera. Súbelo a tu sitio de curso como actividad. Los intentos, los textos, los puntos, cada paso y cada error de lectura pasan entonces por el sitio. El paquete se hace aquí, en tu dispositivo.
assign-pack_standard = Estándar
assign-pack_scorm12 = SCORM 1.2 (lo lee cualquier sitio de curso)
assign-pack_scorm2004 = SCORM 2004 (tiene sitio para intentos más largos)
assign-pack_cmi5 = cmi5 (tiene sitio para todo intento)
assign-pack_save = Guardar el paquete
assign-pack_working = Se está haciendo el paquete.
assign-pack_done = Guardado.
assign-pack_large = El paquete es demasiado grande para su formato.
assign-qr_save = Guardar la imagen
assign-qr_long = El enlace es demasiado largo para una imagen; acorta los textos, o reparte el enlace o el archivo.

class-title = Lo recibido
class-lede = Abre lo que entregó la clase. Se califica en este equipo y nada se envía. Guarda la clase como archivo para conservarla: al cerrar esta pestaña se olvida.
class-set = Preparar una mesa para una clase
class-back = Volver a la clase
class-intake = Recepción
class-drop = Suelta aquí archivos de resultado, tantos como quieras.
class-choose = Elegir archivos
class-codes = O pega códigos, con lo que haya alrededor; un enlace entre ellos vale como lo encargado
class-take_codes = Tomar los códigos
class-pasted = lo pegado
class-a_link = el enlace
class-code_of = { $from }, código { $n }
class-no_code = No contiene ningún código.
class-too_large = Es mucho mayor que un resultado.
class-busy = { $n } de { $of } reproducidos…
class-came = { $n } resultados, { $wrong } que no se pudieron usar.
class-names = Mostrar los códigos de los estudiantes
class-need = A punto tras
class-need_of = { $n ->
    [one] una mesa superada
   *[other] { $n } mesas distintas superadas
}
class-need_rubric = una mesa superada según la rúbrica
class-need_rubric_twice = dos mesas superadas según la rúbrica
class-csv = Guardar como tabla (CSV)
class-empty = Olvidarlo todo
class-of = { $n } de { $of }
class-students = Estudiantes
class-student = Estudiante { $n }
class-col_student = Estudiante
class-col_ready = Estado
class-col_passed = Superadas
class-col_score = De 20
class-col_minutes = Min
class-col_look = Intento
class-look = Ver
class-look_n = { $n }
class-look_at = Ver el intento { $n } de { $name }
class-given_open = Abrir lo encargado
class-given_none = Aún no se ha dado nada como encargado, así que ningún resultado se puede comparar con ello. Abre el archivo de la tarea o pega abajo su enlace.
class-given_is = Comparado con: { $list }.
class-not_compared = { $n ->
    [one] Un resultado no se comparó con lo encargado. Su mesa puede ser otra.
   *[other] { $n } resultados no se compararon con lo encargado. Sus mesas pueden ser otras.
}
class-several = { $n } mesas distintas se llaman «{ $name }». Da la que se encargó.
class-again = { $n ->
    [one] Un resultado se entregó más de una vez. Cuenta una vez.
   *[other] { $n } resultados se entregaron más de una vez. Cuentan una vez.
}
class-turned = { $n ->
    [one] Un veredicto es otro con los criterios que se dan ahora.
   *[other] { $n } veredictos son otros con los criterios que se dan ahora.
}
class-against-other_bench = Es otra mesa que la encargada.
class-against-other_seed = La mesa no es la de este código.
class-against-too_many_tries = Es un intento más de los que hay.
class-alike = Los cursores y las marcas están donde los de otra persona.
class-remark-all_at_once = La ventana, las respuestas y la comprobación llegaron en un solo momento.
class-remark-clock = Del comienzo al final pasó menos tiempo que en la mesa.
class-remark-no_pause = Muchas acciones llegaron sin tiempo entre ellas.
class-copied = Alguien más entregó el mismo diario de acciones.
class-doubt-changed = El archivo se cambió después de escribirse.
class-doubt-other_scenario = El texto de la mesa se cambió.
class-doubt-other_program = Lo hizo otra versión de Dicrotic, que puede juzgar de otro modo.
class-doubt-differs = Al reproducirlo resulta distinto de lo que dice.
class-faults = Averías sin arreglar
class-faults_about = Resultados en los que seguía ahí al final.
class-misreadings = Lecturas erróneas
class-misreading-bumps_counted = también se contaron las segundas ondas
class-misreading-beats_missed = latidos sin contar
class-misreading-one_too_many = un latido de más
class-misreading-one_too_few = un latido de menos
class-misreading-spikes_counted = se contaron espigas
class-misreading-breaths_counted = se contaron respiraciones
class-misreading-hum_counted = se contó el zumbido
class-misreading-other_multiplier = el multiplicador de otra ventana
class-misreading-not_scaled = el recuento dado como frecuencia
class-misreading-per_second = latidos por segundo
class-misreading-seconds_per_beat = segundos por latido
class-misreading-milliseconds = milisegundos por segundos
class-misreading-other_window = otra ventana que la marcada
class-misreading-turned_over = la fracción invertida
class-misreading-rounded_early = redondeado demasiado pronto
class-misreading-window_too_short = ventana demasiado corta
class-misreading-too_many_digits = más cifras de las que da el recuento
class-misreading-single_interval = un intervalo en lugar de la media
class-misreading-mixed_features = de un rasgo a otro distinto
class-misreading-time_at_b = el tiempo en B por el tiempo de A a B
class-misreading-whole_recording = el registro entero, no la ventana
class-misreading-screen_length = la duración de la pantalla como T
class-misreading-minutes = minutos por segundos
class-misreading-grid_squares = cuadros por segundos
class-misreading-both_sides = el rango de borde a borde
class-misreading-posts_counted = latidos por intervalos
class-misreading-gap_missed = un intervalo sin contar
class-misreading-show_work = no lo explica una sola cosa
class-show = Mostrar una avería al aula
class-show_about = Una tira a pantalla completa. La mesa sin la avería corre al lado con el mismo corazón: pulsa C para cambiar de una a otra, F para congelar, N para mirar de cerca.
class-show_fault = Avería
class-show_severity = Gravedad
class-show_go = Mostrarla
class-show_closer = Mirar de cerca
class-show_name = Decir su nombre
class-show_close = Cerrar
class-show_faulty = Como se encontró
class-show_cured = Arreglada
class-show_cure = Arreglarla
class-show_uncure = Como se encontró
class-show_freeze = Congelar
class-show_go_on = Seguir
class-open = Abrir una clase guardada
class-save = Guardar la clase
class-print = Imprimir el informe
class-step_set = 1. Lo encargado
class-step_roster = 2. Quién está en la clase
class-step_results = 3. Lo recibido
class-roster_open = Abrir la lista
class-roster_or = O pegar la lista
class-roster_paste = Un estudiante por línea: código, nombre, correo, grupo. Entre ellos comas, puntos y comas o tabuladores
class-roster_take = Tomar la lista
class-roster_forget = Olvidar la lista
class-roster_none = Aún no hay lista. Sin ella, nadie puede faltar.
class-roster_is = { $n ->
    [one] Hay un estudiante en la lista.
   *[other] Hay { $n } estudiantes en la lista.
}
class-roster-wrong-too_long = La lista es demasiado larga ({ $bytes } bytes; como mucho { $most }).
class-roster-wrong-too_many = Línea { $line }: una clase tiene como mucho { $most } estudiantes.
class-roster-wrong-not_text = Línea { $line }: no es texto simple. Guarda la lista como CSV en UTF-8.
class-roster-wrong-empty = No hay ningún estudiante en la lista.
class-roster-wrong-open_quote = Línea { $line }: aquí se abre una comilla que no se cierra.
class-roster-wrong-no_code_column = Línea { $line }: ninguna columna tiene los códigos. Sus títulos son { $titles }. Llama «código» a la columna.
class-roster-wrong-two_columns = Línea { $line }: «{ $first }» y «{ $second }» parecen ambas { $what ->
    [codes] los códigos
    [names] los nombres
    [addresses] los correos
   *[other] los grupos
}. Cambia el título de una.
class-roster-wrong-no_code = Línea { $line }: falta el código.
class-roster-wrong-twice = Línea { $line }: el código «{ $student }» ya está en la línea { $first }.
class-roster-wrong-too_many_cells = Línea { $line }: { $found } celdas para { $columns } columnas. Pon entre comillas la celda que contiene un separador.
class-roster-wrong-long_cell = Línea { $line }: una celda tiene { $length } caracteres; como mucho { $most }.
class-roster-wrong-unknown = La lista no se puede leer ({ $code }).
class-codes_or = O pegar códigos de correos
class-wrong_list = Lo que no se pudo usar
class-roster_wrong = Qué le pasa a la lista
class-cancel = Dejar de calificar
class-cancelled = { $n ->
    [one] Detenido. Un resultado quedó sin calificar.
   *[other] Detenido. { $n } resultados quedaron sin calificar.
}
class-pick = Cuenta
class-pick_best = el mejor intento
class-pick_last = el último intento
class-due = Entregar antes de
class-tiles = Mostrar un tipo de estudiantes
class-state-absent = nada entregado
class-state-unusable = inservible
class-state-wrong_bench = otra mesa
class-state-tried = lo intentó
class-state-ready = a punto
class-state-waived = exento
class-minutes_of = Tiempo en la mesa: { $v } min en el medio; la mitad de los estudiantes tardó de { $low } a { $high }.
class-first_last = Primera comprobación → última, de { $of } intentos.
class-both = { $n }
class-from_to = { $first } → { $last }
class-wrong = Primer paso abierto
class-trace = Por qué el trazo no sirvió
class-trace-clipped = cortado en el rango
class-trace-small = demasiado pequeño
class-trace-tall = demasiado alto
class-trace-hum = zumbido
class-trace-restless = movimiento
class-trace-short = demasiado corto, o sin registro
class-trace-foreign = registro de otro estudiante
class-trace_was = trazo: { $list }
class-left = sin arreglar: { $list }
class-groups = Los grupos, uno junto a otro
class-group_group = Grupo
class-group_n = Estudiantes
class-group_points = Puntos, en el medio
class-group_misreading = Lectura errónea más frecuente
class-group_none = sin grupo
class-group_all = todos los grupos
class-points_of = { $n } de { $of }
class-changes = { $n ->
    [one] Cambió el resultado de un estudiante
   *[other] Cambiaron los resultados de { $n } estudiantes
}
class-change = { $name }: { $before } → { $now }, puntos { $from } → { $to }
class-changes_more = y { $n } más
class-search = Buscar un estudiante
class-sort = Orden
class-sort_state = primero quien necesita algo
class-sort_name = por nombre
class-sort_points = por puntos, primero los bajos
class-sort_group = por grupo
class-sort_list = como en la lista
class-group = Grupo
class-shown = { $n } de { $of } estudiantes
class-col_wrong = Qué salió mal
class-tick = Marcar { $name }
class-unlisted = No está en la lista.
class-against-late = Llegó después del plazo.
class-decide = Decidir
class-decide_for = Decidir para { $name }
class-care_waived = No necesita entregar
class-care_tries = Intentos más que los demás
class-care_tries_of = { $n ->
    [one] Un intento más.
   *[other] { $n } intentos más.
}
class-care_link = Copiar un enlace con los intentos extra
class-care_link_copied = Copiado. Envía este enlace al estudiante. Abre la misma mesa.
class-care_until = Puede entregar hasta
class-care_until_of = Hasta { $when }.
class-care_note = Nota para el estudiante
class-care_noted = Nota.
class-care_keep = Conservar
class-care_leave = Dejar como estaba
class-gradebook = Archivo de notas
class-gradebook_about = Una fila por estudiante, como CSV. Da a las columnas los títulos que espera la página de tu curso. Este navegador los recuerda.
class-gradebook_save = Guardar las notas
class-gradebook_saved = { $n ->
    [one] Guardado, con una fila.
   *[other] Guardado, con { $n } filas.
}
class-column_add = Añadir una columna
class-column_out = Quitar
class-column_out_of = Quitar la columna { $n }
class-column_title = Título de la columna { $n }
class-column_field = Qué hay en la columna { $n }
class-field_code = código
class-field_name = nombre
class-field_email = correo
class-field_group = grupo
class-field_state = estado
class-field_ready = a punto (yes o no)
class-field_points = puntos
class-field_maximum = puntos máximos
class-field_percent = por ciento
class-field_tries = resultados entregados
class-field_minutes = minutos en la mesa
class-field_feedback = comentario
class-field_empty = nada
class-rows = Filas
class-rows_all = todos los estudiantes
class-rows_shown = los que se ven arriba
class-rows_ticked = los marcados arriba
class-maximum = Puntos máximos
class-divides = Entre las celdas
class-divides_comma = coma
class-divides_semicolon = punto y coma
class-divides_tab = tabulador
class-bom = Empezar con una marca de orden de bytes (para hojas de cálculo)
class-blank = Dejar los puntos vacíos si nada cuenta
class-feedback_points = { $n } de { $of } puntos.
class-answers = Clave de respuestas
class-answers_about = Para cada estudiante e intento: semilla, averías con su gravedad y la frecuencia verdadera del primer minuto. Necesita la palabra de la tarea.
class-answers_of = Tarea
class-answers_save = Guardar la clave
class-answers_made = { $n } de { $of } estudiantes
class-answers_stop = Parar
class-answers_stopped = Parado. No se guardó ningún archivo.
class-answers_word = Palabra de la tarea
class-answers_saved = Guardado. Que no llegue a los estudiantes.
error-class_too_long = Es mucho mayor que una clase guardada ({ $bytes } bytes; como mucho { $most }).
error-class_foreign = No es una clase guardada, o le falta una parte. ({ $found })
error-class_version = Otra versión de Dicrotic guardó esta clase (forma { $found }; esta versión lee { $ours }).
error-gradebook_columns = Un archivo de notas tiene de 1 a { $most } columnas; estas son { $found }.
error-gradebook_field = «{ $found }» no es nada que una columna pueda contener.
error-gradebook_divides = Entre las celdas va una coma, un punto y coma o un tabulador.
error-gradebook_maximum = Los puntos máximos deben estar entre 0 y 1000; se encontró { $found }.
error-answers_no_assignment = Abre primero lo encargado. Solo una tarea tiene clave de respuestas.
error-answers_no_word = Esta tarea no tiene palabra, así que nadie puede abrir sus respuestas.
error-answers_other_word = Esta no es la palabra de la tarea.
