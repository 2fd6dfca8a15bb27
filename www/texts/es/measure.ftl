### Medir y lo que se pide: mirar de cerca, ventanas, clases de pregunta, la manera de tomar una mesa.

measure-height = Altura de A a B
measure-snap = Las marcas y los cursores arrastrados van al pico más próximo
measure-after = Esta grabación empezó { $s } después del final del ejercicio.
take-label = Etiqueta de esta grabación
zoom-out = Alejar
spot-kept = ventana de conteo 1
spot-hint = mira aquí
spot-deed = aquí
refusal-too_narrow = De A a B hay muy poco para ampliar. Deben ser al menos { $least } s.
refusal-above_half_rate = Un filtro de { $hz } Hz no sirve para esta grabación. Elige uno por debajo de { $half_hz } Hz, la mitad de su frecuencia de muestreo.
refusal-not_zoomed = El trazo ya tiene su anchura habitual.
refusal-no_window = Coloca antes los dos cursores.
refusal-not_asked = Eso no se pide aquí.
refusal-too_late = Ya has hecho algo. Elige cómo empezar antes de hacer otra cosa.
refusal-not_checked = Comprueba antes tu lectura. Después puedes pedir una pista.
refusal-no_hint = Ahora no hay más pistas.
refusal-worked_example = Este es el ejemplo resuelto. Hace todos los pasos solo. Detenlo para hacerlos tú.
refusal-label_too_long = Una etiqueta puede tener como mucho { $max } letras.
error-no_worked_example = No hay ejemplo resuelto de este escenario.
error-history_invalid = No se pueden leer tus intentos anteriores: { $found }.

task-asked = Tu tarea:
task-own_window = contar en una ventana de conteo que elijas tú, de { $need } s o más.
task-given_window = contar en una ventana de conteo de { $seconds } s. Se permite medio segundo más o menos.
task-intervals = medir { $n } intervalos entre latidos: de un rasgo al mismo rasgo { $n } latidos después.
task-irregular = este pulso es desigual. Usa una ventana de conteo de { $at_least_s } s o más.
task-after_exercise = usa una ventana de conteo de { $need } a { $longest_s } s. Su centro debe estar como mucho { $within_s } s después del final del ejercicio.
task-clean_part = pon A y B alrededor de una parte limpia, de { $need } s o más. No cuentas nada.
task-read_range = lee el rango. Después pon A en un pie y B en el pico del mismo latido, y lee la altura.
task-name_fault = nombra lo que falla. No mides nada.
task-compare = usa dos ventanas de conteo de una grabación. Pueden compartir como mucho la mitad. Después di la incertidumbre de la frecuencia cardíaca.

sheet-about_clean_part = Elige una grabación encima del trazo. Busca una parte donde cada onda se parezca a la siguiente. No debe tener ruido, saltos, deriva ni picos planos.
sheet-about_name_fault = Prueba, mira y nombra lo que muestran tus pruebas. No necesitas una grabación.
sheet-about_read_range = Elige una grabación encima del trazo. Amplía un latido: pon A en su pie y B en su pico. Las alturas están en milivoltios.
sheet-about_compare = Elige una grabación encima del trazo. Lee una ventana de conteo y guárdala. Después mueve A y B y lee otra.
sheet-about_intervals = Elige una grabación encima del trazo. Elige un rasgo, un pico o un pie. Pon A en él. Pon B en el mismo rasgo, tantos intervalos entre latidos después como se piden.
sheet-check_names_over = Comprobar lo que nombré
sheet-check_names = Comprobar lo que nombré ({ $n } de { $of })
sheet-reveal_faults = Ver qué falla
sheet-may = opcional
sheet-window_n = Ventana de conteo { $n }
sheet-keep = Guardar como ventana de conteo 1
sheet-keep_clear = Borrar la ventana de conteo 1
sheet-kept_none = Aún sin guardar. Coloca A y B, lee esta ventana de conteo y después guárdala.
sheet-kept_now = Guardada como ventana de conteo 1. Ahora mueve A y B para la ventana de conteo 2.
sheet-kept = Guardada: de { $from } a { $to } de la grabación { $take }, dura { $s }.
sheet-middle_how = Cómo hallar el tiempo del centro
sheet-middle_text = La pantalla dice cuánto después del final del ejercicio empezó la grabación. El centro de la ventana de conteo está a mitad de camino entre A y B. Suma A y B, divide entre 2 y suma el tiempo en que empezó la grabación.

sheet-line-count-intervals = De A a B mido n =
    .after = intervalos entre latidos
sheet-line-seconds-intervals = en Δt =
    .after = segundos
sheet-line-rate-intervals = frecuencia cardíaca 60 · n / Δt =
    .after = latidos/min
sheet-line-uncertainty = incertidumbre ±
    .after = latidos/min
sheet-line-middle = Tiempo del centro
    .after = s después del ejercicio
sheet-line-range = rango a fondo de escala ±
    .after = mV
sheet-line-amplitude = pulso, del pie al pico =
    .after = mV
sheet-line-count_1 = cuento N =
    .after = latidos
sheet-line-seconds_1 = tiempo T =
    .after = segundos
sheet-line-rate_1 = frecuencia cardíaca =
    .after = latidos/min
sheet-line-count-compare = cuento N =
    .after = latidos
sheet-line-seconds-compare = tiempo T =
    .after = segundos
sheet-line-rate-compare = frecuencia cardíaca =
    .after = latidos/min
sheet-line-uncertainty-compare = cada una ±
    .after = latidos/min

asked-given = A y B están separados { $s } s. Se permite medio segundo más o menos.
asked-intervals = De A a B hay { $n } intervalos entre latidos: B está { $n } latidos después de A.
asked-feature = A y B están en el mismo rasgo: pico y pico, o pie y pie.
asked-intervals_work = Frecuencia cardíaca = 60 × n / Δt.
asked-short = A y B están separados de { $s } a { $longest } s, porque la frecuencia cardíaca baja mientras cuentas.
asked-within = El centro de la ventana de conteo está como mucho { $s } s después del final del ejercicio.
asked-two = Usa dos ventanas de conteo de una grabación. Pueden compartir como mucho la mitad.
asked-uncertainty = La incertidumbre es un latido más o menos en tu ventana de conteo, o los latidos de sus bordes.
asked-clean = Cada onda se parece a la siguiente: sin ruido, sin saltos, sin nada recortado.
asked-range = Lee el rango como lo muestra el registrador, ± milivoltios.
asked-foot_peak = A está en un pie. B está en el pico del mismo latido.
asked-amplitude = La altura del pie al pico, en milivoltios.
asked-name_test = Prueba antes de nombrar una causa: cambia una cosa, pregunta o mira.
asked-name_all = Nombra todo lo que falla. Si nada falla, no nombres nada.
asked-name_one = Cambia una cosa cada vez, y mira después de cada cambio.

truth-beats = latidos en tu ventana de conteo
truth-unsure = { $n ->
    [one] Un latido más es demasiado pequeño o adelantado para darlo por seguro. Es correcto con él o sin él.
   *[other] Otros { $n } latidos son demasiado pequeños o adelantados para darlos por seguros. Es correcto con ellos o sin ellos.
}
truth-window = latidos/min: tu ventana de conteo
truth-window_how = 60 · { $n } / { $s } s. Con esta se compara tu recuento.
truth-span = latidos/min: los latidos de tu ventana de conteo
truth-span_how = { $n } intervalos entre latidos, del primero al último, { $s } s.
truth-record = latidos/min: la grabación entera
truth-record_how = { $n } intervalos entre latidos, del primero al último, { $s } s. Una ventana de conteo corta no tiene que dar esto.
truth-range = mV: el rango, más o menos
truth-amplitude = mV: la altura de A a B

offer-title = ¿Cómo quieres empezar?
offer-shown = Ver antes cómo se hace
offer-half = Hecho a medias, yo lo acabo
offer-alone = Por mi cuenta
offer-why-shown = Sugerencia: mirar antes. El ejemplo usa este mismo equipo, paso a paso. Después te toca a ti.
offer-why-half = Sugerencia: hecho a medias. El montaje ya está hecho. Lo demás lo haces tú.
offer-why-alone = Sugerencia: por tu cuenta. Estos pasos ya los has hecho, o este escenario mostrará si puedes.
offer-now-half = El montaje está hecho. Lo demás lo haces tú.
offer-now-alone = Por tu cuenta. Puedes pedir pistas después de comprobar.
offer-now-shown = Ahora te toca a ti, con un corazón nuevo para ti. El número de marcas te puede ayudar. Las marcas pueden ir solas al pico más próximo.

way-stand = Tu progreso
way-stand_for = Estudiantes: 12 destrezas
way-stand_text = Mira qué destrezas tienes, qué practicar otra vez y cada intento que comprobaste.
side-skills = Mapa de destrezas
side-notebook = Cuaderno
side-device = Este dispositivo
side-words = Las palabras de la práctica
side-teach = Para docentes
side-report = Informe
side-back = Volver al escenario
side-back_start = Volver a los escenarios
notebook-full = Este intento no está en el cuaderno: el almacenamiento del dispositivo está lleno o desactivado. Imprime o exporta lo que necesites y borra páginas antiguas.

caution-before = Antes de poner un sensor a una persona o de grabarla, pregúntale. Cualquiera puede decir que no. Sigue las normas de seguridad locales y las de tu institución. Limpia antes sensor y correa. Usa una correa sin látex para quien tenga alergia.
caution-power = No acerques manos mojadas a la corriente. Nunca anules el contacto de tierra de un enchufe. No uses un cable dañado: avisa a tu docente.
caution-body = Afloja la correa enseguida si un dedo se duerme u oscurece. Si alguien se marea, para. Que se siente o se acueste, y pide ayuda según las normas de tu institución. Solo los profesionales de la salud habilitados dicen qué significa un trazo.
caution-when = Acepta antes de poner el sensor. Después no da ningún punto.
caution-read = Antes de poner el sensor: la advertencia
caution-later = Más tarde
caution-agree = Lo he leído y lo cumpliré
caution-agreed = Has leído la advertencia.
