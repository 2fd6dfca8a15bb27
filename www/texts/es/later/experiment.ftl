### El experimento: lo que se espera, la tabla y lo que muestra.

experiment-title = Experimento
experiment-expect = 1. ¿Qué esperas?
experiment-expect_about = Dilo antes de grabar. Aquí no se califica nada: equivocarse no cuesta puntos.
experiment-expect_done = Esto esperabas. Cuando ya has grabado, se queda como está.
experiment-from_to = De «{ $first }» a «{ $last }»:
experiment-measure-rate = frecuencia cardíaca
experiment-measure-amplitude = altura del pulso
experiment-measure-swing = oscilación de los intervalos entre latidos
experiment-expect-up = Sube
experiment-expect-down = Baja
experiment-expect-same = Queda igual
experiment-why = ¿Por qué?
experiment-why_own = Elige una razón o escribe la tuya
experiment-write = Anótalo
experiment-written = Anotado.

experiment-table = 2. Tu tabla
experiment-table_about = Graba, pon A y B, y escribe N en la hoja de trabajo. Después elige la condición y añade la ventana de conteo.
experiment-table_no_count = Graba, y pon A y B. Después elige la condición y añade la ventana de conteo.
experiment-condition = Condición
experiment-conditions = Condiciones
experiment-when = { $to ->
    [0] Tras «Empezar», cuenta a partir de { $from } s.
   *[other] Tras «Empezar», cuenta de { $from } a { $to } s.
}
experiment-when_now = Al principio, cuenta enseguida.
experiment-have = { $n } de { $of } medidas
experiment-have_any = { $n } medidas
experiment-begin_exercise = Empezar: { $s } s de ejercicio, luego «{ $condition }»
experiment-now = Ahora: { $condition }.
experiment-now_before = «{ $condition }» empieza en { $s } s.
experiment-now_since = Ahora: { $condition }, desde hace { $s } s.
experiment-now_wait = Cuenta dentro de { $s } s.
experiment-now_over = El tiempo para contar ha pasado. Empieza otra vez.
experiment-line_right = Tu conclusión, { $measure }: «{ $said }». Es correcta.
experiment-line_wrong = Tu conclusión, { $measure }: «{ $said }». No es correcta. Mira «Experimento».
whether-remove_row_title = ¿Quitar esta fila?
whether-remove_row_text = La fila y su nota se pierden.
whether-remove_row_yes = Quitarla
whether-remove_row_no = Dejarla
refusal-row_there = La fila { $row } ya tiene casi toda esta ventana de conteo. Elige otra parte, o graba otra vez.
experiment-begin = Empezar: { $condition }
experiment-begun = { $condition }: ha empezado.
experiment-add = Añadir A a B a la tabla
experiment-added = Fila { $n } añadida.
experiment-removed = Fila { $n } quitada.
experiment-remove = Quitar la fila { $n }
experiment-note = Nota de la fila { $n }
experiment-rows = Filas de la tabla
experiment-empty = La tabla todavía está vacía.
experiment-csv = Guardar la tabla (CSV)
experiment-picture = Guardar la imagen: { $measure }
experiment-col-n = N.º
experiment-col-since = Tiempo (s)
experiment-col-count = N
experiment-col-seconds = T (s)
experiment-col-rate = Frecuencia cardíaca (latidos/min)
experiment-col-amplitude = Altura (mV)
experiment-col-swing = Oscilación (ms)
experiment-col-note = Nota
experiment-off = recuento para mirar otra vez
experiment-value = { $value } ± { $u }
experiment-means = Media de cada condición
experiment-mean = { $measure }: { $first } ± { $first_u } en «{ $first_of }», { $last } ± { $last_u } en «{ $last_of }». La diferencia es { $d } ± { $u } { $unit }.
experiment-unit-rate = latidos/min
experiment-unit-amplitude = mV
experiment-unit-swing = ms
experiment-about_u = El número detrás de ± es una desviación estándar. Reúne el recuento, tus repeticiones y lo que un cuerpo hace por sí mismo.
experiment-fit = Una curva por tus puntos: la frecuencia cardíaca baja a { $rest } latidos/min con una constante de tiempo de { $tau } s. Tus puntos permiten de { $low } a { $high } s.
experiment-fit_open = Una curva por tus puntos: la frecuencia cardíaca baja a { $rest } latidos/min con una constante de tiempo de { $tau } s. Tus puntos permiten { $low } s y más: mide también más tarde.
experiment-fit_none = Para una curva, añade al menos dos ventanas de conteo en reposo y tres después del ejercicio.

experiment-conclude = 3. ¿Qué muestra tu tabla?
experiment-conclude_about = Elige con cuidado: cuando todo está respondido, la tabla se cierra.
experiment-conclude-up = Sube
experiment-conclude-down = Baja
experiment-conclude-same = Ninguna diferencia que esta tabla pueda mostrar
experiment-conclude_do = Esto es lo que muestra
experiment-needs = Mide primero cada una de las dos condiciones.

experiment-result = Tu conclusión, y cómo llegaste
experiment-outcome-shown = Correcto. La tabla muestra esta diferencia.
experiment-outcome-none_shown = Correcto. Esta tabla no puede mostrar una diferencia. Eso también es un resultado.
experiment-outcome-missed = Hay una diferencia, y tu tabla puede mostrarla. Compara la diferencia con su ±.
experiment-outcome-overclaimed = Esta tabla no muestra eso. La diferencia no es mayor que la que puede dar el azar.
experiment-outcome-opposite = La diferencia va al revés. Mira qué condición va primero.
experiment-as_expected = Es lo que esperabas.
experiment-not_expected = Esperabas otra cosa. Así es como más se aprende.
experiment-truth = En el sujeto mismo, en estas ventanas de conteo, la diferencia fue de { $truth } { $unit }.
experiment-remark-short = Tu ventana de conteo más corta tiene { $s } s. Un latido más o menos son ahí { $u } latidos/min. En { $asked } s son solo { $u_asked }.
experiment-remark-once = Mide cada condición { $asked } veces o más. Una sola ventana de conteo no muestra cuánto cambia la siguiente.
experiment-remark-order = Mediste primero toda una condición. El tiempo solo podría dar la diferencia. Alterna donde puedas.
experiment-remark-regression = Tu primera ventana de conteo quedó lejos de las siguientes. Tras un valor raro suele venir uno normal, hagas lo que hagas.
experiment-remark-spread = Las ventanas de conteo de una misma condición difieren más que las dos condiciones.
experiment-remark-one_subject = Este es un solo sujeto. Lo que vale aquí puede no valer para otros: pregunta a toda la clase.
experiment-next = Ahora comprueba tu última lectura en la hoja de trabajo.

refusal-predict_first = Di primero qué esperas. Abre «Experimento».
refusal-conclude_first = Di primero qué muestra tu tabla. Abre «Experimento».
refusal-other_condition = Esta ventana de conteo no está en «{ $condition }». Debe empezar { $from_s } s o más después de que empiece esa condición, y terminar antes de otra.
refusal-no_count = Cuenta primero los latidos de A a B, y escribe N en la hoja de trabajo.
refusal-no_row = La tabla no tiene esa fila.
refusal-rows_missing = En «{ $condition }» todavía no se ha medido nada.

### En el informe.

report-experiment = El experimento
report-experiment_expected = Lo que se esperaba
report-experiment_method = Cómo se midió
report-experiment_how = { $n } ventanas de conteo de { $low } a { $high } s. { $counts }. En este orden de condiciones: { $order }. La frecuencia cardíaca es el recuento por 60, dividido entre la duración de la ventana de conteo.
report-experiment_times = «{ $condition }»: { $n }
report-experiment_figure = { $name }: cada ventana de conteo con su incertidumbre, de izquierda a derecha según se midió.
report-experiment_concluded = Lo que muestra la tabla
report-experiment_limits = Lo que esto no puede decir
report-experiment_one = Es un solo sujeto. Cómo reaccionan otros no se sabe por él.
report-experiment_mean = Una ventana de conteo da una media. Lo que pasó dentro de ella no está en la tabla.
report-experiment_height = La altura de un pulso no es una cantidad de sangre. Compárala solo con el mismo sensor, la misma correa y el mismo rango.
