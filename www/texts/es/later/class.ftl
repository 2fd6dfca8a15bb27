### Para docentes: asignar un escenario para una clase, y lo que la clase entregó.

assign-title = Asignar un escenario a una clase
assign-lede = Usa un escenario como es o cámbialo. Mira qué encontrará un estudiante. Después reparte el enlace o el archivo: en ellos está todo. Esta página no envía nada.
assign-load = Abrir un archivo de escenario
assign-scripts = { $n ->
    [one] { $file } tiene un intento con guion. Aquí no se guarda, porque puedes cambiar el escenario. Tu archivo todavía lo tiene.
   *[other] { $file } tiene { $n } intentos con guion. Aquí no se guardan, porque puedes cambiar el escenario. Tu archivo todavía los tiene.
}
assign-problem = Aún no puedes usar este escenario. { $told }
assign-blank_title = Nuestro propio escenario
assign-blank_aim = Graba un pulso limpio, pon una ventana de conteo y lee en ella una frecuencia cardíaca.
assign-blank_brief = Mira primero el trazo. Si algo va mal en él, corrígelo. Después graba, y separa A y B al menos quince segundos. Cuenta los latidos y calcula la frecuencia cardíaca.
assign-base = Empezar con
assign-blank = un escenario corriente
assign-part_what = Lo que se dice a los estudiantes
assign-title_is = Título
assign-aim = Objetivo, en una frase
assign-brief = Texto de la tarea
assign-task = Qué se pide
assign-task_own_window = contar en una ventana de conteo propia
assign-task_given_window = contar en una ventana de conteo de duración dada
assign-task_intervals = medir varios intervalos entre latidos
assign-task_irregular = contar un pulso irregular
assign-task_after_exercise = contar poco después del ejercicio
assign-task_clean_part = encontrar una parte limpia
assign-task_read_range = leer el rango y la altura
assign-task_name_fault = solo nombrar lo que falla
assign-task_compare = comparar dos ventanas de conteo
assign-part_faults = Lo que falla
assign-faults_about = Hasta cuatro fallos, o más para sortear uno. La intensidad se sortea para cada estudiante entre la más leve y la peor que permitas.
assign-add_fault = Añadir un fallo
assign-pool = Sortear uno de ellos para cada estudiante
assign-pool_nothing = Para algunos estudiantes no hay nada mal, y lo correcto es no nombrar nada
assign-choose_fault = elige uno
assign-take_fault = Quitar «{ $fault }»
assign-mildest = «{ $fault }»: lo más leve
assign-worst = «{ $fault }»: lo peor
assign-severity_one = al { $v } % de lo peor, para todos
assign-severity_two = sorteada del { $low } al { $high } % de lo peor
assign-name_faults = Se nombra lo que falla antes de comprobar
assign-part_subject = De quién es el dedo
assign-drawn = Lo que dejes libre se sortea otra vez para cada estudiante.
assign-free = libre
assign-between = De { $min } a { $max }.
assign-wrong = { $field }: «{ $found }» no es posible. Debe ser de { $min } a { $max }.
assign-age = Edad, años
assign-pulse = Frecuencia cardíaca en reposo, latidos/min
assign-temperature = Dedo, °C
assign-premature = Latidos tempranos, por min
assign-restless = Cuánto se mueve la mano
assign-part_help = Región y ayuda
assign-region = Red eléctrica
assign-region_of = { $hz } Hz, { $volts } V
assign-help = Ayuda
assign-part_pass = Lo que debe alcanzar el estudiante
assign-window = Ventana de conteo más corta, s
assign-record = Grabación más corta, s
assign-edge = Un latido así de cerca de un cursor puede contarse o no
assign-hum = Zumbido máximo, % del pulso
assign-low = Pulso mínimo, % de la pantalla
assign-high = Pulso máximo, % de la pantalla
assign-percent = { $v } %
assign-all_fields = Todos los campos de un archivo de escenario (en inglés)
assign-part_own = Errores de lectura y pistas propios
assign-wrong_in = Mira «{ $label }»: { $told }
assign-wrong_formula = La fórmula no funciona: { $found }. Puede tener n, t, multiplier, rate, n_true, t_true, rate_true, números, + - * / y paréntesis.
assign-wrong_formula_right = También las respuestas correctas dan este número, así que no puede mostrar un error. Cambia la fórmula o el número de «Más o menos».
assign-wrong_part = Parte { $n }: { $told }
assign-wrong_name = «{ $found }» no puede ser el nombre. Usa minúsculas, cifras y _, y cada nombre una vez.
assign-wrong_due = Vence antes de abrirse.
assign-wrong_here = { $found } no es posible aquí. Se espera: { $expected }.
assign-course_problem = Aún no puedes usar este curso. { $told }
assign-word_kept = guardada como estaba; escribe para sustituirla
assign-own_about = Cuando una respuesta no es correcta y es igual a tu fórmula, el estudiante lee tus palabras. En la fórmula, n, t, multiplier y rate son lo que se escribió. n_true, t_true y rate_true son los valores verdaderos en la propia ventana de conteo del estudiante. También puedes usar números, + - * / y paréntesis. La página muestra tus palabras tal cual, también antes de la última comprobación.
assign-own_add_misreading = Añadir un error de lectura
assign-own_name = Nombre corto, para los resultados de la clase
assign-own_field = La respuesta en la que se ve
assign-own_formula = El número falso, como fórmula
assign-own_tolerance = Más o menos
assign-own_words = Lo que lee el estudiante
assign-own_words_first = Revisa cómo llegaste a este número.
assign-own_hints_about = Tus palabras pueden sustituir una pista de la página. Elige el paso y la pista. El estudiante las lee después de una comprobación en la que ese paso no era correcto, y solo si las pide.
assign-own_add_hint = Añadir una pista
assign-own_step = El paso
assign-own_rung = La pista
assign-own_rung_look = 1, por dónde empezar
assign-own_rung_locate = 2, dónde mirar
assign-own_rung_rule = 3, la regla
assign-own_rung_worked = 4, un paso resuelto
assign-own_recording = Quitar «{ $name }»
assign-part_class = Para la clase
assign-attempts = Intentos
assign-seeds = El corazón de cada estudiante
assign-seeds_each = uno propio, según su ID de estudiante
assign-seeds_same = el mismo para todos
assign-key = Clave de la asignación
assign-key_about = Con la clave y un ID de estudiante puedes hacer otra vez el escenario de cualquier estudiante.
assign-word = Contraseña para los valores verdaderos (puede quedar vacía)
assign-word_about = Con esta contraseña puedes hacer una clave de respuestas con las frecuencias cardíacas verdaderas. En el enlace y en el archivo solo va su hash, así que guarda tú la contraseña. Elígela antes de repartir el escenario: otra contraseña hace otros corazones.
assign-opening = Texto antes del primer intento
assign-closing = Texto después de la última comprobación
assign-preview = Lo que encuentra un estudiante
assign-another = Otro estudiante
assign-stand_still = Pausa
assign-run_on = Continuar
assign-seen = Semilla { $v }. La señal del sensor antes de que nadie cambie nada.
assign-unseen = Semilla { $v }. Aquí la computadora no ve ningún registrador. El trazo sigue vacío hasta que el estudiante lo arregle.
assign-agree = No encaja
assign-agree_about = La tarea pide una cosa a los estudiantes, y la comprobación pide otra.
assign-agree-recording_too_short = La grabación más corta ({ $record } s) es más corta que la ventana de conteo de { $window } s.
assign-agree-no_window = La ventana de conteo más larga es de { $longest } s y la más corta de { $window } s. Ninguna cumple las dos cosas.
assign-agree-brief_recording = El texto de la tarea nombra { $stated } s como mucho. La grabación debe tener { $asked } s: dilo en el texto.
assign-agree-brief_window = El texto de la tarea nombra { $stated } s como mucho. La ventana de conteo debe tener { $asked } s: dilo en el texto.
assign-agree-unlisted = Este escenario tiene «{ $name }», y no está en la lista de fallos. Quien lo encuentre no recibe puntos por ello.
assign-agree-unknown = Algo no encaja ({ $code }).
assign-agree_add = Añadirlo como fallo
assign-agree_add_of = Añadir «{ $name }» como fallo
assign-fair = ¿Es justo?
assign-fair_about = Unos estudiantes simulados con un método correcto ponen una ventana de conteo de esta duración en cualquier parte de una grabación limpia. Cuántos suspenden si se cuenta …
assign-fair_own = en su propia ventana de conteo, un latido cerca de un cursor contado o no (así califica esta página)
assign-fair_exact = en su propia ventana de conteo, exacto al latido
assign-fair_mean = comparado con la media de un minuto entero, ± { $v } latidos/min
assign-fair_done = { $n } estudiantes simulados.
assign-fair_without = { $n } de { $of } estudiantes simulados no encontraron latidos que contar. Los números son de los demás.
assign-out = Repartirlo
assign-out_about = El enlace contiene todo el escenario. Ponlo en tu aula virtual, muestra la imagen o reparte el archivo.
assign-link = El enlace
assign-at = Dirección de la página para tus estudiantes
assign-at_here = Esta dirección funciona solo en esta computadora. Los estudiantes de otras computadoras no pueden abrirla. Pon la página en un servidor web y escribe aquí su dirección.
assign-at_wrong = Esto no es una dirección web. Debe empezar por https:// o http://.
assign-length = { $n } caracteres.
assign-copy = Copiar el enlace
assign-as_student = Abrirlo como estudiante
assign-save = Guardar el archivo del escenario
assign-paper = En papel
assign-qr = El enlace como imagen para la cámara de un teléfono
assign-pack = Para un aula virtual
assign-pack_about = Un paquete contiene este escenario y toda la página. Súbelo a tu aula virtual como actividad. Entonces el aula virtual guarda los intentos, los textos, los puntos, cada paso y cada error de lectura. El paquete se hace aquí, en tu dispositivo.
assign-pack_standard = Estándar
assign-pack_scorm12 = SCORM 1.2 (lo lee cualquier aula virtual)
assign-pack_scorm2004 = SCORM 2004 (tiene sitio para intentos más largos)
assign-pack_cmi5 = cmi5 (tiene sitio para todo intento)
assign-pack_save = Guardar el paquete
assign-pack_working = Se está haciendo el paquete.
assign-pack_done = Guardado.
assign-pack_large = El paquete es demasiado grande para su formato.
assign-qr_save = Guardar la imagen
assign-qr_long = El enlace es demasiado largo para una imagen. Acorta los textos, o reparte el enlace o el archivo.

class-title = Resultados de la clase
class-lede = Abre lo que entregó la clase. Se califica en esta computadora: los archivos se quedan aquí. Guarda la clase como archivo para conservarla. Si cierras esta pestaña, la clase se pierde.
class-set = Asignar un escenario a una clase
class-back = Volver a la clase
class-looking = Este intento solo lo miras. Nada de lo que hagas aquí lo cambia.
class-looking_at = Este es un intento de { $name }. Solo lo miras. Nada de lo que hagas aquí lo cambia.
class-intake = Abrir resultados
class-drop = Suelta aquí archivos de resultado, tantos como quieras.
class-choose = Elegir archivos
class-codes = O pega códigos de resultado. Otro texto alrededor no molesta. Un enlace en el texto vale como la asignación
class-take_codes = Usar los códigos de resultado
class-pasted = lo pegado
class-file = Archivo { $n }
class-files_hidden = Los nombres de archivo pueden contener ID de estudiante, así que están ocultos. Marca «Mostrar los ID de estudiante» para verlos.
class-result_of = { $from }, resultado { $n }
class-part_points = { $n } puntos
class-part_before_open = empezada antes de abrirse
class-part_after_due = después de su fecha
class-code_of = { $from }, código de resultado { $n }
class-no_code = No contiene ningún código de resultado.
class-too_large = Es mucho mayor que un resultado.
class-busy = { $n } de { $of } reproducidos…
class-came = { $n } resultados; { $wrong } no se pudieron usar.
class-names = Mostrar los ID de estudiante
class-need = Listo tras
class-need_of = { $n ->
    [one] un escenario superado
   *[other] { $n } escenarios distintos superados
}
class-need_rubric = listo según la rúbrica en un escenario
class-need_rubric_twice = listo según la rúbrica en dos escenarios
class-csv = Guardar como tabla (CSV)
class-empty = Borrar todo
class-of = { $n } de { $of }
class-students = Estudiantes
class-student = Estudiante { $n }
class-col_student = Estudiante
class-col_ready = Estado
class-col_passed = Superados
class-col_score = Puntos de 20
class-col_minutes = Minutos
class-col_look = Intento
class-look = Ver
class-look_n = { $n }
class-look_at = Ver el intento { $n } de { $name }
class-given_open = Abrir la asignación
class-given_none = Aún no hay ninguna asignación abierta, así que ningún resultado se puede comparar con ella. Abre el archivo de la asignación o pega su enlace.
class-given_out = Quitar
class-given_tries = { $n ->
    [one] Un intento.
   *[other] { $n } intentos.
}
class-given_out_of = Quitar { $title } ({ $from })
class-given_faults = Fallos: { $list }.
class-given_faultless = Sin fallos.
class-given_severity = { $fault } ({ $severity })
class-given_part = Es parte del curso. Si la quitas, quitas el curso entero.
class-given_rival = También está asignado otro escenario con este nombre. Cuentan los resultados de los dos.
class-rival_title = «{ $title }» ya está asignado
class-rival_text = { $from } tiene el mismo nombre, pero es otro escenario. Si se asignan los dos, cuentan los resultados de ambos, también los del más fácil. Ya asignado:
class-rival_replace = Sustituirlo
class-rival_add = Asignar los dos
class-rival_leave = Dejarlo como estaba
class-as_set_title = ¿Es esto lo que recibió la clase?
class-as_set_text = { $file } es un escenario o un curso, no un resultado. Todos los resultados se compararían con él.
class-as_set_yes = Sí, fue lo asignado
class-as_set_no = No, dejarlo fuera
class-not_a_result = Es un escenario o un curso, no un resultado. Quedó fuera.
class-set_is_result = Es un resultado, no una asignación. Ábrelo en «Resultados entregados».
class-link_in = el enlace en { $from }
class-link_beside = un enlace junto a los códigos de resultado
class-about_all = Solo «{ $what }»: mostrar todos otra vez
class-nobody = alguien sin ID de estudiante
class-answers_which = { $title } ({ $from })
class-not_compared = { $n ->
    [one] Un resultado no se comparó con ninguna asignación. Puede ser de otro escenario.
   *[other] { $n } resultados no se compararon con ninguna asignación. Pueden ser de otros escenarios.
}
class-several = { $n } escenarios distintos tienen el nombre «{ $name }». Abre el que se asignó.
class-again = { $n ->
    [one] Un resultado se entregó más de una vez. Cuenta una vez.
   *[other] { $n } resultados se entregaron más de una vez. Cuentan una vez.
}
class-turned = { $n ->
    [one] Un resultado se juzga de otro modo con los criterios actuales.
   *[other] { $n } resultados se juzgan de otro modo con los criterios actuales.
}
class-against-other_bench = No es el escenario asignado.
class-against-other_seed = El escenario no es el de este ID de estudiante.
class-against-too_many_tries = Es un intento más de los que hay.
class-against-told_truth = Tenía errores de lectura que no asignaste y que dicen la respuesta correcta.
class-alike = Los cursores y las marcas están en los mismos sitios que los de { $who }.
class-remark-all_at_once = La ventana de conteo, las respuestas y la comprobación llegaron en un solo momento.
class-remark-clock = El reloj del estudiante muestra menos tiempo del que duró el intento.
class-remark-no_pause = Muchas acciones llegaron sin tiempo entre ellas.
class-remark-other_course = Llegó en el resultado de un curso distinto del asignado.
class-remark-several_students = Llegó en un solo resultado de curso con resultados de otros estudiantes.
class-remark-begun_twice = El mismo intento se empezó dos veces. Cada comienzo cuenta como un intento.
class-remark-no_time = No dice cuándo se empezó o se terminó.
class-remark-other_words = Se hizo con otros errores de lectura, pistas o criterios que los asignados.
class-remark-two_times = Las mismas acciones llegaron con dos horas. Cuenta el que terminó primero.
class-copied = Las mismas acciones, con las mismas pausas, llegaron de { $who }.
class-doubt-changed = El archivo se cambió después de escribirse.
class-doubt-other_scenario = El texto del escenario se cambió.
class-doubt-other_program = Lo hizo otra versión de Dicrotic. Esa versión puede juzgar de otro modo.
class-doubt-differs = La página repitió las acciones del estudiante y dio otro resultado que el archivo. No cuenta. Mira el intento.
class-faults = Fallos sin arreglar
class-faults_about = Resultados en los que seguía ahí al final.
class-misreadings = Errores de lectura
class-misreading-bumps_counted = también se contaron las segundas ondas
class-misreading-beats_missed = latidos sin contar
class-misreading-one_too_many = un latido de más
class-misreading-one_too_few = un latido de menos
class-misreading-spikes_counted = se contaron espigas
class-misreading-breaths_counted = se contaron respiraciones
class-misreading-hum_counted = se contó el zumbido
class-misreading-other_multiplier = el multiplicador de otro T
class-misreading-not_scaled = el recuento escrito como frecuencia cardíaca
class-misreading-per_second = latidos por segundo
class-misreading-seconds_per_beat = segundos por latido
class-misreading-milliseconds = milisegundos por segundos
class-misreading-other_window = T entre otros cursores
class-misreading-turned_over = la fracción al revés
class-misreading-rounded_early = redondeado demasiado pronto
class-misreading-window_too_short = ventana de conteo demasiado corta
class-misreading-too_many_digits = más cifras de las que da el recuento
class-misreading-single_interval = un solo intervalo entre latidos
class-misreading-mixed_features = de un rasgo a otro distinto
class-misreading-time_at_b = el tiempo en B por el tiempo de A a B
class-misreading-whole_recording = la grabación entera, no la ventana de conteo
class-misreading-screen_length = la duración de la pantalla como T
class-misreading-minutes = minutos por segundos
class-misreading-grid_squares = cuadros por segundos
class-misreading-both_sides = el rango de borde a borde
class-misreading-posts_counted = latidos por intervalos entre latidos
class-misreading-gap_missed = un intervalo entre latidos sin contar
class-own_misreading = propio: { $name }
class-misreading-show_work = no lo explica una sola cosa
class-show = Mostrar un fallo al aula
class-show_about = La mesa y el trazo llenan la pantalla, con la red eléctrica de tu región. El mismo equipo funciona también sin el fallo. Pulsa C para cambiar, P para la pausa, N para ampliar, W para mostrar el nombre del fallo. Las flechas traen fallos parecidos.
class-show_fault = Fallo
class-show_severity = Intensidad
class-show_go = Mostrarlo
class-show_closer = Ampliar
class-show_name = Mostrar su nombre
class-show_close = Cerrar
class-show_card = Abrir su ficha
class-show_faulty = Con el fallo
class-show_cured = Arreglado
class-show_cure = Arreglarlo
class-show_uncure = Con el fallo
class-show_freeze = Pausa
class-show_go_on = Continuar
class-show_before = Fallo parecido anterior
class-show_after = Siguiente fallo parecido
class-show_place = { $n } de { $of } fallos parecidos
class-show_power_line = red eléctrica de { $volts } V, { $hz } Hz
class-open = Abrir una clase guardada
class-save = Guardar la clase
class-print = Imprimir el informe
class-step_set = 1. La asignación
class-step_roster = 2. Quién está en la clase
class-step_results = 3. Resultados entregados
class-roster_open = Abrir la lista
class-roster_or = O pegar la lista
class-roster_paste = Un estudiante por línea: ID de estudiante, nombre, correo, grupo. Entre ellos comas, puntos y comas o tabuladores
class-roster_take = Usar la lista
class-roster_forget = Borrar la lista
class-roster_left_out = { $n ->
    [one] La lista está en uso, sin una línea:
   *[other] La lista está en uso, sin { $n } líneas:
}
class-roster_none = Aún no hay lista. Sin una lista no puedes ver quién no ha entregado nada.
class-roster_is = { $n ->
    [one] Hay un estudiante en la lista.
   *[other] Hay { $n } estudiantes en la lista.
}
class-roster-wrong-too_long = La lista es demasiado larga ({ $bytes } bytes; como mucho { $most }).
class-roster-wrong-too_many = Línea { $line }: una clase tiene como mucho { $most } estudiantes.
class-roster-wrong-not_text = Línea { $line }: no es texto simple. Guarda la lista como CSV en UTF-8.
class-roster-wrong-empty = No hay ningún estudiante en la lista.
class-roster-wrong-open_quote = Línea { $line }: aquí se abre una comilla que no se cierra.
class-roster-wrong-no_code_column = Línea { $line }: ninguna columna tiene los ID de estudiante. Sus títulos son { $titles }. Llama «ID estudiante» a la columna.
class-roster-wrong-two_columns = Línea { $line }: «{ $first }» y «{ $second }» parecen ambas { $what ->
    [codes] los ID de estudiante
    [names] los nombres
    [addresses] los correos
   *[other] los grupos
}. Cambia el título de una.
class-roster-wrong-no_code = Línea { $line }: falta el ID de estudiante.
class-roster-wrong-twice = Línea { $line }: el ID de estudiante «{ $student }» ya está en la línea { $first }.
class-roster-wrong-twice_hidden = Línea { $line }: el ID de estudiante ya está en la línea { $first }.
class-roster-wrong-too_many_cells = Línea { $line }: { $found } celdas para { $columns } columnas. Pon entre comillas la celda que contiene un separador.
class-roster-wrong-long_cell = Línea { $line }: una celda tiene { $length } caracteres; como mucho { $most }.
class-roster-wrong-unknown = La lista no se puede leer ({ $code }).
class-codes_or = O pegar códigos de resultado de correos
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
class-tiles_of = { $n ->
    [one] Del único estudiante de la lista:
   *[other] De los { $n } estudiantes de la lista:
}
class-tiles_all = { $n ->
    [one] Un estudiante entregó resultados. No hay ninguna lista abierta.
   *[other] { $n } estudiantes entregaron resultados. No hay ninguna lista abierta.
}
class-not_listed = fuera de la lista
class-state-absent = nada entregado
class-state-unusable = inservible
class-state-wrong_bench = otro escenario
class-state-tried = no está listo
class-state-ready = listo
class-state-waived = exento
class-minutes_of = Tiempo de un intento: mediana { $v } min; la mitad de los estudiantes tardó de { $low } a { $high } min.
class-first_last = Resultados en la primera comprobación y en la última, de { $of } resultados con comprobación.
class-talk_about = Pulsa una línea para ver de quiénes son esos resultados.
class-both = { $n } al principio y al final
class-from_to = { $first } al principio, { $last } al final
class-wrong = Primer paso que no es correcto
class-trace = Por qué el trazo no sirvió
class-trace-clipped = cortado en el rango
class-trace-small = demasiado pequeño
class-trace-tall = demasiado alto
class-trace-hum = zumbido
class-trace-restless = movimiento
class-trace-short = demasiado corto, o sin grabación
class-trace-foreign = grabación de otro estudiante
class-trace_was = trazo: { $list }
class-left_n = { $n ->
    [one] Hay un fallo sin arreglar
   *[other] Hay { $n } fallos sin arreglar
}
class-forget_title = ¿Borrar esta clase?
class-forget_unsaved = Aquí hay algo que no está guardado en ningún archivo. No se puede recuperar.
class-forget_saved = El archivo que guardaste la conserva. Se borra solo aquí.
class-forget_no = Conservarla
class-forget_yes = Borrarla
class-given_or = O pegar su enlace
class-given_link = Enlace de la asignación o del curso
class-given_recording = Usar el enlace
class-given_no_link = No hay ningún enlace con una asignación.
class-roster-wrong-no_list = Esto no es una lista de estudiantes. Parece una asignación o un resultado. Abre una asignación en 1, y un resultado en 3.
class-left = sin arreglar: { $list }
class-groups = Los grupos, uno junto a otro
class-group_group = Grupo
class-group_n = Estudiantes
class-group_points = Puntos, mediana
class-group_misreading = Error de lectura más frecuente
class-group_none = sin grupo
class-group_all = todos los grupos
class-points_of = { $n } de { $of }
class-changes = { $n ->
    [one] Cambió el resultado de un estudiante
   *[other] Cambiaron los resultados de { $n } estudiantes
}
class-change = { $name }: { $before } → { $now }, puntos { $from } → { $to }
class-changes_more = y { $n } más
class-search = Buscar un estudiante, o qué salió mal
class-sort = Orden
class-sort_state = primero quien necesita algo
class-sort_name = por nombre
class-sort_points = por puntos, primero los bajos
class-sort_group = por grupo
class-sort_list = como en la lista
class-group = Grupo
class-of_group = Grupo { $name }
class-shown = { $n } de { $of } estudiantes
class-col_wrong = Qué salió mal
class-tick = Marcar { $name }
class-unlisted = No está en la lista.
class-against-late = Llegó después del plazo.
class-decide = Excepciones
class-decide_for = Excepciones para { $name }
class-care_waived = Exento
class-care_tries = Intentos más que los demás
class-care_tries_of = { $n ->
    [one] Un intento más.
   *[other] { $n } intentos más.
}
class-care_link = Copiar un enlace con los intentos extra
class-care_link_copied = Copiado. Envía este enlace al estudiante. Abre el mismo escenario.
class-care_until = Puede entregar hasta
class-care_until_of = Hasta { $when }.
class-care_note = Nota para el estudiante
class-care_noted = Nota.
class-care_keep = Guardar
class-care_leave = Cancelar
class-gradebook = Archivo de notas
class-gradebook_about = Una fila por estudiante, como CSV. Da a las columnas los títulos que espera tu aula virtual. Este navegador los recuerda.
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
class-field_code = ID de estudiante
class-field_name = nombre
class-field_email = correo
class-field_group = grupo
class-field_state = estado
class-field_ready = listo (yes o no)
class-field_points = puntos
class-field_maximum = puntos máximos
class-field_percent = por ciento
class-field_tries = resultados entregados
class-field_minutes = minutos del intento
class-field_feedback = comentario
class-field_part = puntos de la parte { $n }
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
class-feedback_step = Primer paso que no es correcto: { $step }
class-answers = Clave de respuestas
class-answers_about = Para cada estudiante e intento: semilla, fallos con su intensidad y la frecuencia cardíaca verdadera del primer minuto. Necesita la contraseña de la asignación.
class-answers_of = Asignación
class-answers_save = Guardar la clave de respuestas
class-answers_made = { $n } de { $of } estudiantes
class-answers_stop = Parar
class-answers_stopped = Parado. No se guardó ningún archivo.
class-answers_word = Contraseña de la asignación
class-answers_saved = Guardado. Que no llegue a los estudiantes.
error-class_too_long = Es mucho mayor que una clase guardada ({ $bytes } bytes; como mucho { $most }).
error-class_foreign = No es una clase guardada, o le falta una parte. ({ $found })
error-course_version = Este resultado de curso tiene la forma { $found }. Esta versión de Dicrotic lee la forma { $ours }.
error-class_version = Otra versión de Dicrotic guardó esta clase (forma { $found }; esta versión lee { $ours }).
error-gradebook_columns = Un archivo de notas tiene de 1 a { $most } columnas; estas son { $found }.
error-gradebook_field = Una columna no puede contener «{ $found }».
error-gradebook_divides = Usa una coma, un punto y coma o un tabulador entre las celdas.
error-gradebook_maximum = Los puntos máximos deben estar entre 0 y 1000; se encontró { $found }.
error-answers_no_assignment = Abre primero la asignación. Solo una asignación tiene clave de respuestas.
error-answers_no_word = Esta asignación no tiene contraseña, así que nadie puede abrir sus respuestas.
error-answers_other_word = Esta no es la contraseña de la asignación.

assign-course = Un curso de varias asignaciones
assign-course_about = Añade asignaciones en el orden en que deben hacerse. Los estudiantes abren un enlace y ven qué está hecho y hasta cuándo. Entregan un archivo con todas las partes. Las fechas son información: el dispositivo del estudiante y los resultados de la clase muestran quién fue antes o después. Nada se bloquea.
assign-course_title = Título del curso
assign-course_words = Texto sobre la lista
assign-course_add = Añadir el escenario de este formulario
assign-course_files = Añadir archivos de asignaciones o enlaces
assign-course_anew = Empezar otro curso
assign-course_no_bench = El escenario de este formulario aún no se puede usar; mira arriba.
assign-course_no_title = El curso necesita un título. Entonces hay un enlace.
assign-course_no_part = Agrega una asignación. Entonces hay un enlace.
assign-course_alike = Dos partes tienen el encabezado «{ $title }». Los estudiantes no las distinguen: da otro título a una de ellas.
assign-course_bad_file = { $file } no se añadió. { $told }
assign-course_up = Subir
assign-course_up_of = Subir «{ $title }»
assign-course_opens = Se abre
assign-course_due = Hasta
assign-course_part_words = Texto para esta parte
assign-course_link = El enlace del curso
assign-course_copy = Copiar el enlace del curso
assign-course_save = Guardar el archivo del curso
