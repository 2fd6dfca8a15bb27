### Medir y lo que se pide: mirar de cerca, ventanas, clases de pregunta, la manera de tomar una mesa.

measure-height = Altura de A a B
measure-snap = Las marcas y los cursores arrastrados van al pico más próximo
measure-after = Este registro empezó { $s } después del final del ejercicio.
take-label = Etiqueta de este registro
zoom-in = Mirar de cerca, de A a B
zoom-out = Alejar
spot-kept = ventana 1
spot-hint = mira aquí
spot-deed = aquí
refusal-too_narrow = Es demasiado estrecho para mirarlo: al menos { $least } s.
refusal-not_zoomed = La tira está dibujada con su anchura habitual.
refusal-no_window = Coloca antes los dos cursores.
refusal-not_asked = Eso no se pide aquí.
refusal-too_late = Ya se ha hecho algo; cómo se toma la mesa se elige al principio.
refusal-not_checked = Comprueba antes tu lectura; las pistas responden a ella.
refusal-no_hint = Ahora no hay más pistas.
refusal-worked_example = Este es el ejemplo resuelto; lo hace todo solo. Detenlo para probar tú.
refusal-label_too_long = En una etiqueta caben { $max } letras.
error-no_worked_example = No hay ejemplo resuelto de este escenario.
error-history_invalid = No se puede leer lo que se guarda de intentos anteriores: { $found }.

task-asked = Se pide:
task-own_window = contar en una ventana que elijas tú, de { $need } s o más.
task-given_window = contar en una ventana de { $seconds } s; medio segundo más o menos no hace daño.
task-intervals = medir { $n } intervalos, de un rasgo al mismo rasgo { $n } latidos después.
task-irregular = este pulso es desigual: toma una ventana de { $at_least_s } s o más.
task-after_exercise = una ventana de { $need } a { $longest_s } s, con su centro como mucho { $within_s } s después del final del ejercicio.
task-clean_stretch = poner A y B alrededor de un tramo limpio, de { $need } s o más. No se cuenta nada.
task-read_range = leer el rango; después, A en un pie, B en el pico del mismo latido, y la altura entre ellos.
task-name_fault = nombrar lo que falla. No se mide nada.
task-compare = dos ventanas de un registro que compartan como mucho la mitad; después, di cuánto te puedes fiar de la frecuencia.

sheet-about_clean_stretch = Abre un registro y busca un tramo donde cada onda se parezca a la siguiente. El ruido, los saltos, la deriva y los picos recortados no caben en él.
sheet-about_name_fault = Prueba, mira y nombra lo que señalan tus pruebas. No hace falta un registro.
sheet-about_read_range = Abre un registro. Mira de cerca un latido: A en su pie, B en su pico. Las alturas están en milivoltios.
sheet-about_compare = Abre un registro. Lee una ventana y guárdala; después mueve A y B y lee otra.
sheet-about_intervals = Abre un registro. Elige un rasgo, un pico o un pie. A en el primero, B en el mismo rasgo, tantos intervalos después.
sheet-check_names_over = Comprobar lo que nombré
sheet-check_names = Comprobar lo que nombré ({ $n } de { $of })
sheet-reveal_faults = Ver qué falla
sheet-may = si quieres
sheet-window_n = Ventana { $n }
sheet-keep = Guardar como ventana 1
sheet-keep_clear = Olvidar la ventana 1
sheet-kept_none = Aún sin guardar. Coloca A y B, lee esta ventana y después guárdala.
sheet-kept_now = Guardada como ventana 1. A y B quedan libres para la ventana 2.
sheet-kept = Guardada: de { $from } a { $to } del registro { $take }, dura { $s }.
sheet-middle_how = Cómo hallar el tiempo del centro
sheet-middle_text = La tira dice cuánto después del final del ejercicio empezó el registro. El centro de la ventana está a mitad de camino entre A y B: suma A y B, divide entre dos y suma el tiempo en que empezó el registro.

sheet-line-count-intervals = De A a B mido n =
    .after = intervalos
sheet-line-seconds-intervals = en Δt =
    .after = segundos
sheet-line-rate-intervals = así que 60 · n / Δt da una frecuencia cardíaca de
    .after = latidos/min
sheet-line-uncertainty = de la que me fío hasta ±
    .after = latidos/min
sheet-line-middle = El centro de la ventana está
    .after = segundos después del final del ejercicio
sheet-line-range = El rango a fondo de escala es ±
    .after = mV
sheet-line-amplitude = Del pie al pico el pulso mide
    .after = mV
sheet-line-count_1 = En la ventana 1 cuento N =
    .after = latidos
sheet-line-seconds_1 = en T =
    .after = segundos
sheet-line-rate_1 = así que su frecuencia es
    .after = latidos/min
sheet-line-count-compare = En la ventana 2 cuento N =
    .after = latidos
sheet-line-seconds-compare = en una ventana de T =
    .after = segundos
sheet-line-rate-compare = así que su frecuencia es
    .after = latidos/min
sheet-line-uncertainty-compare = De cualquiera de las dos me fío hasta ±
    .after = latidos/min

asked-given = A y B están separados { $s } s, con medio segundo de margen.
asked-intervals = De A a B hay { $n } intervalos: { $n } latidos después del primero.
asked-feature = A y B están en el mismo rasgo, pico y pico o pie y pie.
asked-intervals_work = n, Δt y la frecuencia se siguen unos de otros.
asked-short = A y B están separados de { $s } a { $longest } s: la frecuencia baja mientras cuentas.
asked-within = El centro de la ventana está como mucho { $s } s después del final del ejercicio.
asked-two = Dos ventanas de un registro que comparten como mucho la mitad.
asked-uncertainty = La incertidumbre es la de un latido más o menos en tu ventana, o la de los latidos que pueden quedar en sus bordes.
asked-clean = En él cada onda se parece a la siguiente: sin ruido, sin saltos, sin nada recortado.
asked-range = El rango se lee como lo muestra la unidad de registro, ± milivoltios.
asked-foot_peak = A está en un pie, B en el pico del mismo latido.
asked-amplitude = La altura del pie al pico, en milivoltios.
asked-name_test = Antes de nombrar una causa, haz algo que la muestre: cambia una sola cosa, pregunta, o mira ese lugar de cerca.
asked-name_all = Todo lo que falla está nombrado, y nada más.
asked-name_one = Un cambio cada vez, con una mirada a la tira después.

truth-beats = latidos en tu ventana
truth-unsure = { $n ->
    [one] Y un latido demasiado pequeño o adelantado para darlo por seguro: contarlo u omitirlo es igual de correcto.
   *[other] Y { $n } latidos demasiado pequeños o adelantados para darlos por seguros: contarlos u omitirlos es igual de correcto.
}
truth-window = latidos/min: tu ventana
truth-window_how = 60 · { $n } / { $s } s. Con esta se compara tu recuento.
truth-span = latidos/min: los latidos de tu ventana
truth-span_how = { $n } intervalos del primero al último, { $s } s. Con qué rapidez se siguieron.
truth-record = latidos/min: el registro entero
truth-record_how = { $n } intervalos del primer latido al último, { $s } s. Ninguna ventana corta tiene que acertarla.
truth-range = mV: el rango, más o menos
truth-amplitude = mV: la altura de A a B

offer-title = ¿Cómo quieres empezar?
offer-shown = Ver antes cómo se hace
offer-half = Hecha a medias, yo la acabo
offer-alone = Por mi cuenta
offer-why-shown = Propuesta: mirar. El ejemplo se hace en esta misma mesa, paso a paso; después te toca a ti.
offer-why-half = Propuesta: a medio hacer. La mesa hace el montaje y te deja el resto.
offer-why-alone = Propuesta: por tu cuenta. Lo que pide esta mesa ya lo has hecho, o está aquí para averiguarlo.
offer-now-half = A medio hacer. Si hay un registro abierto, coloca A y B, cuenta y anótalo. Si no lo hay, algo falla aquí: encuéntralo, arréglalo y registra.
offer-now-alone = Por tu cuenta. Las pistas llegan después de comprobar, si las pides.
offer-now-shown = Ahora tú, con un corazón que aún no conoces. El recuento a la vista y el ajuste a los picos están para ayudar, si los quieres.

way-stand = Tu progreso
way-stand_for = doce destrezas, y lo que hiciste
way-stand_text = Lo que salió bien dos veces, lo que toca repasar y cada ensayo que comprobaste, con su tira.
side-skills = Mapa de destrezas
side-notebook = Cuaderno
side-device = Este dispositivo
side-words = Las palabras del oficio
side-teach = Para docentes
side-report = Informe
side-back = Volver a la mesa
side-back_start = Volver a los escenarios
notebook-full = Este ensayo no se pudo guardar en el cuaderno: el almacenamiento del dispositivo está lleno o desactivado. Imprime o exporta lo que importe y borra páginas antiguas.

caution-before = Antes de poner un sensor a una persona: pídele permiso, sigue las normas locales y las reglas de tu institución, afloja enseguida lo que duerma u oscurezca un dedo, y deja a los profesionales de la salud habilitados lo que un trazo pueda significar.
caution-read = Antes de poner el sensor: la advertencia
caution-later = Más tarde
caution-agree = Lo he leído y lo haré
caution-agreed = La advertencia está leída.
