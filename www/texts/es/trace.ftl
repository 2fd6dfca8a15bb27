### La tira: ajustes, cursores, marcas, registros, lo que se puede decir de ella.

rate-title = ¿Cuál es la frecuencia de muestreo?
rate-text = { $file } tiene un valor en cada línea y ningún tiempo. Da su frecuencia de muestreo, y se dibuja frente al tiempo.
rate-label = Muestras por segundo, Hz
rate-problem = Debería ser un número de { $low } a { $high }.
rate-yes = Abrirlo
rate-no = No abrirlo

recording-about = Esto es una grabación, no una simulación. Nadie conoce su frecuencia cardíaca verdadera. Tu lectura se compara con lo que encuentra el detector de latidos de esta página. Un detector también puede equivocarse.

value-off = desactivado

strip-title = El trazo
strip-modes = Qué muestra la pantalla
strip-live = En vivo
strip-paused = Pausa
strip-take = Grabación { $v } · { $s } s
strip-record = Grabar
strip-stop = Detener grabación
strip-recording = Grabando. Pulsa «Detener grabación» para terminar.
strip-kept = Grabación { $v }: guardada.
strip-listen = Escuchar
strip-listen_on = Oyes un clic en cada pico del trazo en vivo. Un pico más alto da un clic más agudo. El zumbido se oye como zumbido.
strip-listen_off = El sonido está apagado.
strip-listen_none = Este navegador no deja sonar a la página.
strip-start = Poner en marcha el trazo
strip-back = Media pantalla atrás
strip-forth = Media pantalla adelante
strip-scroll = Posición en la grabación
strip-scroll_value = de { $from } a { $to }
strip-pen_at = Tiempo: { $s }
strip-margin_live = { $title }, en vivo
strip-margin_paused = { $title }, en pausa
strip-margin_take = { $title }, grabación { $v }
strip-margin_recording = grabando
strip-margin_measure = Toca un latido para marcarlo, o su marca para quitarla.
strip-foot_recording = de { $from } a { $to }, total { $all }

cursor-a = Cursor A
cursor-b = Cursor B
cursor-unplaced = aún sin colocar
cursor-place_first = Coloca antes el cursor.

measure-title = Medir
measure-none = –
measure-hint = Arrastra A y B, o muévelos con las flechas y las teclas de página. Con un cursor elegido, pulsa M para marcar un latido ahí.

marks-at_a = Marcar en A
marks-at_b = Marcar en B
marks-clear = Borrar las marcas
marks-list = Marcas de latido, una a una
marks-none = Aún no hay marcas.
marks-remove = Quitar la marca de { $s }
marks-made = Marca de latido puesta en { $s }.
marks-gone = Marca de latido quitada.

set-time_base = Base de tiempo, por pantalla
set-time_less = Base de tiempo más corta
set-time_more = Base de tiempo más larga
set-range = Rango a fondo de escala
set-range_less = Rango menor
set-range_more = Rango mayor
set-zero_clear = Deshacer el cero
set-zero_at = cero en { $v }
set-invert = Invertir
set-high_pass = Paso alto
set-low_pass = Paso bajo
set-high_pass_order = Orden del paso alto
set-low_pass_order = Orden del paso bajo
set-order-1 = orden 1
set-order-2 = orden 2
set-notch = Filtro de banda estrecha
set-average = Promediado
set-input = Entrada mostrada
set-input_n = entrada { $v }
set-rate = Frecuencia de muestreo
set-bits = Resolución
set-anti_alias = Filtro antialias
set-shown = Mostrar el trazo
set-scale = Escala de valores
set-scale_by = ×{ $v }
set-line = { $time } · { $range }
set-line_high_pass = paso alto { $v }, { $order }
set-line_low_pass = paso bajo { $v }, { $order }
set-line_notch = filtro de banda estrecha { $v }
set-line_inverted = invertido
set-line_scale = escala ×{ $v }
set-line_hidden = trazo sin mostrar
shown-about = Estas son formas de mirar la grabación. Lo que ves es lo que cuentas, lo que se revisa y lo que se guarda. El archivo no cambia. Un filtro retrasa un poco la onda, como en el laboratorio. A, B y tus marcas se mueven con ella.
shown-as_in_file = como en el archivo
shown-margin = { $title }, mostrada: { $ways }
shown-caption = Tal como se muestra: { $ways }

summary-ask = Trazo en palabras
summary-no_data = No llegan muestras, así que no hay trazo.
summary-flat = Un trazo plano.
summary-trace = Un trazo que se mueve. Ves { $s } segundos de él.
summary-fuzz-none = El trazo está limpio.
summary-fuzz-clear = Lleva un ruido claro.
summary-fuzz-heavy = Un ruido fuerte tapa su forma.
summary-height-tiny = Es casi plano.
summary-height-small = Es pequeño en la pantalla.
summary-height-good = Llena una buena parte de la pantalla.
summary-height-tall = Llena casi toda la pantalla.
summary-height-over = Se sale de la pantalla.
summary-clipped = Algunas partes altas o bajas están recortadas.
summary-drift = Todo el trazo sube y baja despacio.
